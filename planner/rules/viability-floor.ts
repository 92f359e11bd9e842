// Too few living cells: not pitched without a starter.
import { FAR } from '../timeline/problem.ts';
import { brewName, brewSubject, hardByBrew, sourceNameOf } from './rule.ts';

export const viabilityFloor = hardByBrew({
  id: 'viability-floor',
  title: 'Viability floor',
  level: 'hard',
  unit: 'percent points',
  says: 'Yeast with too small a likely share of living cells is not pitched without a starter.',
  relaxedTo: {
    home: 0.08,
    nano: 0.12,
    unit: 'hazard',
    says: 'How much more a pitch of weak yeast is risked.',
    source: 'a guess; common practice, no source',
  },
  at(t, b, found) {
    const floor = t.problem.settings.viabilityFloor;
    // a source that is not there has no share alive: that is another rule's finding
    if ((t.starterLitres[b] as number) > 0 || (t.drawnEarly[b] as number) >= FAR) return;
    const short = floor - (t.viability[b] as number);
    if (short > 1e-9) found(Math.ceil(short * 100 - 1e-6), b, 0);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${sourceNameOf(t, f.subject)} would be ${Math.round((t.viability[f.subject] as number) * 100)} % alive for ${brewName(t, f.subject)}; without a starter the floor is ${Math.round(t.problem.settings.viabilityFloor * 100)} %.`,
  remedy: () => 'Wake it with a starter, pitch it sooner, or use a younger harvest.',
});
