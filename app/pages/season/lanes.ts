// Which lane of the cold store each thread lies in: as few lanes as can be, each near the bank it belongs to.
import type { Strand } from './weave.ts';

export type Bank = 'upper' | 'lower';

/** Days between the end of one thread and the start of the next in the same lane. */
const LANE_GAP_DAYS = 2;

/**
 * Lanes for threads, from 0 at the upper bank down. Threads that overlap in time never share one, and no
 * more lanes are used than overlap at the fullest moment. A thread between two beers of the upper bank
 * prefers an upper lane, of the lower bank a lower one, and one that crosses the middle.
 */
export function assignLanes(
  strands: readonly Strand[],
  bankOfBrew: ReadonlyMap<string, Bank>,
): { of: Map<string, number>; count: number } {
  const inOrder = strands.toSorted((a, b) => a.start - b.start || (a.id < b.id ? -1 : 1));
  const count = fullest(inOrder);
  const freeFrom = new Array<number>(count).fill(Number.NEGATIVE_INFINITY);
  const of = new Map<string, number>();
  for (const strand of inOrder) {
    const wish = wishedLane(strand, bankOfBrew, count);
    const lane = freeFrom
      .map((day, at) => ({ at, free: day <= strand.start, far: Math.abs(at - wish) }))
      .filter((one) => one.free)
      .toSorted((a, b) => a.far - b.far || a.at - b.at)[0]?.at;
    if (lane === undefined) continue;
    of.set(strand.id, lane);
    freeFrom[lane] = strand.end + LANE_GAP_DAYS;
  }
  return { of, count };
}

/** How many threads, each with its gap behind it, lie side by side at the fullest moment. */
function fullest(inOrder: readonly Strand[]): number {
  let most = 0;
  const ends: number[] = [];
  for (const strand of inOrder) {
    for (let at = ends.length - 1; at >= 0; at -= 1) {
      if ((ends[at] ?? 0) <= strand.start) ends.splice(at, 1);
    }
    ends.push(strand.end + LANE_GAP_DAYS);
    most = Math.max(most, ends.length);
  }
  return most;
}

function wishedLane(strand: Strand, bankOfBrew: ReadonlyMap<string, Bank>, count: number): number {
  const from = strand.from.kind === 'brew' ? bankOfBrew.get(strand.from.name) : undefined;
  const to = strand.to === null ? undefined : bankOfBrew.get(strand.to);
  const banks = [from, to].filter((bank) => bank !== undefined);
  const mean =
    banks.reduce((sum, bank) => sum + (bank === 'upper' ? 0 : 1), 0) / Math.max(1, banks.length);
  return banks.length === 0 ? (count - 1) / 2 : mean * (count - 1);
}
