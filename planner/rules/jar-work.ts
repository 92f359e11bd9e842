// Work: minutes for each jar that is cut at a harvest.
import { brewName, brewSubject, costByBrew, money, plural } from './rule.ts';

export const jarWork = costByBrew({
  id: 'jar-work',
  title: 'Work on jars',
  level: 'cost',
  follows: 'harvest',
  part: 'work',
  unit: 'money',
  weight: null,
  says: 'Each jar that is filled takes its minutes.',
  factsToo: true,
  at(t, b, _weight, found) {
    const p = t.problem;
    const cut = t.jarsCut[p.jars.length + b] as number;
    const jars = cut + ((t.reserveUntil[b] as number) > 0 ? 1 : 0);
    if (jars === 0 || p.brews[b]?.harvested) return;
    const all = money(p, jars * p.settings.jarMinutes * p.settings.pricePerMinute);
    if (all > 0) found(all, b, jars);
  },
  subject: brewSubject,
  explain: (t, f) => `${plural(f.other, 'jar')} out of ${brewName(t, f.subject)}.`,
  remedy: () => 'Use larger jars.',
});
