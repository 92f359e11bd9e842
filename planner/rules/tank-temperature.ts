// The tank holds the fermentation temperature.
import { brewName, brewSubject, hardByBrew, tankName } from './rule.ts';

export const tankTemperature = hardByBrew({
  id: 'tank-temperature',
  title: 'The tank holds the temperature',
  level: 'hard',
  unit: '°C',
  says: 'A brew goes only into a tank that can hold its fermentation temperature.',
  at(t, b, found) {
    const tank = t.problem.tanks[t.tank[b] as number];
    const brew = t.problem.brews[b];
    if (!tank || !brew) return;
    const off = Math.max(brew.fermentC - tank.maxC, tank.minC - brew.fermentC);
    if (off > 1e-9) found(Math.ceil(off), b, 0);
  },
  subject: brewSubject,
  explain: (t, f) => {
    const tank = t.problem.tanks[t.tank[f.subject] ?? 0];
    return `${brewName(t, f.subject)} ferments at ${t.problem.brews[f.subject]?.fermentC} °C; ${tankName(t, f.subject)} holds ${tank?.minC} to ${tank?.maxC} °C.`;
  },
  remedy: () => 'Choose another tank, or another fermentation temperature.',
});
