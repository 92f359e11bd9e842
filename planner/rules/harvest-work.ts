// Work: minutes for each harvest.
import { brewName, brewSubject, type CostRule, money, plural } from './rule.ts';

export const harvestWork: CostRule = {
  id: 'harvest-work',
  title: 'Work on harvests',
  level: 'cost',
  part: 'work',
  unit: 'money',
  weight: null,
  says: 'Each harvest takes its minutes.',
  check(t, _weight, found) {
    const p = t.problem;
    const each = money(p, p.settings.harvestMinutes * p.settings.pricePerMinute);
    if (each === 0) return;
    const nJars = p.jars.length;
    for (let b = 0; b < t.placed.length; b++) {
      if (t.placed[b] && (t.draws[nJars + b] as number) > 0 && !p.brews[b]?.harvested) {
        found(each, b, p.settings.harvestMinutes);
      }
    }
  },
  subject: brewSubject,
  explain: (t, f) => `${plural(f.other, 'minute')} to harvest ${brewName(t, f.subject)}.`,
  remedy: () => 'Let one harvest feed more brews.',
};
