// Hazard: hoppy beer before delicate.
import { carriedBeerL, carriedChange } from '../science/index.ts';
import { brewName, brewSubject, drawnInto, hazardByBrew, sourceBeer } from './rule.ts';

export const hoppyToDelicate = hazardByBrew({
  id: 'hoppy-to-delicate',
  title: 'Hoppy beer before delicate',
  level: 'hazard',
  unit: 'hazard',
  weight: {
    home: 0.02,
    nano: 0.02,
    unit: 'hazard a just noticeable change',
    says: 'How much a just noticeable change of bitterness is risked.',
    source:
      'a guess; noticeable taken as a tenth of the beer and at least 1 IBU, common practice, no source',
  },
  says: 'Slurry carries bitterness along: computed from the mL drawn, the batch and the two beers.',
  at(t, b, weight, found) {
    const beer = sourceBeer(t, b);
    const brew = t.problem.brews[b];
    if (!beer || !brew || beer.ibu <= brew.ibu) return;
    const litres = carriedBeerL(drawnInto(t, b), t.problem.settings.slurryBeerShare);
    const change = carriedChange(brew.ibu, brew.volumeL, beer.ibu, litres);
    const notice = Math.max(1, brew.ibu / 10);
    if (change > 0) found((weight * change) / notice, b, Math.round(change * 100));
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${sourceBeer(t, f.subject)?.name} brings ${(f.other / 100).toFixed(2)} IBU into ${brewName(t, f.subject)}.`,
  remedy: () => 'Brew the more delicate one first.',
});
