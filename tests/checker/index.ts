// A second judge of plans, written from the planning problem as it is stated and from nothing else.
import type { Facts, House, Pin, Plan } from '../../planner/index.ts';
import { checkAmounts } from './amounts.ts';
import { caseOf, type Violation } from './case.ts';
import { checkFacts } from './facts.ts';
import { checkFlow, checkHarvests } from './flow.ts';
import { checkCalendar } from './kettle-and-calendar.ts';
import { checkParentage } from './parentage.ts';
import { checkReserves } from './reserve.ts';
import { checkShelf } from './shelf.ts';
import { checkStarters } from './starters.ts';
import { checkSums } from './sums.ts';
import { checkTanks } from './tanks.ts';

export type { Violation } from './case.ts';

const NOTHING_HAPPENED: Facts = {
  brewed: [],
  harvested: [],
  notBefore: [],
  begun: [],
  bought: [],
  goneJars: [],
  measured: [],
  passed: [],
  lostPacks: [],
};

/**
 * Every way in which a plan breaks the hard rules, the dates or the amounts of the planning problem.
 * Empty: the plan is sound. Brews already brewed count in tanks, kettle and jars but are not judged.
 */
export function checkPlan(
  house: House,
  plan: Plan,
  facts: Facts = NOTHING_HAPPENED,
  pins: readonly Pin[] = [],
): Violation[] {
  const found: Violation[] = [];
  const c = caseOf(house, plan, facts, pins, (rule, subject, amount, unit, says) => {
    found.push({ rule, subject, amount, unit, says });
  });
  checkCalendar(c);
  checkTanks(c);
  checkHarvests(c);
  checkFlow(c);
  checkAmounts(c);
  checkReserves(c);
  checkShelf(c);
  checkParentage(c);
  checkStarters(c);
  checkFacts(c);
  checkSums(c);
  return found;
}
