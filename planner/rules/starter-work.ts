// Work: minutes for starters.
import { brewName, brewSubject, type CostRule, eachChoice, money, plural } from './rule.ts';

export const starterWork: CostRule = {
  id: 'starter-work',
  title: 'Work on starters',
  level: 'cost',
  part: 'work',
  unit: 'money',
  weight: null,
  says: 'A starter takes its minutes.',
  check(t, _weight, found) {
    const p = t.problem;
    const each = money(p, p.settings.starterMinutes * p.settings.pricePerMinute);
    if (each === 0) return;
    eachChoice(t, (b) => {
      if ((t.starterLitres[b] as number) > 0) found(each, b, p.settings.starterMinutes);
    });
  },
  subject: brewSubject,
  explain: (t, f) => `${plural(f.other, 'minute')} for the starter of ${brewName(t, f.subject)}.`,
  remedy: () => 'Save more slurry so that no starter is needed.',
};
