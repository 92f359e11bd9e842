// Whether a house means something that can be planned: everything that its shape alone does not say.
import { checkBrews } from './checks/brews.ts';
import { checkCounts } from './checks/counts.ts';
import { type Draft, draftOf, type Placing } from './checks/draft.ts';
import { type Found, reportOn } from './checks/report.ts';
import { checkJars, checkNames, checkTanks, checkYeasts } from './checks/rows.ts';
import { checkRuleNames } from './checks/rules.ts';
import { checkSeason } from './checks/season.ts';
import type { House } from './house.ts';
import type { Problem } from './problem-report.ts';

/** Places in the document itself: `brews[3].og`. */
export const inDocument: Placing = (path) => ({
  path: path
    .map((part, at) => (typeof part === 'number' ? `[${part}]` : `${at > 0 ? '.' : ''}${part}`))
    .join(''),
  field: String([...path].reverse().find((part) => typeof part === 'string') ?? 'the house'),
});

/** All that is wrong with the meaning of a house, as far as the house is known. */
export function findMeaning(draft: Draft, place: Placing): Found[] {
  const found: Found[] = [];
  const report = reportOn(draft, place, found);
  checkSeason(report);
  checkRuleNames(report);
  checkNames(report);
  checkTanks(report);
  checkYeasts(report);
  checkJars(report);
  checkBrews(report);
  checkCounts(report);
  return found;
}

/**
 * What is wrong with a house of sound shape: names that stand twice or that nothing defines, days out
 * of order, amounts that fit nowhere. Errors stop planning; warnings say what the plan will make of it.
 */
export function checkHouse(house: House): Problem[] {
  return findMeaning(draftOf(house), inDocument).map((found) => found.problem);
}
