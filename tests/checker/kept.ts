// A part of a starter that is kept in a jar: it comes out of the starter of a brew, on its brew day, and has been in no beer.
import type { PlannedHarvest } from '../../planner/index.ts';
import type { Case, Placed } from './case.ts';
import { num } from './days.ts';

/** Whether the slurry of a pitch was kept from a starter, as the harvest that it names says. */
export function isKept(c: Case, source: Placed['plan']['source']): boolean {
  return source.kind === 'harvest' && c.harvestOf.get(source.brew)?.ofStarter === true;
}

/** The brew and its starter can give it, it is taken when the starter is divided, and the house asks for it. */
export function checkKept(c: Case, h: PlannedHarvest, p: Placed): void {
  const say = (
    rule: `3 ${string}` | `4 ${string}` | `dates ${string}`,
    off: number,
    says: string,
  ) => c.report(rule, h.brew, off, rule.startsWith('dates') ? 'days' : 'jars', says);
  const H = num(h.day);
  const settled = H + c.house.store.settleDays;
  if (H !== p.D)
    say('dates kept-day', Math.abs(H - p.D), `The starter of ${h.brew} is divided on brew day.`);
  if (num(h.usableFrom) !== settled)
    say('dates usable-from', Math.abs(num(h.usableFrom) - settled), 'it settles for other days.');
  if (h.crashed) say('dates kept-crashed', 1, `A starter is not crashed.`);
  // of a brew that was brewed today the plan no longer shows the starter
  const hasStarter = p.plan.starter !== null || p.plan.done;
  if (p.plan.source.kind !== 'fresh' || p.yeast?.form !== 'liquid' || !hasStarter)
    say('3 kept-of-what', 1, `${h.brew} has no growth starter out of fresh packs.`);
  if (h.jars.length > c.S.keptStarterJars)
    say(
      '4 kept-jars',
      h.jars.length - c.S.keptStarterJars,
      `${h.jars.length} jars are kept of the starter of ${h.brew}.`,
    );
}

/** What goes into the wort and what goes into the jars is not more than the starter ends with. */
export function checkKeptAmount(c: Case, h: PlannedHarvest, p: Placed): void {
  const { starter, pitchedB } = p.plan;
  if (starter === null) return;
  const living = h.cellsB * h.cropViability.likely;
  const over = living + pitchedB - starter.finalB;
  if (over > 0.01 * starter.finalB)
    c.report('4 kept-overdrawn', h.brew, over, 'B', `The starter of ${h.brew} does not hold both.`);
  if (h.cropViability.likely > c.S.cropViability + 0.005)
    c.report(
      'amounts crop-viability',
      h.brew,
      h.cropViability.likely - c.S.cropViability,
      'share',
      `What is kept of a starter is taken to be as alive as a fresh crop, ${c.S.cropViability}.`,
    );
}
