// Work: minutes for starters.
import { brewName, brewSubject, costByBrew, money, plural } from './rule.ts';

export const starterWork = costByBrew({
  id: 'starter-work',
  title: 'Work on starters',
  level: 'cost',
  follows: 'pitch',
  part: 'work',
  unit: 'money',
  weight: null,
  says: 'A starter takes its minutes.',
  at(t, b, _weight, found) {
    const p = t.problem;
    const each = money(p, p.settings.starterMinutes * p.settings.pricePerMinute);
    if (each === 0) return;
    if ((t.starterLitres[b] as number) > 0) found(each, b, p.settings.starterMinutes);
  },
  subject: brewSubject,
  explain: (t, f) => `${plural(f.other, 'minute')} for the starter of ${brewName(t, f.subject)}.`,
  remedy: () => 'Save more slurry so that no starter is needed.',
});
