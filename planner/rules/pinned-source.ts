// A pinned tank or source holds.
import { brewName, brewSubject, hardByBrew, sourceName, tankName } from './rule.ts';

export const pinnedSource = hardByBrew({
  id: 'pinned-source',
  title: 'Pins hold',
  level: 'hard',
  unit: 'pins',
  says: 'A brew keeps the tank and the source that it is pinned to.',
  at(t, b, found) {
    const brew = t.problem.brews[b];
    if (!brew) return;
    if (brew.pinTank >= 0 && brew.pinTank !== t.tank[b]) found(1, b, 0);
    if (brew.pinSource >= -1 && brew.pinSource !== t.source[b]) found(1, b, 1);
  },
  subject: brewSubject,
  explain: (t, f) => {
    const brew = t.problem.brews[f.subject];
    const name = brewName(t, f.subject);
    return f.other === 0
      ? `${name} is pinned to tank ${t.problem.tanks[brew?.pinTank ?? 0]?.name ?? '?'} but stands in ${tankName(t, f.subject)}.`
      : `${name} is pinned to ${sourceName(t, brew?.pinSource ?? -1)} but is pitched otherwise.`;
  },
  remedy: (t, f) => `Take the pin of ${brewName(t, f.subject)} out, or make room for it.`,
});
