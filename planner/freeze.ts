// The freeze window of a re-plan: what is near stays as people know it, unless a hard rule forces it to move.
import type { Judge, Score } from './search/score.ts';
import { compareScores } from './search/score.ts';
import type { BrewData, Problem } from './timeline/problem.ts';
import { copyDecisions, Timeline } from './timeline/timeline.ts';
import { unfold } from './timeline/unfold.ts';

/** The last day of the window. */
export const windowEnd = (p: Problem): number => p.today + p.settings.freezeDays;

/**
 * Brews that stay: in force inside the window, neither brewed nor moved by the news itself. `standing` is the plan in
 * force with the news applied.
 */
export function frozenBrews(p: Problem, standing: Timeline): number[] {
  return p.brews.flatMap((brew, b) => {
    const was = p.inForce[b];
    if (!was || brew.done || !standing.placed[b]) return [];
    if (was.day < p.today || was.day > windowEnd(p)) return [];
    return sameAs(standing, b, was) ? [b] : [];
  });
}

function sameAs(t: Timeline, b: number, was: NonNullable<Problem['inForce'][number]>): boolean {
  return t.day[b] === was.day && t.tank[b] === was.tank && t.source[b] === was.source;
}

/** Those of them that a hard rule finds fault with where they stand: they may have to move. */
export function forcedBrews(judge: Judge, standing: Timeline, frozen: readonly number[]): number[] {
  const faulty = new Set<string>();
  for (const rule of judge.hard) {
    rule.check(standing, (amount, subject, other) =>
      faulty.add(rule.subject(standing, { amount, subject, other })),
    );
  }
  return frozen.filter((b) => faulty.has(standing.problem.brews[b]?.name ?? ''));
}

/** The same problem with the frozen brews held where they stand, and no other brew of the plan in force let in. */
export function heldFast(p: Problem, standing: Timeline, frozen: readonly number[]): Problem {
  const held = new Set(frozen);
  const end = windowEnd(p);
  const brews = p.brews.map((brew, b): BrewData => {
    if (held.has(b)) return holdBrew(brew, standing, b);
    const was = p.inForce[b];
    const bound = brew.done || brew.pinDay >= 0 || brew.fixedDay >= 0;
    if (!was || bound || was.day <= end) return brew;
    const later = brew.days.filter((day) => day > end);
    return later.length === 0 ? brew : { ...brew, days: later };
  });
  return { ...p, brews };
}

function holdBrew(brew: BrewData, standing: Timeline, b: number): BrewData {
  const day = standing.day[b] as number;
  const tank = standing.tank[b] as number;
  return {
    ...brew,
    yeasts: [standing.yeast[b] as number],
    pinDay: day,
    pinTank: tank,
    pinSource: standing.source[b] as number,
    days: Int32Array.of(day),
    tanks: [tank],
  };
}

/** Brews that a plan changed inside the window: frozen ones, and those that it let in. */
export function changedInside(
  t: Timeline,
  standing: Timeline,
  frozen: readonly number[],
): number[] {
  const p = t.problem;
  const end = windowEnd(p);
  const held = new Set(frozen);
  return p.brews.flatMap((brew, b) => {
    const was = p.inForce[b];
    if (!was || brew.done) return [];
    const inside = held.has(b);
    const letIn = was.day > end && t.placed[b] === 1 && (t.day[b] as number) <= end;
    if (!inside && !letIn) return [];
    return t.placed[b] === 1 && sameIn(t, standing, b) ? [] : [b];
  });
}

/** Whether a brew is done alike in two plans: day, tank, yeast and starter. The packs of a pitch follow from these. */
export const sameIn = (a: Timeline, z: Timeline, b: number): boolean =>
  a.day[b] === z.day[b] &&
  a.tank[b] === z.tank[b] &&
  a.source[b] === z.source[b] &&
  a.starterLitres[b] === z.starterLitres[b];

/** The plan with one brew put back as it stands in another. */
export function putBack(t: Timeline, standing: Timeline, b: number): Timeline {
  const back = new Timeline(t.problem);
  copyDecisions(t, back);
  back.placed[b] = standing.placed[b] as number;
  back.day[b] = standing.day[b] as number;
  back.tank[b] = standing.tank[b] as number;
  back.yeast[b] = standing.yeast[b] as number;
  back.source[b] = standing.source[b] as number;
  back.starter[b] = standing.starter[b] as number;
  back.crop[b] = standing.crop[b] as number;
  unfold(back);
  return back;
}

/** Takes back every change inside the window that no hard rule forces: what it saves does not count there. */
export function thawOnlyForced(
  judge: Judge,
  found: Timeline,
  standing: Timeline,
  frozen: readonly number[],
): Timeline {
  let t = found;
  let score = judge.score(t);
  for (let again = true; again; ) {
    again = false;
    for (const b of changedInside(t, standing, frozen)) {
      const back = putBack(t, standing, b);
      const backScore = judge.score(back);
      if (backScore.hard > score.hard) continue;
      t = back;
      score = backScore;
      again = true;
    }
  }
  return t;
}

/** The better of two re-plans: by hard rules first; on equal terms the first, which moved less that is near. */
export function lessBroken<T extends { score: Score }>(first: T, second: T): T {
  return second.score.hard < first.score.hard ? second : first;
}

/** Never a worse plan than the one that stands. */
export function noWorse(judge: Judge, t: Timeline, standing: Timeline): Timeline {
  return compareScores(judge.score(t), judge.score(standing)) > 0 ? standing : t;
}
