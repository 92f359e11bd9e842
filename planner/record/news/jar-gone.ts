// A jar of the shelf was lost or thrown away.
import type { News } from '../../model/index.ts';
import { sayDay } from '../../tasks/days.ts';
import type { Asked, Resolved } from '../asked.ts';
import { unknownIn } from './known.ts';

export function goneFact(
  news: Pick<News & { kind: 'jar-gone' }, 'jar' | 'day'>,
  asked: Asked,
): Resolved {
  const { house } = asked;
  const refusals = unknownIn(asked, 'jar', news.jar);
  const jar = house.jars.find((one) => one.jar === news.jar);
  if (jar !== undefined && news.day < jar.harvestedOn) {
    refusals.push({
      code: 'before-harvest',
      field: 'day',
      value: news.day,
      bound: `on or after ${jar.harvestedOn}`,
      message: `Jar ${news.jar} was filled on ${sayDay(jar.harvestedOn)}; it cannot be gone on ${sayDay(news.day)}.`,
      remedy: 'Correct the day, or the harvest day of the jar.',
    });
  }
  if (refusals.length > 0) return { refusals };
  return { fact: { kind: 'jar-gone', jar: news.jar, day: news.day } };
}
