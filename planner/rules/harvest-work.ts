// Work: minutes for each harvest.
import { KEPT } from '../timeline/kept.ts';
import { brewName, brewSubject, costByBrew, money, plural } from './rule.ts';

export const harvestWork = costByBrew({
  id: 'harvest-work',
  title: 'Work on harvests',
  level: 'cost',
  follows: 'harvest',
  part: 'work',
  unit: 'money',
  weight: null,
  says: 'Each harvest takes its minutes.',
  factsToo: true,
  at(t, b, _weight, found) {
    const p = t.problem;
    if (!(t.draws[p.jars.length + b] as number) || p.brews[b]?.harvested) return;
    // a part kept of a starter is poured off as it is decanted: its jar is work, no harvest is
    if (t.crop[b] === KEPT) return;
    const each = money(p, p.settings.harvestMinutes * p.settings.pricePerMinute);
    if (each > 0) found(each, b, p.settings.harvestMinutes);
  },
  subject: brewSubject,
  explain: (t, f) => `${plural(f.other, 'minute')} to harvest ${brewName(t, f.subject)}.`,
  remedy: () => 'Let one harvest feed more brews.',
});
