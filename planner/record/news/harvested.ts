// A beer was harvested, or its jars were read again after they had settled.
import { type IsoDay, type News, resolveSettings } from '../../model/index.ts';
import { plusDays } from '../../tasks/days.ts';
import type { Asked, Resolved } from '../asked.ts';
import { mayKeepPart } from '../kept-part.ts';
import { unknownIn } from './known.ts';

type Harvested = Pick<News & { kind: 'harvested' }, 'brew' | 'day' | 'settledMl'>;

/** So many days after a brew what is told as taken of it is its starter's part and no harvest. Common practice, no source. */
const TOLD_WITHIN_DAYS = 3;

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
  const { brew: name, settledMl } = news;
  const day = dayTaken(news, asked);
  // Jars are read a day or two after the harvest: the second number is a better reading of the same jars.
  return asked.ledger.harvested.has(name)
    ? { fact: { kind: 'read', brew: name, day, settledMl } }
    : { fact: { kind: 'harvested', harvested: { brew: name, day, settledMl, state: 'sound' } } };
}

/**
 * The day that was told; brew day for what is kept of a starter, though its jar is filled, ticked or read some days later,
 * and a plan made in between no longer counts on it. A beer has nothing to harvest before that.
 */
function dayTaken(news: Harvested, { ledger, house, inForce }: Asked): IsoDay {
  const brewed = ledger.brewed.get(news.brew)?.fact;
  if (ledger.harvested.has(news.brew) || brewed === undefined) return news.day;
  const planned = inForce.harvests.some((one) => one.brew === news.brew && one.ofStarter);
  const keeps = planned || resolveSettings(house.kind, house.rules).keptStarterJars > 0;
  if (!keeps || !mayKeepPart(brewed) || news.day < brewed.day) return news.day;
  return news.day <= plusDays(brewed.day, TOLD_WITHIN_DAYS) ? brewed.day : news.day;
}
