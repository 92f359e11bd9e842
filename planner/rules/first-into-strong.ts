// Hazard: first pitch into strong wort.
import { fromStarter } from '../timeline/kept.ts';
import { FRESH } from '../timeline/problem.ts';
import { brewName, brewSubject, hazardByBrew } from './rule.ts';

export const firstIntoStrong = hazardByBrew({
  id: 'first-into-strong',
  title: 'First pitch into strong wort',
  level: 'hazard',
  unit: 'hazard',
  weight: {
    home: 0.02,
    nano: 0.025,
    unit: 'hazard',
    says: 'How much a first pitch into strong wort is risked.',
    source:
      'a guess; White Labs guidelines: first fermentation 1–3 days slower, best in a 10–12 °P beer',
  },
  says: 'A fresh pack meets strong wort at its weakest: its first fermentation is the slowest.',
  at(t, b, weight, found) {
    const brew = t.problem.brews[b];
    if (!brew || brew.ogP <= t.problem.settings.strongFromP) return;
    // what was kept of a starter has made no beer either
    const source = t.source[b] as number;
    if (source !== FRESH && !fromStarter(t, source)) return;
    found(weight, b, Math.round(brew.ogP * 10));
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} (${(f.other / 10).toFixed(1)} °P) is the first beer of its ${t.source[f.subject] === FRESH ? 'packs' : 'yeast'}.`,
  remedy: () => 'Let the packs make a lighter beer first.',
});
