// Prices to begin with: each brew pays what it costs at least by itself, no delivery earns more than it costs, no jar is kept for gain.
import type { Forest } from './forest.ts';

/** At these prices no tree costs less than nothing: the bound is the sum of what each brew costs at least. */
export function opening(forest: Forest): Float64Array {
  const { net, at } = forest;
  const { levels } = net;
  const prices = new Float64Array(at.count);
  const { start, minor, orders } = net.deliveries;
  let most = 1;
  for (let i = 0; i + 1 < start.length; i++) {
    most = Math.max(most, (start[i + 1] as number) - (start[i] as number));
  }
  prices.fill((minor / most) * (1 - 1e-9), at.orders, at.orders + orders);
  for (let s = 0; s < net.states; s++) {
    const keeps = at.keeps + (net.stateYeast[s] as number);
    for (let level = 0; level < levels; level++) {
      const worth = -(net.stateKeep[s * levels + level] as number);
      if (worth > (prices[keeps] as number)) prices[keeps] = worth;
    }
  }
  const nodes = net.nodeDay.length;
  const fed = new Float64Array(nodes).fill(Infinity);
  const less = (n: number, cost: number) => {
    if (cost < (fed[n] as number)) fed[n] = cost;
  };
  for (let n = 0; n < nodes; n++) {
    for (let w = net.wayStart[n] as number; w < (net.wayStart[n + 1] as number); w++) {
      const order = net.wayOrder[w] as number;
      less(n, (net.wayCost[w] as number) + (order < 0 ? 0 : (prices[at.orders + order] as number)));
    }
  }
  for (let i = 0; i < net.jarNode.length; i++)
    less(net.jarNode[i] as number, net.jarCost[i] as number);
  for (let a = 0; a < net.arcNode.length; a++) {
    for (let level = 0; level < levels; level++) {
      less(net.arcNode[a] as number, net.arcCost[a * levels + level] as number);
    }
  }
  for (let c = 0; c < net.brews; c++) {
    let least = Infinity;
    for (let n = net.nodeStart[c] as number; n < (net.nodeStart[c + 1] as number); n++) {
      for (let k = net.berthStart[n] as number; k < (net.berthStart[n + 1] as number); k++) {
        least = Math.min(least, (fed[n] as number) + (net.berthCost[k] as number));
      }
    }
    prices[at.brews + c] = least < Infinity ? least : 0;
  }
  return prices;
}
