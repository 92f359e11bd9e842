// A beer was harvested, or its jars were read again after they had settled.
import type { News } from '../../model/index.ts';
import type { Asked, Resolved } from '../asked.ts';
import { unknownIn } from './known.ts';

type Harvested = Pick<News & { kind: 'harvested' }, 'brew' | 'day' | 'settledMl'>;

export function harvestedFact(news: Harvested, asked: Asked): Resolved {
  const refusals = unknownIn(asked, 'brew', news.brew);
  const brew = asked.house.brews.find((one) => one.brew === news.brew);
  const mostMl = (brew?.volumeL ?? Number.POSITIVE_INFINITY) * 1000;
  if (news.settledMl > mostMl) {
    refusals.push({
      code: 'more-than-the-beer',
      field: 'settledMl',
      value: String(news.settledMl),
      bound: `at most ${mostMl} mL`,
      message: `${news.settledMl} mL of slurry cannot come out of ${brew?.volumeL ?? 0} L of ${news.brew}.`,
      remedy: 'Enter millilitres of settled slurry.',
    });
  }
  if (refusals.length > 0) return { refusals };
  const { brew: name, day, settledMl } = news;
  // Jars are read a day or two after the harvest: the second number is a better reading of the same jars.
  return asked.ledger.harvested.has(name)
    ? { fact: { kind: 'read', brew: name, day, settledMl } }
    : { fact: { kind: 'harvested', harvested: { brew: name, day, settledMl, state: 'sound' } } };
}
