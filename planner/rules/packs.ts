// Cash: fresh packs bought.
import { FRESH } from '../timeline/problem.ts';
import { brewName, brewSubject, costByBrew, plural, yeastName } from './rule.ts';

export const packs = costByBrew({
  id: 'packs',
  title: 'Packs bought',
  level: 'cost',
  follows: 'pitch',
  part: 'cash',
  unit: 'money',
  weight: null,
  says: 'Fresh packs cost their price; those in the cupboard are paid for.',
  at(t, b, _weight, found) {
    if (t.source[b] !== FRESH) return;
    const bought = (t.packs[b] as number) - (t.packsFromHand[b] as number);
    const price = t.problem.yeasts[t.yeast[b] as number]?.priceMinor ?? 0;
    if (bought > 0) found(bought * price, b, bought);
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${plural(f.other, 'pack')} of ${yeastName(t, f.subject)} for ${brewName(t, f.subject)}.`,
  remedy: () => 'Pitch it from a harvest.',
});
