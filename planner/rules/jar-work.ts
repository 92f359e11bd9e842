// Work: minutes for each jar that is cut at a harvest.
import { brewName, brewSubject, type CostRule, money, plural } from './rule.ts';

export const jarWork: CostRule = {
  id: 'jar-work',
  title: 'Work on jars',
  level: 'cost',
  part: 'work',
  unit: 'money',
  weight: null,
  says: 'Each jar that is filled takes its minutes.',
  check(t, _weight, found) {
    const p = t.problem;
    const each = p.settings.jarMinutes * p.settings.pricePerMinute;
    if (each === 0) return;
    const nJars = p.jars.length;
    for (let b = 0; b < t.placed.length; b++) {
      const jars = t.jarsCut[nJars + b] as number;
      if (t.placed[b] && jars > 0 && !p.brews[b]?.harvested) found(money(p, jars * each), b, jars);
    }
  },
  subject: brewSubject,
  explain: (t, f) => `${plural(f.other, 'jar')} out of ${brewName(t, f.subject)}.`,
  remedy: () => 'Use larger jars.',
};
