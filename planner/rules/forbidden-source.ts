// A source that was ruled out for a brew is not used for it.
import { brewName, brewSubject, hardByBrew, sourceNameOf } from './rule.ts';

export const forbiddenSource = hardByBrew({
  id: 'forbidden-source',
  title: 'Sources ruled out',
  level: 'hard',
  unit: 'pitches',
  says: 'A brew is not pitched from a source that was ruled out for it.',
  at(t, b, found) {
    if (t.problem.brews[b]?.forbidden.includes(t.source[b] as number)) found(1, b, 0);
  },

  bars: (t, b, source) => t.problem.brews[b]?.forbidden.includes(source) ?? false,
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} would get ${sourceNameOf(t, f.subject)}, which was ruled out for it.`,
  remedy: (t, f) =>
    `Allow that source for ${brewName(t, f.subject)} again, or give it another one.`,
});
