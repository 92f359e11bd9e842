// The most slurry that a beer can leave, whatever it is pitched with.
import { starterGivesB, starterSeedB } from '../science/index.ts';
import { type Problem, STARTER_SIZES } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';

/** mL of a crop that brew b can leave of strain y at most; less what brewed beers have drawn of it. */
export function mostMl(p: Problem, facts: Timeline, b: number, y: number): number {
  const brew = p.brews[b];
  const yeast = p.yeasts[y];
  if (!brew || !yeast) return 0;
  const recover = Math.max(yeast.recoverCrashed, yeast.recoverUncrashed);
  if (brew.harvested) {
    return Math.max(0, brew.harvested.ml - (facts.drawnMl[p.jars.length + b] as number));
  }
  const s = p.settings;
  const ceilingB = s.cellCeilingBPerL * brew.volumeL;
  const pitchedB = brew.done ? brew.done.pitchedB : mostPitchedB(p, b, y);
  const ml = (Math.min(s.growthFactor * pitchedB, ceilingB) * recover) / yeast.density;
  return Math.max(0, ml - (brew.done ? (facts.drawnMl[p.jars.length + b] as number) : 0));
}

/** The most living cells that any pitch gives: the last pack may be wanted for its first cell only. */
function mostPitchedB(p: Problem, b: number, y: number): number {
  const brew = p.brews[b];
  const yeast = p.yeasts[y];
  if (!brew || !yeast || brew.begun) return Infinity;
  const s = p.settings;
  const { maxLitres, stirred, vessels } = p.house.starterGear;
  const slurryB = brew.needHarvestedB * s.pitchMargin;
  let most = Math.max(slurryB, brew.needFreshB + yeast.row.packCellsB);
  if (yeast.dry || vessels === 0) return most;
  for (let size = 1; size <= STARTER_SIZES; size++) {
    const litres = (maxLitres * size) / STARTER_SIZES;
    for (const [wanted, more] of [
      [slurryB, 0],
      [brew.needFreshB, yeast.row.packCellsB],
    ] as const) {
      const seed = starterSeedB(wanted, litres, stirred, s);
      if (!(seed < Infinity)) continue;
      most = Math.max(most, starterGivesB(seed + more, litres, stirred, s));
    }
  }
  return most;
}
