// The reserve that a house may ask for: which harvests have one, how much it is, and when it may go.
import type { PlannedHarvest } from '../../planner/index.ts';
import type { Case, Placed } from './case.ts';
import { iso, num } from './days.ts';

/** mL by which amounts of a plan may be rounded. */
const CLOSE = 0.5;

/** Whether a beer is called suspect, or was pitched with anything that comes of something suspect. */
function isSuspect(c: Case, beer: Placed): boolean {
  let at: Placed | undefined = beer;
  for (let steps = 0; at !== undefined && steps <= c.placed.length; steps++) {
    const { brew, source }: Placed['plan'] = at.plan;
    const told = [...c.facts.harvested, ...c.facts.brewed].filter((fact) => fact.brew === brew);
    if (told.some((fact) => fact.state === 'suspect')) return true;
    if (source.kind === 'jar' && c.jarOf.get(source.jar)?.state === 'suspect') return true;
    at = source.kind === 'harvest' ? c.placedOf.get(source.brew) : undefined;
  }
  return false;
}

/** The day from which the reserve of a harvest may go; null: it has none to keep, for whatever reason but its mL. */
function mayGo(c: Case, h: PlannedHarvest, beers: readonly Placed[]): number | null {
  const parent = c.placedOf.get(h.brew);
  const ready = beers.flatMap(({ R }) => (R === null ? [] : [R]));
  if (c.S.reserve === 0 || h.ofStarter || parent === undefined || ready.length === 0) return null;
  if (isSuspect(c, parent)) return null;
  if (c.facts.passed.some(({ brew }) => beers.some((beer) => beer.plan.brew === brew))) return null;
  // nobody has passed it by today
  const tasted = Math.max(Math.min(...ready), c.today + 1);
  const until = Math.min(tasted, num(h.day) + c.S.maxStorageDays);
  return until > num(h.day) && until > c.today ? until : null;
}

/** Of every harvest that feeds a brew one jar of what is left, at least a fifth of one, until a beer of it is passed. */
export function checkReserves(c: Case): void {
  for (const h of c.plan.harvests) {
    const beers = c.placed.filter(
      ({ plan: { source } }) => source.kind === 'harvest' && source.brew === h.brew,
    );
    const kept = h.jars.filter((jar) => jar.untilPassed !== undefined);
    const until = mayGo(c, h, beers);
    const others = h.jars.filter((jar) => jar.untilPassed === undefined);
    const left = h.settledMl.likely - others.reduce((sum, jar) => sum + jar.ml, 0);
    const fifth = c.house.store.jarMl / 5;
    const say = (clause: `${'amounts' | 'dates'} ${string}`, off: number, says: string) =>
      c.report(clause, h.brew, off, clause.startsWith('dates') ? 'days' : 'jars', says);
    if (kept.length > (until === null || left < fifth - CLOSE ? 0 : 1))
      say('amounts reserve-too-many', kept.length, `${h.brew} is to have no such reserve.`);
    if (kept.length === 0 && until !== null && left > fifth + CLOSE)
      say('amounts reserve-missing', 1, `${h.brew} is to have a reserve, ${left} mL are left.`);
    for (const jar of kept) {
      const wanted = Math.min(left, c.house.store.jarMl);
      if (Math.abs(jar.ml - wanted) > CLOSE)
        say('amounts reserve-ml', 1, `The reserve of ${h.brew} is ${wanted} mL, not ${jar.ml}.`);
      if (until !== null && num(jar.leavesOn) !== until)
        say(
          'dates reserve-leaves',
          Math.abs(num(jar.leavesOn) - until),
          `The reserve of ${h.brew} may go from ${iso(until)}.`,
        );
      const first = beers.find((beer) => beer.plan.brew === jar.untilPassed);
      const before = beers.some(
        ({ R }) => R !== null && (first?.R ?? null) !== null && R < (first?.R ?? 0),
      );
      if (first === undefined || before || jar.for !== null)
        say('amounts reserve-beer', 1, `The reserve of ${h.brew} waits for ${jar.untilPassed}.`);
    }
  }
}
