// Hazard: dark beer before light.
import { carriedBeerL, carriedChange } from '../science/index.ts';
import { brewName, brewSubject, drawnInto, hazardByBrew, sourceBeer } from './rule.ts';

export const darkToLight = hazardByBrew({
  id: 'dark-to-light',
  title: 'Dark beer before light',
  level: 'hazard',
  unit: 'hazard',
  weight: {
    home: 0.02,
    nano: 0.02,
    unit: 'hazard a just noticeable change',
    says: 'How much a just noticeable change of colour is risked.',
    source:
      'a guess; noticeable taken as a tenth of the beer and at least 1 EBC, common practice, no source',
  },
  says: 'Slurry carries colour along: computed from the mL drawn, the batch and the two beers.',
  at(t, b, weight, found) {
    const beer = sourceBeer(t, b);
    const brew = t.problem.brews[b];
    if (!beer || !brew || beer.ebc <= brew.ebc) return;
    const litres = carriedBeerL(drawnInto(t, b), t.problem.settings.slurryBeerShare);
    const change = carriedChange(brew.ebc, brew.volumeL, beer.ebc, litres);
    const notice = Math.max(1, brew.ebc / 10);
    if (change > 0) found((weight * change) / notice, b, Math.round(change * 100));
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${sourceBeer(t, f.subject)?.name} brings ${(f.other / 100).toFixed(2)} EBC into ${brewName(t, f.subject)}.`,
  remedy: () => 'Brew the paler one first.',
});
