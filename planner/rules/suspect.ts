// Nothing suspect, nothing descended from it, and nothing on watch is pitched.

import { FRESH } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { brewName, brewSubject, eachChoice, type HardRule, sourceNameOf } from './rule.ts';

/** Whether a source is itself suspect or on watch, or comes of something suspect. */
export function doubtful(t: Timeline, source: number): boolean {
  const { jars, brews } = t.problem;
  let s = source;
  for (let steps = 0; steps <= brews.length && s !== FRESH; steps++) {
    if (s < jars.length) return jars[s]?.state !== 'sound';
    const from = s - jars.length;
    const crop = brews[from]?.harvested;
    if (crop && crop.state !== 'sound') return true;
    if (!t.placed[from]) return false;
    s = t.source[from] as number;
  }
  return false;
}

export const suspect: HardRule = {
  id: 'suspect',
  title: 'Nothing suspect',
  level: 'hard',
  unit: 'pitches',
  says: 'A jar marked suspect, what descends from it and what is on watch is not pitched.',
  check(t, found) {
    eachChoice(t, (b) => {
      if (t.source[b] !== FRESH && doubtful(t, t.source[b] as number)) found(1, b, 0);
    });
  },

  bars: (t, _b, source) => source !== FRESH && doubtful(t, source),
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} would get ${sourceNameOf(t, f.subject)}, which is suspect, on watch, or comes of a suspect jar.`,
  remedy: () => 'Taste and check; mark it sound again, or pitch from elsewhere.',
};
