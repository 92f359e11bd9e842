// Nothing pitched that was harvested from beer at or above the ceiling.
import { beerOf, brewName, brewSubject, hardByBrew, sourceBeer } from './rule.ts';

export const gravityCeiling = hardByBrew({
  id: 'gravity-ceiling',
  title: 'Gravity ceiling',
  level: 'hard',
  unit: 'gravity points',
  says: 'Yeast out of strong beer is not pitched again.',
  relaxedTo: {
    home: 0.1,
    nano: 0.15,
    unit: 'hazard',
    says: 'How much more a pitch out of too strong a beer is risked.',
    source: 'a guess; direction from supplier advice to harvest at most at 18 °P',
  },
  at(t, b, found) {
    const ceiling = t.problem.settings.gravityCeiling;
    const beer = sourceBeer(t, b);
    if (beer && beer.ogSg >= ceiling - 1e-9) {
      found(1 + Math.floor((beer.ogSg - ceiling) * 1000 + 1e-6), b, 0);
    }
  },

  bars: (t, _b, source) =>
    (beerOf(t, source)?.ogSg ?? 0) >= t.problem.settings.gravityCeiling - 1e-9,
  subject: brewSubject,
  explain: (t, f) =>
    `${brewName(t, f.subject)} would get yeast out of a beer of ${sourceBeer(t, f.subject)?.ogSg.toFixed(3)}; the ceiling is ${t.problem.settings.gravityCeiling.toFixed(3)}.`,
  remedy: () => 'Pitch it from a lighter beer or from fresh packs.',
});
