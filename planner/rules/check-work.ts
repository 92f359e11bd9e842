// Work: minutes to check a jar before it is pitched.
import { FRESH } from '../timeline/problem.ts';
import { brewName, brewSubject, costByBrew, money, plural } from './rule.ts';

export const checkWork = costByBrew({
  id: 'check-work',
  title: 'Work on checks',
  level: 'cost',
  follows: 'pitch',
  part: 'work',
  unit: 'money',
  weight: null,
  says: 'Each jar is checked before it is pitched, and the check takes its minutes.',
  at(t, b, _weight, found) {
    const p = t.problem;
    const each = money(p, p.settings.checkMinutes * p.settings.pricePerMinute);
    if (each === 0) return;
    if (t.source[b] !== FRESH) found(each, b, p.settings.checkMinutes);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${plural(f.other, 'minute')} to check the slurry for ${brewName(t, f.subject)}.`,
  remedy: () => 'None: a check is what keeps a bad culture out of the next beer.',
});
