// For each brew left out: what blocks it where it comes nearest to fitting, and the smallest change found that frees it.
import { type Facts, type House, type Pin, type Plan, SETTINGS } from '../model/index.ts';
import { plural } from '../rules/rule.ts';
import { Desk } from '../search/desk.ts';
import { insertBest } from '../search/insert.ts';
import { Random } from '../search/random.ts';
import { Judge } from '../search/score.ts';
import { dayNumber, isoDay } from '../timeline/calendar.ts';
import { compile, FRESH } from '../timeline/problem.ts';
import { copyDecisions, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import { hardFindings } from './weighing.ts';

type Input = {
  house: House;
  today: string;
  facts: Facts;
  pins: readonly Pin[];
  inForce: Plan | null;
};

export function tellLeftOut(
  desk: Desk,
  plan: Timeline,
  b: number,
  input: Input,
): Plan['leftOut'][number] {
  const brew = plan.problem.brews[b];
  const freed = whenFree(plan, b, input);
  const blocked = blockers(desk, plan, b);
  return {
    brew: brew?.name ?? '?',
    priority: brew?.priority ?? 1,
    blockedBy: blocked.map(({ rule, says }) => ({ rule, says })),
    nearestDay: freed === null ? null : isoDay(freed.day),
    wayOut: wayOut(plan, b, freed, blocked),
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

/** The first day on which it fits into this plan if it may be late without limit; tried on the plan, not guessed. */
function whenFree(plan: Timeline, b: number, input: Input): { day: number; ready: number } | null {
  const name = plan.problem.brews[b]?.name;
  const house: House = {
    ...input.house,
    rules: { ...input.house.rules, maxLateDays: SETTINGS.maxLateDays.max },
    brews: input.house.brews.map((row) => (row.brew === name ? { ...row, brewOn: null } : row)),
  };
  const problem = compile(house, input.today, input.facts, input.pins, input.inForce);
  const t = new Timeline(problem);
  copyDecisions(plan, t);
  unfold(t);
  const judge = new Judge(problem);
  const desk = new Desk(problem, judge, new Random(1), { slurry: true }, t);
  const brew = problem.brews[b];
  if (!brew) return null;
  const score = insertBest(desk, t, b, desk.score, { slots: 40, sources: 4 });
  if (!score || score.hard > desk.score.hard) return null;
  return { day: t.day[b] as number, ready: t.ready[b] as number };
}

function wayOut(
  plan: Timeline,
  b: number,
  freed: { day: number; ready: number } | null,
  blocked: readonly Blocker[],
): string {
  const p = plan.problem;
  const brew = p.brews[b];
  const row = p.house.brews[b];
  if (!brew || !row) return '';
  if (brew.tanks.length === 0) {
    return `No tank takes ${row.volumeL} L at ${row.fermentC} °C: change the batch, or add such a tank.`;
  }
  if (freed && row.readyBy !== null) {
    const later = freed.ready - dayNumber(row.readyBy) - p.settings.maxLateDays;
    return later > 0
      ? `Wanted ${plural(later, 'day')} later, ${brew.name} could be brewed on ${isoDay(freed.day)}.`
      : `${brew.name} could be brewed on ${isoDay(freed.day)} if its fixed day were given up.`;
  }
  const remedies = [...new Set(blocked.map((x) => x.remedy))];
  return remedies.length > 0 ? remedies.join(' ') : 'Let the season end later.';
}
