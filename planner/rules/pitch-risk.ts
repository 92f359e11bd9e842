// Risk: what a pitch may spoil, all its hazards joined.
import { brewName, brewSubject, costByBrew } from './rule.ts';

export const pitchRisk = costByBrew({
  id: 'pitch-risk',
  title: 'Risk of a pitch',
  level: 'cost',
  follows: 'pitch',
  part: 'risk',
  unit: 'money',
  joinsHazards: true,
  weight: {
    home: 1,
    nano: 1,
    unit: 'times',
    says: 'How much the guessed risk counts.',
    source: '1: as guessed',
  },
  says: 'The value of the brew times the chance that it goes wrong, guessed from the hazards of its pitch.',
  at(t, b, weight, found) {
    const hazard = t.hazard[b] as number;
    if (hazard <= 0) return;
    const value = t.problem.brews[b]?.valueMinor ?? 0;
    const amount = Math.round(value * weight * (1 - Math.exp(-hazard)));
    if (amount > 0) found(amount, b, 0);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)}: a guessed chance of ${((1 - Math.exp(-(t.hazard[f.subject] as number))) * 100).toFixed(1)} % that the pitch spoils it.`,
  remedy: () => 'Choose a younger, cleaner or earlier source.',
});
