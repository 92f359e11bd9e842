// A plan that was in force, in a line. Pure.
import type { Plan } from '../../../planner/index.ts';
import { money } from '../../parts/money.ts';
import { count } from '../../parts/words.ts';
import type { EarlierPlan } from '../../queries/history.ts';

/** When it came in force, by this device's clock: '9 January 2027, 08:15'. */
export function momentWords(at: string): string {
  const moment = new Date(at);
  const day = moment.toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  });
  const time = moment.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  return `${day}, ${time}`;
}

/**
 * One plan in a line: since when, what it cost, what was wrong with it.
 * @param inForce says the currency of the house
 */
export function earlierWords(
  one: EarlierPlan,
  inForce: Pick<Plan, 'currency' | 'minorPerMajor'> | null,
): string {
  const { totals } = one;
  const words = [
    ...(inForce === null ? [] : [money(totals.costMinor, inForce)]),
    ...(totals.hard > 0 ? ['rules broken'] : []),
    ...(totals.leftOut > 0 ? [`${count(totals.leftOut, 'brew')} left out`] : []),
    ...(totals.lateDays > 0 ? [`${count(totals.lateDays, 'day')} late`] : []),
    ...(one.sameState && !one.inForce ? ['nothing has happened since'] : []),
  ];
  return [momentWords(one.inForceAt), ...words].join('; ');
}
