// Nothing suspect, nothing descended from it, and nothing on watch is pitched.

import { FRESH } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { brewName, brewSubject, hardByBrew, sourceNameOf } from './rule.ts';
import { comesBefore } from './yeast-forward.ts';

/** What is on watch is held back itself; only what is suspect taints all that comes of it. */
const bad = (state: 'sound' | 'watch' | 'suspect', steps: number): boolean =>
  state === 'suspect' || (state === 'watch' && steps === 0);

/** Whether a source is itself suspect or on watch, or comes of something suspect. */
export function doubtful(t: Timeline, source: number): boolean {
  const { jars, brews } = t.problem;
  let s = source;
  for (let steps = 0; steps <= brews.length && s !== FRESH; steps++) {
    if (s < jars.length) return bad(jars[s]?.state ?? 'sound', steps);
    const from = s - jars.length;
    if (bad(brews[from]?.state ?? 'sound', steps)) return true;
    s = t.source[from] as number;
    if (!t.placed[from] || !comesBefore(t, from, s)) return false;
  }
  return false;
}

export const suspect = hardByBrew({
  id: 'suspect',
  title: 'Nothing suspect',
  level: 'hard',
  unit: 'pitches',
  says: 'A jar marked suspect, what descends from it and what is on watch is not pitched.',
  at(t, b, found) {
    if (t.source[b] !== FRESH && doubtful(t, t.source[b] as number)) found(1, b, 0);
  },

  bars: (t, b, source) => source !== FRESH && comesBefore(t, b, source) && doubtful(t, source),
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} would get ${sourceNameOf(t, f.subject)}, which is suspect, on watch, or comes of a suspect jar.`,
  remedy: () => 'Taste and check; mark it sound again, or pitch from elsewhere.',
});
