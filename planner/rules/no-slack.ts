// Regret, where a house asks for slack: yeast that would come too late if its beer slipped.
import { isoDay } from '../timeline/calendar.ts';
import {
  brewName,
  brewSubject,
  costByBrew,
  money,
  plural,
  slurryFrom,
  sourceNameOf,
} from './rule.ts';

export const noSlack = costByBrew({
  id: 'no-slack',
  title: 'No room for a slip',
  level: 'cost',
  follows: 'source',
  part: 'risk',
  unit: 'money',
  weight: {
    home: 6,
    nano: 72,
    unit: 'currency a pitch',
    says: 'How much dearer a plan may be for one pitch that bears a slip of its source.',
    source: 'a house choice',
  },
  says: 'Where slack days are asked for, a pitch whose yeast would come too late if its beer slipped by that many days costs.',
  at(t, b, weight, found) {
    const p = t.problem;
    const { slackDays } = p.settings;
    if (slackDays <= 0) return;
    const from = slurryFrom(t, b);
    // yeast that is in its jars cannot slip any more
    if (from < 0 || p.brews[from]?.harvested) return;
    const spare = Math.max(0, (t.useDay[b] as number) - (t.usableFrom[from] as number));
    if (spare < slackDays) found(money(p, (weight * (slackDays - spare)) / slackDays), b, spare);
  },
  subject: brewSubject,
  explain: (t, f) =>
    f.other === 0
      ? `${sourceNameOf(t, f.subject)} is ready on the very day that ${brewName(t, f.subject)} needs it, ${isoDay(t.useDay[f.subject] as number)}.`
      : `${sourceNameOf(t, f.subject)} is ready only ${plural(f.other, 'day')} before ${brewName(t, f.subject)} needs it.`,
  remedy: (t, f) => `Brew ${brewName(t, f.subject)} later, or pitch it from an older harvest.`,
});
