// The deliveries that are worth their cost at given prices: each earns from every brew the dearest order that it can bring.
import type { Net } from './net.ts';
import type { Places } from './prices.ts';

/** Deliveries that earn more than they cost; returns what they cost less what they earn. */
export function deliver(net: Net, at: Places, prices: Float64Array, slope: Float64Array): number {
  const { start, order, brewOf, minor } = net.deliveries;
  let sum = 0;
  for (let i = 0; i + 1 < start.length; i++) {
    const end = start[i + 1] as number;
    let earned = 0;
    for (const doing of [false, true]) {
      if (doing && earned <= minor) break;
      for (let k = start[i] as number; k < end; ) {
        const brew = brewOf[order[k] as number];
        let best = -1;
        let most = 0;
        for (; k < end && brewOf[order[k] as number] === brew; k++) {
          const price = prices[at.orders + (order[k] as number)] as number;
          if (price > most) {
            most = price;
            best = order[k] as number;
          }
        }
        if (best < 0) continue;
        if (!doing) earned += most;
        else slope[at.orders + best] = (slope[at.orders + best] as number) - 1;
      }
    }
    if (earned > minor) sum += minor - earned;
  }
  return sum;
}
