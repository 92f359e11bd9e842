// A season of two brews of one dear yeast, where one pack and a larger starter could feed both.
//
// Yeast never dies here and a jar for the next season is worth nothing. 20 L at 12 °P want 180 billion cells fresh and 240 out
// of a jar. A pack of 200 costs 40.00, a delivery 6.00. In First there is fruit, so nothing is pitched that was harvested
// from it, and Second is brewed 24 days later, far beyond a shared delivery.
import type { House } from '../../planner/model/index.ts';
import { aBrew, aSeason, aTank, aYeast, TWELVE_P, UNDYING } from './season.ts';

export const TODAY = '2027-02-10';

export const twoOfOnePack = (keptStarterJars: number, rules: House['rules'] = {}): House =>
  aSeason({
    rules: { ...UNDYING, endJarValue: 0, keptStarterJars, ...rules },
    starterGear: { vessels: 1, maxLitres: 4, stirred: true },
    tanks: [aTank(), aTank({ tank: 'Keg B' })],
    yeasts: [aYeast({ packsOnHand: 0, packsMadeOn: null, packPrice: 40 })],
    brews: [
      aBrew({
        brew: 'First',
        og: TWELVE_P,
        value: 0,
        brewOn: '2027-03-03',
        additions: ['fruit'],
      }),
      aBrew({ brew: 'Second', og: TWELVE_P, value: 0, brewOn: '2027-03-27' }),
    ],
  });
