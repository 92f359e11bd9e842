// Where each brew can stand: its nodes, the tanks of each, and the crops that it can give there.
import { FAR, FRESH, type Problem, STARTER_SIZES } from '../timeline/problem.ts';
import type { Asker, CropWay } from './ask.ts';
import { cupboardAt, type PackWay, packWays } from './packs.ts';
import type { Groups } from './tanks.ts';

export type Berth = { group: number; from: number; until: number; cost: number; kind: number };

/** How a brew can be pitched on a day: the size of the starter, and when the yeast leaves its jar. */
export type Start = { size: number; use: number; ways: PackWay[] };

/** A brew on one day with one strain, whatever its generation. */
export type Spot = {
  day: number;
  at: number;
  yeast: number;
  tank: number;
  berths: Berth[];
  /** By kind of tank: the crops that it can give. */
  crops: CropWay[][];
  starts: Start[];
};

/** Every spot in which brew b can stand without a hard rule finding anything on it alone. */
export function spotsOf(asker: Asker, groups: Groups, b: number): Spot[] {
  const { problem: p, t } = asker;
  const brew = p.brews[b];
  if (!brew || brew.done) return [];
  // a pin to a source finds packs at fault: that alone does not close a spot
  const allowed = brew.pinSource >= 0 ? 1 : 0;
  const known: KnownWays = new Map();
  const out: Spot[] = [];
  for (const day of brew.days) {
    for (const yeast of brew.yeasts) {
      const spot: Spot = {
        day,
        at: groups.indexFrom(day),
        yeast,
        tank: -1,
        berths: [],
        crops: [],
        starts: [],
      };
      const kinds: string[] = [];
      const seen = new Set<number>();
      for (const tank of brew.tanks) {
        const group = groups.groupOf[tank] as number;
        if (seen.has(group)) continue;
        seen.add(group);
        asker.stand(b, day, tank, yeast, 0);
        if (asker.broken(b) > allowed || isOut(p, tank, day, t.emptied[b] as number)) continue;
        const until = groups.indexFrom(t.free[b] as number);
        if (isFull(groups, group, spot.at, until)) continue;
        const crops = asker.crops(b).filter((crop) => crop.usableFrom < FAR);
        const key = JSON.stringify(crops);
        let kind = kinds.indexOf(key);
        if (kind < 0) {
          kind = kinds.push(key) - 1;
          spot.crops.push(crops);
        }
        const cost = asker.cost(b, 'slot');
        spot.berths.push({ group, from: spot.at, until, cost, kind });
        spot.tank = tank;
      }
      if (spot.berths.length > 0) {
        spot.starts = startsOf(asker, b, spot, known);
        out.push(spot);
      }
      asker.leave(b);
    }
  }
  return out;
}

/** The starters that a brew in this spot can get, and the packs with each. */
function startsOf(asker: Asker, b: number, spot: Spot, known: KnownWays): Start[] {
  const { problem: p, t } = asker;
  const brew = p.brews[b];
  const dry = p.yeasts[spot.yeast]?.dry;
  const most = dry || p.house.starterGear.vessels === 0 || brew?.begun ? 0 : STARTER_SIZES;
  const out: Start[] = [];
  let plain = 0;
  for (let size = 0; size <= most; size++) {
    asker.stand(b, spot.day, spot.tank, spot.yeast, size);
    const broken = asker.broken(b);
    if (size === 0) plain = broken;
    if (broken > plain) continue;
    const use = t.useDay[b] as number;
    const source = asker.cost(b, 'source');
    const held = brew !== undefined && brew.pinSource >= -1 && brew.pinSource !== FRESH;
    // yeast that is growing already costs nothing that a plan could still save
    const begun: PackWay[] = [{ cost: 0, fromHand: 0, ordered: false }];
    const ways = brew?.begun ? begun : held ? [] : waysOf(asker, b, spot.yeast, size, known);
    const more = brew?.begun ? 0 : source;
    out.push({ size, use, ways: ways.map((way) => ({ ...way, cost: way.cost + more })) });
  }
  return out;
}

/** Packs cost the same on any day that finds the same in the cupboard. */
type KnownWays = Map<string, readonly PackWay[]>;

function waysOf(
  asker: Asker,
  b: number,
  yeast: number,
  size: number,
  known: KnownWays,
): readonly PackWay[] {
  const key = `${yeast} ${size} ${cupboardAt(asker, b, yeast)}`;
  const before = known.get(key);
  if (before) return before;
  const made = packWays(asker, b, yeast);
  known.set(key, made);
  return made;
}

function isOut(p: Problem, tank: number, day: number, emptied: number): boolean {
  return (p.tanks[tank]?.out ?? []).some((out) => day <= out.to && out.from <= emptied);
}

function isFull(groups: Groups, group: number, from: number, until: number): boolean {
  const row = group * groups.days.length;
  for (let i = from; i < until; i++) if (groups.roomOf[row + i] === 0) return true;
  return false;
}
