// Money as people read it, and differences of money with their sign said.
import { type Coin, money } from '../../planner/index.ts';

export { money };

/** A difference with its sign said: '€3 more', '€2.40 less', 'the same'. */
export function moneyDifference(amountMinor: number, coin: Coin): string {
  if (amountMinor === 0) return 'the same';
  return `${money(Math.abs(amountMinor), coin)} ${amountMinor > 0 ? 'more' : 'less'}`;
}
