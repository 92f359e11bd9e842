// When a jar is checked before it is pitched, and what saves the day if it fails the check.
import type { PlannedBrew } from '../model/index.ts';
import type { Desk } from '../search/desk.ts';
import { isoDay } from '../timeline/calendar.ts';
import { FRESH } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';

type Told = Pick<PlannedBrew, 'checkOn' | 'fallback'>;

/** The check falls as early as its fallback needs, but never before there is slurry to check. */
export function tellFallback(desk: Desk, t: Timeline, b: number): Told {
  const p = t.problem;
  const source = t.source[b] as number;
  const name = p.brews[b]?.name ?? '?';
  if (source === FRESH || t.done[b]) {
    return {
      checkOn: null,
      fallback: { kind: 'none', decideBy: null, says: 'Fresh packs: check the date on them.' },
    };
  }
  const use = t.useDay[b] as number;
  const open = (day: number) => p.days.lastOpen[day - p.days.first] as number;
  const there = Math.max(
    p.today,
    source < p.jars.length ? p.today : (t.usableFrom[source - p.jars.length] as number),
  );
  const opens = p.days.nextOpen[there - p.days.first] as number;
  const before = open(use - 1);
  // the day before, unless there is nothing to check by then; never on a closed day
  const dayBefore = before >= there ? before : Math.min(opens, use);
  const told = (kind: Told['fallback']['kind'], day: number, says: string): Told => ({
    checkOn: isoDay(day),
    fallback: { kind, decideBy: isoDay(day), says },
  });

  // another jar that nobody needs
  const need = p.brews[b]?.needHarvestedB ?? 0;
  for (let j = 0; j < p.jars.length; j++) {
    const jar = p.jars[j];
    if (!jar || j === source || (t.draws[j] as number) > 0) continue;
    if (desk.judge.bars(t, b, j, use)) continue;
    const alive =
      jar.startViability * Math.exp(-jar.storeLossPerDay * Math.max(0, use - jar.startDay));
    if (alive < p.settings.viabilityFloor || jar.ml * jar.density * alive < need) continue;
    return told('jar', dayBefore, `If it fails, jar ${jar.name} takes its place.`);
  }
  // packs in the cupboard that no brew is to get
  const yeast = p.yeasts[t.yeast[b] as number];
  if (yeast) {
    const there = yeast.hand.filter((batch) => batch.fromDay <= use);
    let spare = there.reduce((sum, batch) => sum + batch.count, 0);
    for (let i = 0; i < t.orderCount; i++) {
      const o = t.order[i] as number;
      if (t.yeast[o] === t.yeast[b]) spare -= t.packsFromHand[o] as number;
    }
    const age = use - (there[0]?.madeDay ?? use);
    const cells = spare * yeast.row.packCellsB * Math.exp(-yeast.lossPerDay * Math.max(0, age));
    if (age <= yeast.expiryDays && cells >= (p.brews[b]?.needFreshB ?? 0)) {
      return told(
        'pack',
        dayBefore,
        `If it fails, packs of ${yeast.row.yeast} from the cupboard take its place.`,
      );
    }
  }
  // an order, if the slurry can be checked a delivery's lead before it is wanted
  const latest = open(use - p.house.orderLeadDays);
  if (latest >= there) {
    return told(
      'order',
      latest,
      `If it fails, order fresh packs that day: they arrive by ${isoDay(use)}.`,
    );
  }
  const could = there + p.house.orderLeadDays;
  return told(
    'none',
    dayBefore,
    `If it fails there is nothing in time: packs ordered that day come ${could > use ? `by ${isoDay(Math.max(could, dayBefore + p.house.orderLeadDays))}` : 'late'}, and ${name} slips. A spare pack in the cupboard would save the day.`,
  );
}
