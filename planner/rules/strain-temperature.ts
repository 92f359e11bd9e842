// Inside the strain's temperature range.
import { brewName, brewSubject, hardByBrew, yeastName } from './rule.ts';

export const strainTemperature = hardByBrew({
  id: 'strain-temperature',
  title: "Inside the strain's temperatures",
  level: 'hard',
  unit: '°C',
  says: 'A strain ferments only inside its own temperature range.',
  at(t, b, found) {
    const yeast = t.problem.yeasts[t.yeast[b] as number]?.row;
    const brew = t.problem.brews[b];
    if (!yeast || !brew) return;
    const off = Math.max(brew.fermentC - yeast.maxC, yeast.minC - brew.fermentC);
    if (off > 1e-9) found(Math.ceil(off), b, 0);
  },
  subject: brewSubject,
  explain: (t, f) => {
    const yeast = t.problem.yeasts[t.yeast[f.subject] ?? 0]?.row;
    return `${brewName(t, f.subject)} ferments at ${t.problem.brews[f.subject]?.fermentC} °C; ${yeastName(t, f.subject)} works from ${yeast?.minC} to ${yeast?.maxC} °C.`;
  },
  remedy: () => 'Choose another strain, or another fermentation temperature.',
});
