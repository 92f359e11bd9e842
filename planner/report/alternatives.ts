// Why a brew stands where it stands: every other source and day is tried on the finished plan, and the best one told.

import type { PlannedBrew } from '../model/index.ts';
import { capital } from '../record/words.ts';
import { brewName, inMoney, sourceName, sourceNameOf, tankName } from '../rules/rule.ts';
import type { Desk } from '../search/desk.ts';
import { type Score, WORST } from '../search/score.ts';
import { isoDay } from '../timeline/calendar.ts';
import { KEPT } from '../timeline/kept.ts';
import { FRESH } from '../timeline/problem.ts';
import { refold } from '../timeline/refold.ts';
import { copyDecisions, type Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';
import { decidingRule, hardFindings, type Weighed, weigh } from './weighing.ts';

type Tried = {
  source: number;
  day: number;
  tank: number;
  starter: number;
  weighed: Weighed;
  reason: string;
};
type Told = Pick<PlannedBrew, 'why' | 'alternative'>;

/** Tells for brew b why this source and this day, with the next best of each and what decided against it. */
export function tellWhy(desk: Desk, plan: Timeline, base: Weighed, b: number): Told {
  const p = plan.problem;
  const brew = p.brews[b];
  if (!brew || plan.done[b]) return { why: ['It has been brewed.'], alternative: null };
  const source = bestOther(desk, plan, base, b, otherSources(desk, plan, b));
  const day = bestOther(desk, plan, base, b, otherDays(desk, plan, b));
  const here = `${isoDay(plan.day[b] as number)} in ${tankName(plan, b)}`;
  const why = [
    source
      ? `${capital(sourceNameOf(plan, b))}. The next best is ${chosenSource(plan, source)}: ${difference(plan, base, source)}`
      : `${capital(sourceNameOf(plan, b))}: nothing else can be had for that day.`,
    day
      ? `${here}. The next best is ${isoDay(day.day)} in ${p.tanks[day.tank]?.name}: ${difference(plan, base, day)}`
      : `${here}: no other free day and tank, with the rest as it stands.`,
    ...whyDivided(plan, b),
  ];
  const better = [source, day].filter((x): x is Tried => x !== null).sort(byWeight)[0];
  if (!better) return { why, alternative: null };
  const forbidden = better.weighed.hardSum > base.hardSum;
  return {
    why,
    alternative: {
      says: capital(difference(plan, base, better)),
      source: capital(chosenSource(plan, better)),
      day: isoDay(better.day),
      tank: p.tanks[better.tank]?.name ?? '?',
      brokenBy: forbidden ? better.reason : null,
      extraMinor: forbidden ? null : better.weighed.costSum - base.costSum,
    },
  };
}

/** Why its starter is larger than it needs itself, where a part of it is kept. */
function whyDivided(plan: Timeline, b: number): string[] {
  const source = plan.problem.jars.length + b;
  if (plan.crop[b] !== KEPT || !plan.draws[source]) return [];
  const takers: string[] = [];
  for (let i = 0; i < plan.orderCount; i++) {
    const o = plan.order[i] as number;
    if (plan.source[o] === source) takers.push(brewName(plan, o));
  }
  const whom = takers.length > 0 ? takers.join(' and ') : 'the next season';
  return [`Its starter is made larger, so that a part of it can be kept for ${whom}.`];
}

function chosenSource(plan: Timeline, tried: Tried): string {
  return `${sourceName(plan, tried.source)}${tried.starter > 0 ? ' with a starter' : ''}`;
}

const byWeight = (a: Tried, z: Tried): number =>
  a.weighed.hardSum - z.weighed.hardSum || a.weighed.costSum - z.weighed.costSum;

/** What decided against it, as a sentence that begins in the middle of one. */
function difference(plan: Timeline, base: Weighed, x: Tried): string {
  if (x.weighed.hardSum > base.hardSum) return `ruled out, for then ${x.reason}`;
  const extra = x.weighed.costSum - base.costSum;
  const money = inMoney(plan.problem, Math.abs(extra));
  if (extra === 0) return 'it costs the same.';
  if (extra < 0) return `${money} cheaper by itself, found after the search ended.`;
  return `${money} dearer, mostly for ${x.reason}.`;
}

type Choice = { source: number; day: number; tank: number; starter: number };

function otherSources(desk: Desk, plan: Timeline, b: number): Choice[] {
  const day = plan.day[b] as number;
  const tank = plan.tank[b] as number;
  const n = desk.listSources(plan, b, plan.useDay[b] as number);
  const out: Choice[] = [];
  for (let i = 0; i < n; i++) {
    const source = desk.option(i);
    if (source === plan.source[b]) continue;
    out.push({ source, day, tank, starter: 0 });
    if (
      !plan.problem.yeasts[plan.yeast[b] as number]?.dry &&
      plan.problem.house.starterGear.vessels > 0
    ) {
      out.push({ source, day, tank, starter: 2 });
    }
  }
  // packs are always worth naming, even where they would come too late
  if (plan.source[b] !== FRESH && !out.some((c) => c.source === FRESH)) {
    out.push({ source: FRESH, day, tank, starter: 0 });
  }
  return out;
}

function otherDays(desk: Desk, plan: Timeline, b: number): Choice[] {
  const brew = plan.problem.brews[b];
  if (!brew) return [];
  const out: Choice[] = [];
  const here = plan.day[b] as number;
  const near = [...brew.days].sort((a, z) => Math.abs(a - here) - Math.abs(z - here) || a - z);
  for (const day of near) {
    for (const tank of brew.tanks) {
      if (day === here && tank === plan.tank[b]) continue;
      if (!desk.slotFree(plan, b, tank, day)) continue;
      out.push({ source: plan.source[b] as number, day, tank, starter: plan.starter[b] as number });
    }
    if (out.length >= 12) break;
  }
  return out;
}

function bestOther(
  desk: Desk,
  plan: Timeline,
  base: Weighed,
  b: number,
  choices: readonly Choice[],
): Tried | null {
  const { trial: t, current, judge, marks } = desk;
  const one = Int32Array.of(b);
  let best: Choice | null = null;
  let least: Score = WORST;
  for (const c of choices) {
    t.copyFrom(current);
    decide(t, b, c);
    refold(t, current, one, 1, marks);
    const score = judge.rescore(t, marks.judge, WORST);
    if (best && (score.hard - least.hard || score.cost - least.cost) >= 0) continue;
    best = c;
    least = score;
  }
  if (!best) return null;
  copyDecisions(plan, t);
  decide(t, b, best);
  unfold(t);
  const weighed = weigh(judge, t);
  return { ...best, weighed, reason: reasonOf(desk, t, base, weighed, b) };
}

function decide(t: Timeline, b: number, choice: Choice): void {
  t.source[b] = choice.source;
  t.day[b] = choice.day;
  t.tank[b] = choice.tank;
  t.starter[b] = choice.starter;
}

/** The deciding rule's own words: its sentence where it forbids, its title where it costs. */
function reasonOf(desk: Desk, t: Timeline, base: Weighed, weighed: Weighed, b: number): string {
  const rule = decidingRule(desk.judge, base, weighed);
  if (!rule) return 'small differences';
  if (rule.level !== 'hard') return rule.title.charAt(0).toLowerCase() + rule.title.slice(1);
  // What it does to this brew or its yeast is the nearer reason than what it does to others.
  const own = [brewName(t, b), sourceNameOf(t, b)];
  const found = hardFindings(desk.judge, t)
    .filter((one) => (weighed.hard.get(one.rule.id) ?? 0) > (base.hard.get(one.rule.id) ?? 0))
    .map(({ rule: by, fact }) => ({ by, fact, own: own.includes(by.subject(t, fact)) }))
    .sort((x, y) => Number(y.own) - Number(x.own) || y.fact.amount - x.fact.amount)[0];
  return found ? found.by.explain(t, found.fact) : rule.says;
}
