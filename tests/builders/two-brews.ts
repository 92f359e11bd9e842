// A season of two brews that was worked out on paper: a bitter from a pack, and a paler, stronger ale from its slurry.
//
// Brewed on Saturdays, worked on Wednesdays and Saturdays. First is brewed on 6 March 2027, Second on the 27th,
// both fixed; the jar that a season's end is worth is taken out, so that nothing is left to choose.
import type { House } from '../../planner/model/index.ts';
import { aBrew, aSeason, aTank, aYeast, TWELVE_P } from './season.ts';

/** The gravity of 15 °P in the sucrose tables. */
export const FIFTEEN_P = 1.06111;

export const FIRST_ON = '2027-03-06';
export const SECOND_ON = '2027-03-27';

export function twoBrews(): House {
  return aSeason({
    name: 'Two Brews',
    brewDays: ['sat'],
    workDays: ['wed', 'sat'],
    rules: { endJarValue: 0 },
    tanks: [aTank(), aTank({ tank: 'Keg B' })],
    yeasts: [aYeast({ packsOnHand: 0, packsMadeOn: null, packPrice: 10.5 })],
    brews: [
      aBrew({
        brew: 'First',
        og: TWELVE_P,
        fg: 1.012,
        ebc: 40,
        ibu: 30,
        fermentC: 18,
        tankDays: 14,
        conditionDays: 10,
        brewOn: FIRST_ON,
        value: 50,
      }),
      aBrew({
        brew: 'Second',
        og: FIFTEEN_P,
        fg: 1.014,
        ebc: 10,
        ibu: 45,
        fermentC: 20,
        tankDays: 14,
        conditionDays: 10,
        brewOn: SECOND_ON,
        readyBy: '2027-04-18',
        value: 60,
      }),
    ],
  });
}
