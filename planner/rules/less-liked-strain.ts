// Regret: a strain that the brew likes less than another.
import { brewName, brewSubject, costByBrew, money, yeastName } from './rule.ts';

export const lessLikedStrain = costByBrew({
  id: 'less-liked-strain',
  title: 'A less-liked strain',
  level: 'cost',
  follows: 'slot',
  part: 'risk',
  unit: 'money',
  weight: {
    home: 1.5,
    nano: 12,
    unit: 'currency a place',
    says: 'How much each place down the list of liked strains costs.',
    source: 'a house choice',
  },
  says: 'A strain further down the list that a brew accepts costs a little.',
  at(t, b, weight, found) {
    const place = t.problem.brews[b]?.yeasts.indexOf(t.yeast[b] as number) ?? 0;
    if (place > 0) found(money(t.problem, place * weight), b, place);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} gets ${yeastName(t, f.subject)}, choice ${f.other + 1} of its list.`,
  remedy: () => 'Order its best-liked strain, at the price of keeping one strain more.',
});
