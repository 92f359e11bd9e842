// Hazard: weak yeast.
import { brewName, brewSubject, hazardByBrew } from './rule.ts';

export const weakYeast = hazardByBrew({
  id: 'weak-yeast',
  title: 'Weak yeast',
  level: 'hazard',
  unit: 'hazard',
  weight: {
    home: 0.2,
    nano: 0.3,
    unit: 'hazard a whole share',
    says: 'How much yeast below nine tenths alive is risked.',
    source: 'a guess; Murphy & Son: above 90 % required',
  },
  says: 'Fewer living cells mean a slower start; a starter takes most of that away.',
  at(t, b, weight, found) {
    const short = 0.9 - (t.viability[b] as number);
    if (short <= 0) return;
    const woken = (t.starterLitres[b] as number) > 0 ? 0.25 : 1;
    found(weight * short * woken, b, Math.round((t.viability[b] as number) * 100));
  },
  subject: brewSubject,
  explain: (t, f) => `${brewName(t, f.subject)} gets yeast that is ${f.other} % alive.`,
  remedy: () => 'Pitch it sooner, from a younger harvest, or with a starter.',
});
