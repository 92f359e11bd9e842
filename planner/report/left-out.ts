// For each brew left out: what blocks it where it comes nearest to fitting, and the smallest change found that frees it.
import { type House, type Plan, SETTINGS } from '../model/index.ts';
import { plural } from '../rules/rule.ts';
import type { Desk } from '../search/desk.ts';
import { dayNumber, isoDay } from '../timeline/calendar.ts';
import { FRESH } from '../timeline/problem.ts';
import { copyDecisions, type Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import { type About, placedIn, waysOut } from './ways-out.ts';
import { hardFindings } from './weighing.ts';

/** Ways out told of each brew, and of how many brews: each is planned again, and that takes its time. */
const WAYS = 2;
const MOST_TRIED = 12;

/** Tells of brew `b` why it is left out; `nth` counts those told before it. */
export function tellLeftOut(
  desk: Desk,
  plan: Timeline,
  b: number,
  nth: number,
  about: About,
): Plan['leftOut'][number] {
  const brew = plan.problem.brews[b];
  const freed = whenFree(plan, b, about);
  const blocked = blockers(desk, plan, b);
  return {
    brew: brew?.name ?? '?',
    priority: brew?.priority ?? 1,
    blockedBy: blocked.map(({ rule, says }) => ({ rule, says })),
    nearestDay: freed === null ? null : isoDay(freed.day),
    wayOut: wayOut(plan, b, freed, blocked, nth < MOST_TRIED ? about : null),
  };
}

type Blocker = { rule: string; says: string; remedy: string };

/** The rules that block it where the fewest are broken. */
function blockers(desk: Desk, plan: Timeline, b: number): Blocker[] {
  const p = plan.problem;
  const brew = p.brews[b];
  if (!brew) return [];
  const t = desk.trial;
  const base = desk.judge.score(plan).hard;
  const days = brew.days.length > 0 ? [...brew.days] : [Math.max(brew.earliest, p.from)];
  const tanks = brew.tanks.length > 0 ? brew.tanks : p.tanks.map((_, i) => i);
  let least = Infinity;
  let found: Blocker[] = [];
  for (const day of days) {
    for (const tank of tanks) {
      for (const yeast of brew.yeasts) {
        copyDecisions(plan, t);
        t.placed[b] = 1;
        t.day[b] = day;
        t.tank[b] = tank;
        t.yeast[b] = yeast;
        t.source[b] = FRESH;
        t.starter[b] = 0;
        unfold(t);
        const hard = desk.judge.score(t).hard - base;
        if (hard >= least) continue;
        least = hard;
        found = hardFindings(desk.judge, t).map(({ rule, fact }) => ({
          rule: rule.id,
          says: rule.explain(t, fact),
          remedy: rule.remedy(t, fact),
        }));
      }
    }
  }
  if (tanks.length === 0) {
    found.push({ rule: 'no-tank', says: 'The house has no tank.', remedy: 'Add a tank.' });
  }
  if (brew.yeasts.length === 0) {
    const says = 'None of its yeasts is kept in the house.';
    found.push({ rule: 'no-yeast', says, remedy: 'Add one of its yeasts to the house.' });
  }
  return found;
}

/**
 * The first day on which it fits into this plan if it may be late without limit: tried on the plan, not guessed.
 * A fixed day stands.
 */
function whenFree(plan: Timeline, b: number, about: About): { day: number; ready: number } | null {
  const { house } = about;
  const patient: House = {
    ...house,
    rules: { ...house.rules, maxLateDays: SETTINGS.maxLateDays.max },
  };
  return placedIn(patient, plan, b, about, 0);
}

function wayOut(
  plan: Timeline,
  b: number,
  freed: { day: number; ready: number } | null,
  blocked: readonly Blocker[],
  about: About | null,
): string {
  const row = plan.problem.house.brews[b];
  if (!row) return '';
  const told: string[] = [];
  if (freed && row.readyBy !== null) {
    const wanted = dayNumber(row.readyBy);
    const later = freed.ready - wanted - plan.problem.settings.maxLateDays;
    if (later > 0) {
      told.push(
        `Wanted ${plural(later, 'day')} later, ${row.brew} could be brewed on ${isoDay(freed.day)}.`,
      );
    }
  }
  if (about) told.push(...waysOut(plan, b, about, WAYS - told.length).map(({ says }) => says));
  if (told.length > 0) return told.join(' Or: ');
  const remedies = [...new Set(blocked.map((x) => x.remedy))];
  return remedies.length > 0 ? remedies.join(' ') : 'Let the season end later.';
}
