// Every way in which each brew of a small season can be brewed, with what it costs and what it leaves behind.
//
// A brew is brewed in a slot (day, tank, strain), gets one pitch (packs, a jar, or the crop of another brew),
// and may leave one crop. A pitch out of a crop names the crop exactly: which brew, begun when, harvested
// when, crashed or not, which generation. So every cost belongs to one slot, one pitch or one crop.
import {
  densityBPerMl,
  earliestCropDay,
  recoverableShare,
} from '../../../planner/science/index.ts';
import { pitchesOf } from './pitches.ts';
import { type BrewRead, dayOf, type Season, yeastOf } from './reading.ts';

export type Slot = {
  b: number;
  day: number;
  tank: number;
  yeast: number;
  emptied: number;
  /** First day on which the next brew may start in the tank. */
  free: number;
  ready: number;
  cost: number;
};

/** A crop as a pitch names it. */
export type Crop = {
  key: string;
  b: number;
  day: number;
  yeast: number;
  harvested: number;
  crashed: boolean;
  /** Of the slurry. */
  generation: number;
  /** Share alive on the day of harvest. */
  alive: number;
  daysAfterHops: number;
};

/** A crop as it comes about: in which tank, and how much of it there is. */
export type CropWay = { crop: Crop; tank: number; grownB: number; ml: number };

export type Source =
  | { kind: 'packs'; fromHand: number; bought: number }
  | { kind: 'jar'; jar: number }
  | { kind: 'crop'; crop: Crop };

export type Pitch = {
  b: number;
  day: number;
  yeast: number;
  source: Source;
  starterQuarters: number;
  /** First day of the starter, or the brew day. */
  use: number;
  /** Of what is pitched. */
  generation: number;
  /** What it grows into, billion cells. */
  grownB: number;
  drawMl: number;
  jars: number;
  cost: number;
};

export type Ways = { slots: Slot[]; pitches: Pitch[]; crops: CropWay[] };

/** Everything that the season could hold. Brew days are walked forward, so that a crop is there before its pitch. */
export function everyWay(z: Season): Ways {
  const ways: Ways = { slots: [], pitches: [], crops: [] };
  const crops = new Map<string, Crop>();
  const days = [...new Set(z.brews.flatMap((b) => b.days))].sort((a, b) => a - b);
  for (const day of days) {
    const begunHere = new Map<string, Crop>();
    z.brews.forEach((brew, b) => {
      if (!brew.days.includes(day)) return;
      for (const name of brew.yeasts) {
        const y = z.house.yeasts.findIndex((yeast) => yeast.yeast === name);
        const slots = slotsOf(z, brew, b, day, y);
        if (slots.length === 0) continue;
        const pitches = worthwhile(z, pitchesOf(z, brew, b, day, y, [...crops.values()]));
        ways.slots.push(...slots);
        ways.pitches.push(...pitches);
        const left = new Map<string, Pitch>();
        for (const p of pitches) left.set(`${p.generation} ${p.grownB.toFixed(6)}`, p);
        for (const pitch of left.values()) {
          for (const slot of slots) {
            for (const way of cropsOf(z, brew, slot, pitch)) {
              begunHere.set(way.crop.key, begunHere.get(way.crop.key) ?? way.crop);
              ways.crops.push(way);
            }
          }
        }
      }
    });
    for (const [key, crop] of begunHere) crops.set(key, crop);
  }
  return ways;
}

/**
 * Drops pitches that some pitch out of new packs can replace in any plan without making it worse: it costs no
 * more even with a delivery of its own, grows no less, and begins a generation sooner. Jars stay: a jar that
 * is not used goes on taking room.
 */
function worthwhile(z: Season, pitches: readonly Pitch[]): Pitch[] {
  const delivery = z.money(z.house.deliveryCost);
  const jar = z.money(z.s.jarMinutes * z.s.pricePerMinute);
  const plain = pitches.filter(
    ({ source: f, starterQuarters }) =>
      f.kind === 'packs' && f.fromHand === 0 && starterQuarters === 0,
  );
  return pitches.filter(
    (pitch) =>
      pitch.source.kind === 'jar' ||
      plain.includes(pitch) ||
      !plain.some(
        (packs) =>
          packs.cost + delivery <= pitch.cost + jar * pitch.jars && packs.grownB >= pitch.grownB,
      ),
  );
}

function slotsOf(z: Season, brew: BrewRead, b: number, day: number, y: number): Slot[] {
  const yeast = yeastOf(z, y);
  if (brew.fermentC < yeast.minC || brew.fermentC > yeast.maxC) return [];
  const emptied = z.workDayFrom(day + brew.tankDays);
  const ready = emptied + brew.conditionDays;
  let cost = z.money(brew.yeasts.indexOf(yeast.yeast) * z.weight('less-liked-strain'));
  if (brew.readyBy !== null) {
    const late = Math.max(0, ready - dayOf(brew.readyBy));
    const stale = Math.max(0, dayOf(brew.readyBy) - ready - z.s.freshDays);
    cost += z.money(late * brew.priority * z.weight('lateness'));
    if (brew.fades) cost += z.money(stale * z.weight('freshness'));
  }
  const turnarounds = yeast.nature === 'clean' ? 1 : 2;
  const out: Slot[] = [];
  z.house.tanks.forEach((tank, k) => {
    if (brew.volumeL > tank.maxFillL || brew.volumeL < tank.minFillL) return;
    if (brew.fermentC > tank.maxC || brew.fermentC < tank.minC) return;
    if (tank.outOfUse.some((o) => day <= dayOf(o.to) && dayOf(o.from) <= emptied)) return;
    const free = emptied + tank.turnaroundDays * turnarounds;
    out.push({ b, day, tank: k, yeast: y, emptied, free, ready, cost });
  });
  return out;
}

/** The crops that a brew in this slot can leave after this pitch: one for each day on which it may be harvested. */
function cropsOf(z: Season, brew: BrewRead, slot: Slot, pitch: Pitch): CropWay[] {
  // whatever a house relaxes, mixed cultures are never pitched again
  if (brew.souring === 'mixed') return [];
  const yeast = yeastOf(z, slot.yeast);
  const tank = z.house.tanks[slot.tank];
  if (!tank) return [];
  const slow = { lager: yeast.kind === 'lager', ogP: brew.beer.ogP };
  const byKind = earliestCropDay({ ...slow, flocculation: yeast.flocculation }, z.s);
  const fermented = slot.day + Math.min(byKind, brew.tankDays);
  const harvests = new Set([slot.emptied]);
  if (tank.bottomOutlet) {
    let d = z.workDayFrom(slot.day + (brew.harvestDay ?? byKind));
    for (; d < slot.emptied; d = z.workDayFrom(d + 1)) harvests.add(d);
  }
  const density = densityBPerMl(yeast.flocculation, z.house.store.settleDays, z.s).likely;
  return [...harvests].map((harvested) => {
    const crashed =
      z.s.crashDays > 0 &&
      tank.minC <= z.s.crashC &&
      harvested - z.s.crashDays >= fermented &&
      (brew.dryHopDay === null || slot.day + brew.dryHopDay < harvested);
    const onBeer = Math.max(0, harvested - fermented);
    const cold = crashed ? Math.min(z.s.crashDays, onBeer) : 0;
    const loss = brew.beerLossPerDay * (onBeer - cold) + brew.crashLossPerDay * cold;
    const generation = pitch.generation + 1;
    const key = [slot.b, slot.day, slot.yeast, harvested, crashed ? 1 : 0, generation].join(' ');
    const cells = pitch.grownB * recoverableShare(yeast.flocculation, crashed, z.s);
    return {
      crop: {
        key,
        b: slot.b,
        day: slot.day,
        yeast: slot.yeast,
        harvested,
        crashed,
        generation,
        alive: z.cropShareAlive * Math.exp(-loss),
        daysAfterHops:
          brew.dryHopDay === null ? 0 : Math.max(0, harvested - slot.day - brew.dryHopDay),
      },
      tank: slot.tank,
      grownB: pitch.grownB,
      ml: cells / density,
    };
  });
}
