// What forced the changes of a re-plan: what putting one brew alone back to its old place and yeast would break.
import { putBack, sameIn } from './freeze.ts';
import type { Finding, Plan } from './model/index.ts';
import { findings } from './report/index.ts';
import { Judge } from './search/score.ts';
import { standingPlan } from './search/standing.ts';
import type { Timeline } from './timeline/timeline.ts';

/**
 * By brew: the worst that a hard rule finds in the new plan with that brew put back as the plan in force with the news
 * applied has it. A brew that changed and is not in it was not forced.
 */
export function whatForces(standing: Timeline, after: Plan): Map<string, Finding> {
  const p = standing.problem;
  const judge = new Judge(p);
  const now = standingPlan(p, after);
  const known = new Set(findings(judge, now).map(keyOf));
  const out = new Map<string, Finding>();
  p.brews.forEach((brew, b) => {
    if (brew.done || !p.inForce[b] || !standing.placed[b] || same(now, standing, b)) return;
    const fresh = findings(judge, putBack(now, standing, b)).filter(
      (one) => !known.has(keyOf(one)),
    );
    const worst = fresh.sort((a, z) => z.amount - a.amount)[0];
    if (worst !== undefined) out.set(brew.name, worst);
  });
  return out;
}

const keyOf = (one: Finding): string => `${one.rule} ${one.subject} ${one.amount}`;

const same = (a: Timeline, z: Timeline, b: number): boolean =>
  a.placed[b] === z.placed[b] && sameIn(a, z, b);
