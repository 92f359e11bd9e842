// What the house has only so much of, as rows of the program: tanks, vessels, room, shelf, kettle, deliveries.
import type { Keep } from './keeping.ts';
import type { Program, Term } from './program.ts';
import type { Season } from './reading.ts';
import type { Pitch, Slot } from './ways.ts';

/** A way of doing something, and the variable that says whether it is done. */
export type Chosen<T> = { way: T; x: string };

export const positive = <T>(list: readonly Chosen<T>[]): Term[] => list.map(({ x }) => [1, x]);
export const negative = <T>(list: readonly Chosen<T>[]): Term[] => list.map(({ x }) => [-1, x]);
export const at = <T>(list: readonly Chosen<T>[], is: (way: T) => boolean): Term[] =>
  positive(list.filter(({ way }) => is(way)));

export function grouped<T>(
  list: readonly Chosen<T>[],
  by: (way: T) => string,
): Map<string, Chosen<T>[]> {
  const out = new Map<string, Chosen<T>[]>();
  for (const one of list) {
    const key = by(one.way);
    const group = out.get(key);
    if (group) group.push(one);
    else out.set(key, [one]);
  }
  return out;
}

type Parts = { slots: Chosen<Slot>[]; pitches: Chosen<Pitch>[]; keeps: Chosen<Keep>[] };

/** What the house has only so much of, day by day. */
export function limitRoom(
  z: Season,
  program: Program,
  { slots, pitches, keeps }: Parts,
  jarsToo = true,
): void {
  const last = Math.max(z.to, ...slots.map(({ way }) => way.ready));
  for (let day = z.today; day <= last; day++) {
    z.house.tanks.forEach((_, k) => {
      program.row(
        at(slots, (w) => w.tank === k && w.day <= day && day < w.free),
        '<=',
        1,
      );
    });
    program.row(
      at(pitches, (p) => p.starterQuarters > 0 && p.use <= day && day <= p.day),
      '<=',
      z.house.starterGear.vessels,
    );
    if (z.house.conditioningRoomL !== null) {
      const litres = slots
        .filter(({ way }) => way.emptied <= day && day < way.ready)
        .map(({ way, x }): Term => [z.brews[way.b]?.volumeL ?? 0, x]);
      program.row(litres, '<=', z.house.conditioningRoomL);
    }
    if (jarsToo) shelf(z, program, { pitches, keeps }, day);
  }
  // the kettle: a brew of two turns may take the second on the brew day after
  const spills = new Map<number, Term[]>();
  for (const [day, list] of grouped(slots, (w) => `${w.day}`)) {
    for (const [, mine] of grouped(list, (w) => `${w.b}`)) {
      const way = (mine[0] as Chosen<Slot>).way;
      if ((z.brews[way.b]?.turns ?? 1) < 2 || z.brewDayAfter(way.day) > z.to) continue;
      const spill = program.variable();
      program.row([[1, spill], ...negative(mine)], '<=', 0);
      const own = Number(day);
      spills.set(own, [...(spills.get(own) ?? []), [1, spill]]);
    }
  }
  const days = new Set(slots.map(({ way }) => way.day));
  for (const day of spills.keys()) days.add(z.brewDayAfter(day));
  for (const day of days) {
    const begun = slots
      .filter(({ way }) => way.day === day)
      .map(({ way, x }): Term => [z.brews[way.b]?.turns ?? 1, x]);
    const put = (spills.get(day) ?? []).map(([f, x]): Term => [-f, x]);
    const before = [...spills].flatMap(([d, list]) => (z.brewDayAfter(d) === day ? list : []));
    program.row([...begun, ...put, ...before], '<=', z.house.brewsPerDay);
  }
}

/** Jars in the cold store on one day: out of harvests up to their draw, and those that stand there today. */
function shelf(
  z: Season,
  program: Program,
  { pitches, keeps }: Pick<Parts, 'pitches' | 'keeps'>,
  day: number,
): void {
  const terms: Term[] = [];
  let standing = 0;
  for (const { way, x } of pitches) {
    const { source } = way;
    if (source.kind === 'crop' && source.crop.harvested <= day && day < way.use) {
      terms.push([way.jars, x]);
    }
  }
  for (const { way, x } of keeps) {
    if ('crop' in way.from && way.from.crop.crop.harvested <= day && day <= z.to) {
      terms.push([way.jars, x]);
    }
  }
  z.jars.forEach((jar, j) => {
    // a jar that nobody uses is thrown away at its storage limit
    const unused = day < Math.max(z.today, jar.harvested + z.s.maxStorageDays) ? 1 : 0;
    standing += unused;
    for (const { way, x } of pitches) {
      if (way.source.kind === 'jar' && way.source.jar === j) {
        terms.push([(day < way.use ? 1 : 0) - unused, x]);
      }
    }
    for (const { way, x } of keeps) {
      if ('jar' in way.from && way.from.jar === j) terms.push([(day <= z.to ? 1 : 0) - unused, x]);
    }
  });
  program.row(terms, '<=', z.house.store.maxJars - standing);
}

/** One delivery for all packs that are wanted on one day. */
export function deliveries(z: Season, program: Program, pitches: readonly Chosen<Pitch>[]): Term[] {
  const each = z.money(z.house.deliveryCost);
  if (each === 0) return [];
  const bought = pitches.filter(({ way }) => way.source.kind === 'packs' && way.source.bought > 0);
  const out: Term[] = [];
  for (const [, sameDay] of grouped(bought, (p) => `${p.use}`)) {
    const comes = program.variable();
    out.push([each, comes]);
    for (const [, mine] of grouped(sameDay, (p) => `${p.b}`)) {
      program.row([...positive(mine), [-1, comes]], '<=', 0);
    }
  }
  return out;
}
