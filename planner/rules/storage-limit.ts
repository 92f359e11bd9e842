// Slurry stored too long is not pitched.
import { FRESH } from '../timeline/problem.ts';
import { brewName, brewSubject, hardByBrew, plural, sourceNameOf } from './rule.ts';
import { comesBefore } from './yeast-forward.ts';

export const storageLimit = hardByBrew({
  id: 'storage-limit',
  title: 'Storage limit',
  level: 'hard',
  unit: 'days',
  says: 'Slurry stored longer than the limit is not pitched, starter or not.',
  relaxedTo: {
    home: 0.08,
    nano: 0.1,
    unit: 'hazard',
    says: 'How much more a pitch of too old a jar is risked.',
    source: 'a guess; common practice, no source',
  },
  at(t, b, found) {
    const most = t.problem.settings.maxStorageDays;
    if (t.source[b] === FRESH) return;
    const over = (t.ageDays[b] as number) - most;
    if (over > 0) found(over, b, 0);
  },

  bars(t, b, source, useDay) {
    if (source === FRESH || !comesBefore(t, b, source)) return false;
    const p = t.problem;
    const nJars = p.jars.length;
    const from =
      source < nJars
        ? (p.jars[source]?.harvestedDay ?? 0)
        : (t.harvestDay[source - nJars] as number);
    return useDay - from > p.settings.maxStorageDays;
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${sourceNameOf(t, f.subject)} would be ${plural(t.ageDays[f.subject] as number, 'day')} old for ${brewName(t, f.subject)}; the limit is ${t.problem.settings.maxStorageDays}.`,
  remedy: () => 'Pitch it sooner, or from a younger harvest.',
});
