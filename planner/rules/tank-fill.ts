// Between the tank's smallest and largest fill.
import { brewName, brewSubject, hardByBrew, tankName } from './rule.ts';

export const tankFill = hardByBrew({
  id: 'tank-fill',
  title: 'The tank fits the brew',
  level: 'hard',
  unit: 'litres',
  says: "A brew is neither more than its tank's largest fill nor less than its smallest.",
  at(t, b, found) {
    const tank = t.problem.tanks[t.tank[b] as number];
    const brew = t.problem.brews[b];
    if (!tank || !brew) return;
    const off = Math.max(brew.volumeL - tank.maxFillL, tank.minFillL - brew.volumeL);
    if (off > 1e-9) found(Math.ceil(off), b, 0);
  },
  subject: brewSubject,
  explain: (t, f) => {
    const tank = t.problem.tanks[t.tank[f.subject] ?? 0];
    return `${brewName(t, f.subject)} is ${t.problem.brews[f.subject]?.volumeL} L; ${tankName(t, f.subject)} takes ${tank?.minFillL} to ${tank?.maxFillL} L.`;
  },
  remedy: () => 'Choose another tank or another batch size.',
});
