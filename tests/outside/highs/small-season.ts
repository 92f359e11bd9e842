// Small random seasons for the exact checks: few brews, few tanks, and most rules in play somewhere.
import type { z } from 'zod';
import { type Brew, House, type Jar, type Tank, type Yeast } from '../../../planner/index.ts';

/** Numbers in [0, 1) from a whole-number seed: a 32-bit shift register, so that a season is its seed. */
export function dice(seed: number): () => number {
  let state = (Math.imul(seed, 2_654_435_761) ^ 0x9e3779b9) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state >>>= 0;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state / 4_294_967_296;
  };
}

export type SmallShape = {
  seed: number;
  brews: number;
  tanks: number;
  strains: number;
  /** Price of a delivery, major units. Deliveries are never joined over days: `orderWindowDays` is 0. */
  deliveryCost: number;
  starters: boolean;
  jars: number;
  /** Candidate brew days of a brew, from and to. */
  candidates: readonly [number, number];
  /** How close the brews stand: days from one to the next; small leaves brews out. */
  apartDays: number;
  /** A bottom outlet on the last tank. */
  outlet: boolean;
  nano?: boolean;
  packsOnHand?: number;
  relaxed?: readonly string[];
  conditioningRoomL?: number;
  /** Brews of two turns in a kettle of two turns a day. */
  largeBrews?: boolean;
  maxJars?: number;
};

const MONDAY = Date.UTC(2027, 2, 1);
const iso = (day: number): string => new Date(MONDAY + day * 86_400_000).toISOString().slice(0, 10);

/** The day on which all small seasons are planned: two weeks before their first brew day. */
export const SMALL_TODAY = iso(-14);

type In<T extends z.ZodType> = z.input<T>;

/** A season of that shape. Days count from Monday 1 March 2027. */
export function smallSeason(shape: SmallShape): House {
  const roll = dice(shape.seed);
  const between = (low: number, high: number) => low + Math.floor(roll() * (high - low + 1));
  const chance = (share: number) => roll() < share;
  const pick = <T>(of: readonly T[]): T => of[Math.floor(roll() * of.length)] as T;
  const week = pick([
    ['sat', 'sun'],
    ['tue', 'sat'],
    ['mon', 'wed', 'fri'],
  ] as const);
  const workDays = pick([null, ['mon', 'wed', 'fri', 'sat', 'sun'] as const]);
  const names = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
  const length = Math.ceil(shape.brews * shape.apartDays + 18);
  const closed = between(7, length - 7);
  const brewDays: number[] = [];
  for (let d = 0; d < length; d++) {
    if ((week as readonly string[]).includes(names[d % 7] as string) && d !== closed)
      brewDays.push(d);
  }
  const strains: In<typeof Yeast>[] = [
    {
      yeast: 'Mill Lane Ale',
      kind: 'ale',
      form: 'liquid',
      nature: 'clean',
      packCellsB: pick([100, 150, 200]),
      packPrice: pick([8, 9.5, 11]),
      packsOnHand: shape.packsOnHand ?? 0,
      packsMadeOn: iso(-45),
      minC: 15,
      maxC: 23,
      flocculation: pick(['medium', 'high']),
      maxGeneration: pick([null, 2]),
    },
    {
      yeast: 'Ferry Saison',
      kind: pick(['saison', 'lager']),
      form: pick(['liquid', 'liquid', 'dry']),
      nature: pick(['clean', 'diastatic']),
      packCellsB: 200,
      packPrice: 6,
      packsOnHand: 0,
      packsMadeOn: null,
      minC: 16,
      maxC: 26,
      flocculation: 'low',
    },
  ].slice(0, shape.strains) as In<typeof Yeast>[];
  const volumeL = 20;
  const tanks: In<typeof Tank>[] = Array.from({ length: shape.tanks }, (_, i) => ({
    tank: `Tank ${i + 1}`,
    minFillL: 10,
    maxFillL: 22 + 4 * i,
    minC: i === 0 ? 10 : 1,
    maxC: 26,
    turnaroundDays: between(0, 2),
    bottomOutlet: shape.outlet && i === shape.tanks - 1,
    ...(chance(0.2) ? { outOfUse: [{ from: iso(20), to: iso(24) }] } : {}),
  }));
  const maxLateDays = 9;
  const brews: In<typeof Brew>[] = [];
  for (let b = 0; b < shape.brews; b++) {
    const strong = chance(0.15);
    const hopped = chance(0.25);
    const og = strong ? 1.074 : 1.036 + between(0, 26) / 1000;
    const tankDays = between(9, 14);
    const conditionDays = between(7, 16);
    const count = between(...shape.candidates);
    const start = Math.min(
      brewDays.length - count,
      Math.max(
        0,
        brewDays.findIndex((d) => d >= b * shape.apartDays + between(-3, 3)),
      ),
    );
    const first = brewDays[start] as number;
    const last = brewDays[start + count - 1] as number;
    const eitherStrain = shape.strains > 1 && chance(0.4);
    const favourite = strains[b % shape.strains]?.yeast as string;
    const other = strains[(b + 1) % shape.strains]?.yeast as string;
    brews.push({
      brew: `Brew ${b + 1}`,
      yeasts: eitherStrain ? [favourite, other] : [favourite],
      volumeL: shape.largeBrews && chance(0.4) ? 22 : volumeL + between(-4, 2),
      og,
      fg: 1 + (og - 1) * 0.24,
      ebc: pick([7, 12, 30, 70]),
      ibu: pick([12, 25, 40, 60]),
      fermentC: between(17, 22),
      tankDays,
      conditionDays,
      ...(hopped ? { dryHopDay: between(6, 8) } : {}),
      ...(chance(0.12) ? { souring: pick(['kettle', 'mixed'] as const) } : {}),
      ...(chance(0.12) ? { additions: ['fruit'] } : {}),
      notBefore: iso(first),
      readyBy: iso(last + tankDays + conditionDays - between(3, maxLateDays)),
      priority: between(1, 3),
      value: between(40, 120),
      fades: chance(0.3),
    });
  }
  const jars: In<typeof Jar>[] = Array.from({ length: shape.jars }, (_, j) => ({
    jar: `J${j + 1}`,
    yeast: strains[j % shape.strains]?.yeast as string,
    generation: between(1, 3),
    settledMl: between(60, 320),
    harvestedOn: iso(-between(14, 24)),
    sourceOg: 1.046,
    sourceEbc: pick([8, 40]),
    sourceIbu: pick([20, 60]),
    // some that may never be pitched: soured, suspect, out of strong beer
    ...(j % 3 === 1 ? pick([{ sourceSouring: 'kettle' }, { sourceOg: 1.082 }] as const) : {}),
    state: j % 3 === 2 ? pick(['suspect', 'watch'] as const) : 'sound',
    ...(chance(0.4) ? { measuredViability: 0.9, measuredOn: iso(-14) } : {}),
  }));
  return House.parse({
    name: `Small ${shape.seed}`,
    kind: shape.nano ? 'nano' : 'home',
    timeZone: 'Europe/Dublin',
    currency: 'EUR',
    from: iso(0),
    to: iso(length - 1),
    brewDays: [...week],
    workDays: workDays === null ? null : [...new Set([...workDays, ...week])],
    closed: [iso(closed)],
    brewsPerDay: shape.largeBrews ? 2 : 1,
    brewLengthL: shape.largeBrews ? 21 : null,
    orderLeadDays: 4,
    packAgeOnArrivalDays: 20,
    deliveryCost: shape.deliveryCost,
    conditioningRoomL: shape.conditioningRoomL ?? null,
    store: {
      tempC: 4,
      maxJars: shape.maxJars ?? 3 + shape.jars,
      jarMl: 120,
      settleDays: pick([1, 2]),
    },
    starterGear: {
      vessels: shape.starters ? 1 : 0,
      maxLitres: 2,
      stirred: chance(0.5),
    },
    rules: {
      maxLateDays,
      freshDays: 5,
      orderWindowDays: 0,
      maxStorageDays: shape.nano ? 14 : 30,
    },
    relaxed: [...(shape.relaxed ?? [])],
    tanks,
    yeasts: strains,
    jars,
    brews,
  } satisfies z.input<typeof House>);
}
