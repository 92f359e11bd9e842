// What the plan in force says of a figure at the moment it is told: kept with the entry, for the plan itself moves on.
import type { Expected, Figure, House, News, Plan, Range, SlurryRef } from '../model/index.ts';
import type { RecordState } from './fold.ts';
import { cultureKey } from './ledger.ts';
import { shelfOf } from './shelf.ts';

const MILLION_PER_BILLION = 1000;

type Now = { state: RecordState; house: House; inForce: Plan };

/** Expectations of the figures that a piece of news brings; none where the plan expected nothing. */
export function expectedOf(news: News, now: Now): Expected[] {
  switch (news.kind) {
    case 'harvested':
      return ofHarvest(news.brew, now);
    case 'measured':
      return ofCount(news, now);
    case 'gravity':
      return ofGravity(news, now);
    default:
      return [];
  }
}

const ranged = (figure: Figure, yeast: string, { low, likely, high }: Range): Expected => ({
  figure,
  yeast,
  low,
  likely,
  high,
});

/** Once it is harvested the plan knows the figure: only the first telling is compared. */
function ofHarvest(brew: string, { inForce }: Now): Expected[] {
  const planned = inForce.harvests.find((one) => one.brew === brew && !one.done);
  return planned === undefined ? [] : [ranged('settledMl', planned.yeast, planned.settledMl)];
}

function ofCount(news: News & { kind: 'measured' }, now: Now): Expected[] {
  const { state, house, inForce } = now;
  const present = { plan: inForce, house, facts: state.facts, today: news.day };
  const jar = shelfOf(present).jars.find((one) => cultureKey(one.of) === cultureKey(news.of));
  if (jar === undefined) return [];
  const alive = news.viability !== null || news.stained !== null ? jar.alive : null;
  const dense = news.millionPerMl === null ? null : densityOf(news.of, inForce);
  return [
    ...(alive === null ? [] : [ranged('viability', jar.yeast, alive.share)]),
    ...(dense === null ? [] : [ranged('millionPerMl', jar.yeast, dense)]),
  ];
}

/** As the plan says it of a pitch out of this slurry; null where it pitches none. */
function densityOf(of: SlurryRef, plan: Plan): Range | null {
  const brew = plan.brews.find(({ source }) =>
    of.kind === 'jar'
      ? source.kind === 'jar' && source.jar === of.jar
      : source.kind === 'harvest' && source.brew === of.brew,
  );
  if (!brew?.densityBPerMl) return null;
  const { low, likely, high } = brew.densityBPerMl;
  const million = (billion: number) => billion * MILLION_PER_BILLION;
  return { low: million(low), likely: million(likely), high: million(high) };
}

function ofGravity(news: News & { kind: 'gravity' }, { house, inForce }: Now): Expected[] {
  const brew = house.brews.find((one) => one.brew === news.brew);
  const yeast = inForce.brews.find((one) => one.brew === news.brew)?.yeast;
  if (brew === undefined || yeast === undefined) return [];
  const planned = (figure: Figure, likely: number): Expected => ({
    figure,
    yeast,
    likely,
    low: null,
    high: null,
  });
  return [planned('og', brew.og), ...(news.fg === null ? [] : [planned('fg', brew.fg)])];
}
