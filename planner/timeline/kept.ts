// A part of a starter that is kept: what a brew gives then comes out of its starter on brew day and not out of its beer.
import { starterGivesB } from '../science/index.ts';
import { FRESH, type Problem } from './problem.ts';
import type { Timeline } from './timeline.ts';

/**
 * Stands among the crops: nothing is harvested from the beer, a part of its starter goes into a jar on brew day. Only a
 * growth starter out of fresh packs has one to give; any other brew with this crop gives nothing.
 */
export const KEPT = -2;

/** Whether a source is what was kept of a starter. */
export function fromStarter(t: Timeline, source: number): boolean {
  return t.crop[source - t.problem.jars.length] === KEPT;
}

/** Generation of what brew `from` gives, when it is pitched: a starter adds none, a beer adds one. */
export function givenGeneration(t: Timeline, from: number): number {
  return (t.generation[from] as number) + (t.crop[from] === KEPT ? 0 : 1);
}

/** Living cells that the starter of brew b ends with, billion; without one, those it is pitched with. */
export function starterEndsB(p: Problem, t: Timeline, b: number): number {
  const seedB = t.done[b] ? seedOfDone(p, t, b) : (t.seedB[b] as number);
  const litres = t.starterLitres[b] as number;
  if (litres <= 0 || p.yeasts[t.yeast[b] as number]?.dry) return seedB;
  return starterGivesB(seedB, litres, p.house.starterGear.stirred, p.settings);
}

/**
 * Divides the starter of a brew whose crop is `KEPT`: its need goes into the wort, the rest into jars, as many as the
 * house keeps of one starter. Its share alive is taken as that of a fresh harvest that never lay on beer.
 */
export function divideStarter(p: Problem, t: Timeline, b: number): void {
  t.cropCellsB[b] = 0;
  t.cropMl[b] = 0;
  const yeast = p.yeasts[t.yeast[b] as number];
  const brew = p.brews[b];
  if (!yeast || !brew || t.source[b] !== FRESH) return;
  if (yeast.dry || (t.starterLitres[b] as number) <= 0) return;
  // of what was brewed before today and is not told to be in a jar, nothing was kept
  if (brew.done && brew.done.day < p.today) return;
  const gives = starterEndsB(p, t, b);
  if (!brew.done) t.pitchedB[b] = Math.min(gives, brew.needFreshB);
  const spare = Math.max(0, gives - (t.pitchedB[b] as number)) / yeast.learnt.crop.likely;
  const most = p.settings.keptStarterJars * p.house.store.jarMl * yeast.density;
  t.cropCellsB[b] = Math.min(spare, most);
  t.cropMl[b] = (t.cropCellsB[b] as number) / yeast.density;
}

/** What the starter of a brew of today was begun with: the record tells the packs and not their age. */
function seedOfDone(p: Problem, t: Timeline, b: number): number {
  const yeast = p.yeasts[t.yeast[b] as number];
  if (!yeast) return 0;
  const alive = Math.exp(-yeast.lossPerDay * p.house.packAgeOnArrivalDays);
  return (t.packs[b] as number) * yeast.row.packCellsB * alive;
}
