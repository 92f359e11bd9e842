// Cash: the wort of starters.
import { brewName, brewSubject, costByBrew, money } from './rule.ts';

export const starterWort = costByBrew({
  id: 'starter-wort',
  title: 'Starter wort',
  level: 'cost',
  follows: 'pitch',
  part: 'cash',
  unit: 'money',
  weight: null,
  says: 'A starter costs its wort by the litre.',
  at(t, b, _weight, found) {
    const p = t.problem;
    const litres = t.starterLitres[b] as number;
    if (litres > 0) found(money(p, litres * p.settings.starterWortPerL), b, 0);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${(t.starterLitres[f.subject] as number).toFixed(2)} L of starter wort for ${brewName(t, f.subject)}.`,
  remedy: () => 'Save more slurry, or pitch it younger, so that no starter is needed.',
});
