// The exact model: which ways of brewing go together, and the best choice of them, proven by `highs`.
//
// Simplified where the answer stays exact: packs ordered together share a delivery only if wanted on the
// same day (the seasons set `orderWindowDays` to 0), a brew takes at most two turns of the kettle.

import type { House } from '../../../planner/index.ts';
import { type Keep, keepsOf } from './keeping.ts';
import { at, type Chosen, deliveries, grouped, limitRoom, negative, positive } from './limits.ts';
import { Program, type Term } from './program.ts';
import { readSeason, type Season } from './reading.ts';
import { type CropWay, everyWay, type Pitch, type Slot } from './ways.ts';

export type Optimum = {
  leftOutPriority: number;
  leftOutCount: number;
  costMinor: number;
  /** False: time ran out, and this is only the best that was found. */
  proven: boolean;
  slots: Slot[];
  pitches: Pitch[];
  crops: CropWay[];
  keeps: Keep[];
  /** How large the program was. */
  size: { slots: number; pitches: number; crops: number };
};

/** Priority and then count as one number: there are fewer brews than this. */
const PRIORITY = 1000;

/** The best plan that there is for this house, by the three levels in order. Throws if that takes more than a minute. */
export function solveExactly(house: House, todayIso: string): Optimum {
  const found = solveWithin(house, todayIso, 60, false);
  if (!found) throw new Error('the levels contradict each other');
  return found;
}

/** The best that `highs` has after so many seconds, or null if it has nothing yet. */
export function solveWithin(
  house: House,
  todayIso: string,
  seconds: number,
  orBest = true,
): Optimum | null {
  const z = readSeason(house, todayIso);
  const ways = everyWay(z);
  const program = new Program(seconds, orBest);
  const choose = <T>(list: readonly T[]): Chosen<T>[] =>
    list.map((way) => ({ way, x: program.variable() }));
  const slots = choose(ways.slots);
  const pitches = choose(ways.pitches);
  const keeps = choose(keepsOf(z, ways.crops));
  const wanted = new Set([
    ...ways.pitches.map(({ source }) => (source.kind === 'crop' ? source.crop.key : '')),
    ...keeps.map(({ way }) => ('crop' in way.from ? way.from.crop.crop.key : '')),
  ]);
  const crops = choose(ways.crops.filter(({ crop }) => wanted.has(crop.key)));
  const cost: Term[] = [
    ...slots.map(({ way, x }): Term => [way.cost, x]),
    ...pitches.map(({ way, x }): Term => [way.cost, x]),
  ];

  // one slot for each brew, or none; one pitch for each slot
  const out = z.brews.map((_, b) => {
    const x = program.variable();
    program.row([[1, x], ...at(slots, (w) => w.b === b)], '=', 1);
    return x;
  });
  const bySlot = (w: { b: number; day: number; yeast: number }) => `${w.b} ${w.day} ${w.yeast}`;
  for (const [, list] of grouped(slots, bySlot)) {
    const first = list[0] as Chosen<Slot>;
    const same = at(pitches, (p) => bySlot(p) === bySlot(first.way));
    program.row([...same, ...negative(list)], '=', 0);
  }

  // one crop a brew: it needs its slot and a pitch that grows into it; it takes its minutes once
  const grownOf = (w: { generation: number; grownB: number }, more: number) =>
    `${w.generation + more} ${w.grownB.toFixed(6)}`;
  for (const [, list] of grouped(crops, (w) => `${bySlot(w.crop)} ${w.tank}`)) {
    const { crop, tank } = (list[0] as Chosen<CropWay>).way;
    const slot = slots.filter((s) => s.way.tank === tank && bySlot(s.way) === bySlot(crop));
    program.row([...positive(list), ...negative(slot)], '<=', 0);
  }
  for (const [, list] of grouped(
    crops,
    (w) => `${bySlot(w.crop)} ${w.crop.generation} ${w.grownB.toFixed(6)}`,
  )) {
    const { crop, grownB } = (list[0] as Chosen<CropWay>).way;
    const growing = pitches.filter(
      ({ way }) =>
        bySlot(way) === bySlot(crop) &&
        grownOf(way, 1) === grownOf({ generation: crop.generation, grownB }, 0),
    );
    program.row([...positive(list), ...negative(growing)], '<=', 0);
  }
  const harvestMinor = z.money(z.s.harvestMinutes * z.s.pricePerMinute);
  const jarMinor = z.money(z.s.jarMinutes * z.s.pricePerMinute);
  for (const { x } of crops) cost.push([harvestMinor, x]);
  for (const { way, x } of pitches) {
    if (way.source.kind === 'crop') cost.push([jarMinor * way.jars, x]);
  }
  for (const { way, x } of keeps) {
    if ('crop' in way.from) cost.push([jarMinor * way.jars, x]);
    cost.push([-z.money(z.s.endJarValue), x]);
  }

  // no more is drawn than there is, and nothing from a crop that is not taken
  const cropKey = (p: Pitch) => (p.source.kind === 'crop' ? p.source.crop.key : '');
  const drawsOf = grouped(pitches, cropKey);
  const keepKey = (k: Keep) => ('crop' in k.from ? k.from.crop.crop.key : '');
  const keepsFrom = grouped(keeps, keepKey);
  for (const [key, list] of grouped(crops, (w) => w.crop.key)) {
    const draws = drawsOf.get(key) ?? [];
    const kept = keepsFrom.get(key) ?? [];
    program.row(
      [
        ...draws.map(({ way, x }): Term => [way.drawMl, x]),
        ...kept.map(({ way, x }): Term => [way.ml, x]),
        ...list.map(({ way, x }): Term => [-way.ml, x]),
      ],
      '<=',
      0,
    );
    for (const [, mine] of grouped(draws, (p) => `${p.b}`)) {
      program.row([...positive(mine), ...negative(list)], '<=', 0);
    }
  }
  for (const keep of keeps) {
    const { from } = keep.way;
    if (!('crop' in from)) continue;
    const own = crops.filter(({ way }) => way === from.crop);
    program.row([[1, keep.x], ...negative(own)], '<=', 0);
  }
  const jarUse = (j: number): Term[] => [
    ...at(pitches, (p) => p.source.kind === 'jar' && p.source.jar === j),
    ...at(keeps, (k) => 'jar' in k.from && k.from.jar === j),
  ];
  z.jars.forEach((_, j) => {
    program.row(jarUse(j), '<=', 1);
  });
  z.house.yeasts.forEach((yeast, y) => {
    program.row(
      at(keeps, (k) => k.yeast === y),
      '<=',
      1,
    );
    const hand = pitches.flatMap(({ way, x }): Term[] =>
      way.source.kind === 'packs' && way.yeast === y ? [[way.source.fromHand, x]] : [],
    );
    program.row(hand, '<=', yeast.packsOnHand);
  });

  limitRoom(z, program, { slots, pitches, keeps });
  cost.push(...deliveries(z, program, pitches));

  // the levels in order: no plan leaves out less than slots alone would, so that is tried first
  const left = out.map((x, b): Term => [PRIORITY * (z.brews[b]?.priority ?? 1) + 1, x]);
  let least = leastByRoom(z, ways.slots);
  let best = program.minimise(cost, [left, '<=', least]);
  if (!best) {
    const found = program.minimise(left);
    if (!found) return null;
    least = Math.round(found.value);
    best = program.minimise(cost, [left, '<=', least]);
  }
  if (!best) return null;
  const { value, chosen, proven } = best;
  const taken = <T>(list: readonly Chosen<T>[]) =>
    list.filter(({ x }) => chosen.has(x)).map(({ way }) => way);
  return {
    leftOutPriority: Math.floor(least / PRIORITY),
    leftOutCount: least % PRIORITY,
    costMinor: Math.round(value),
    proven,
    slots: taken(slots),
    pitches: taken(pitches),
    crops: taken(crops),
    keeps: taken(keeps),
    size: { slots: slots.length, pitches: pitches.length, crops: crops.length },
  };
}

/** What must be left out, whatever the yeast: tanks, kettle and conditioning room alone. */
function leastByRoom(z: Season, ways: readonly Slot[]): number {
  const program = new Program();
  const slots = ways.map((way) => ({ way, x: program.variable() }));
  limitRoom(z, program, { slots, pitches: [], keeps: [] }, false);
  const left = z.brews.map((brew, b): Term => {
    const x = program.variable();
    program.row([[1, x], ...at(slots, (w) => w.b === b)], '=', 1);
    return [PRIORITY * brew.priority + 1, x];
  });
  const found = program.minimise(left);
  if (!found) throw new Error('not even an empty season is possible');
  return Math.round(found.value);
}
