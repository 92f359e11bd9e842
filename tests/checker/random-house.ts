// Small seasons drawn by chance from everything that a house can say; the same number, the same season.
import { House } from '../../planner/index.ts';
import { iso, num } from './days.ts';

/** A source of chance with a seed: multiply, shift and mix, 32 bits. */
export function chance(seed: number) {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let x = state;
    x = Math.imul(x ^ (x >>> 16), 0x21f0aaad);
    x = Math.imul(x ^ (x >>> 15), 0x735a2d97);
    return ((x ^ (x >>> 15)) >>> 0) / 2 ** 32;
  };
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  const pick = <T>(items: readonly [T, ...T[]]): T => items[whole(0, items.length - 1)] ?? items[0];
  const often = (share: number) => next() < share;
  return { next, whole, pick, often };
}

type Chance = ReturnType<typeof chance>;
const FROM = num('2027-03-01');

function randomYeasts({ whole, pick, often }: Chance, nano: boolean) {
  return Array.from({ length: whole(1, 3) }, (_, at) => ({
    yeast: `Strain ${at + 1}`,
    kind: pick(['ale', 'lager', 'wheat', 'saison'] as const),
    form: often(0.2) ? 'dry' : 'liquid',
    nature: pick(['clean', 'clean', 'clean', 'diastatic', 'wild'] as const),
    packCellsB: nano ? 5000 : 200,
    packPrice: nano ? 150 : 9,
    packsOnHand: pick([0, 0, 1, 2] as const),
    packsMadeOn: iso(FROM - whole(5, 100)),
    minC: 8,
    maxC: pick([16, 22, 26] as const),
    flocculation: pick(['low', 'medium', 'high'] as const),
    maxGeneration: pick([null, null, 2, 3] as const),
  }));
}

function randomJars({ whole, pick, often }: Chance, nano: boolean, strains: number) {
  return Array.from({ length: whole(0, 4) }, (_, at) => ({
    jar: `J${at + 1}`,
    yeast: `Strain ${whole(1, strains)}`,
    generation: whole(1, nano ? 10 : 5),
    settledMl: whole(100, 400) * (nano ? 25 : 1),
    harvestedOn: iso(FROM - whole(9, 40)),
    sourceOg: pick([null, 1.045, 1.055, 1.064, 1.07, 1.092] as const),
    sourceEbc: pick([null, 12, 60] as const),
    sourceSouring: often(0.15) ? pick(['kettle', 'mixed'] as const) : null,
    sourceAdditions: often(0.15) ? ['smoke'] : [],
    sourceDryHopped: often(0.15),
    state: pick(['sound', 'sound', 'sound', 'sound', 'suspect', 'watch'] as const),
  }));
}

function randomBrews(
  { whole, pick, often }: Chance,
  nano: boolean,
  strains: number,
  brewDays: string[],
) {
  return Array.from({ length: whole(3, 8) }, (_, at) => {
    const og = pick([1.04, 1.048, 1.056, 1.064, 1.07, 1.085] as const);
    const tankDays = whole(8, 18);
    const dryHopDay = often(0.2) ? whole(3, tankDays - 1) : null;
    const notBefore = often(0.5) ? FROM + whole(0, 40) : null;
    const readyBy = often(0.8) ? iso((notBefore ?? FROM) + whole(25, 80)) : null;
    // Now and then a fixed day, which may clash with all else: the plan then has to say what it breaks.
    const fixed = often(0.06) ? brewDayFrom((notBefore ?? FROM) + whole(0, 12), brewDays) : null;
    const liked = whole(1, strains);
    const other = whole(1, strains);
    return {
      brew: `Beer ${at + 1}`,
      yeasts: [`Strain ${liked}`, ...(other === liked ? [] : [`Strain ${other}`])],
      volumeL: nano ? pick([200, 450, 900] as const) : pick([10, 20, 20, 24] as const),
      og,
      fg: 1.012,
      ebc: pick([8, 20, 70] as const),
      ibu: whole(10, 60),
      fermentC: pick([10, 15, 18, 21] as const),
      tankDays,
      harvestDay: often(0.2) ? whole(3, tankDays) : null,
      conditionDays: whole(3, 30),
      dryHopDay,
      souring: often(0.12) ? pick(['kettle', 'mixed'] as const) : null,
      additions: often(0.12) ? ['fruit'] : [],
      notBefore: notBefore === null ? null : iso(notBefore),
      readyBy,
      brewOn: fixed === null ? null : iso(fixed),
      priority: whole(1, 3),
      value: nano ? 900 : 45,
    };
  });
}

const MONDAY_FIRST = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** 2027-03-01 is a Monday. */
const brewDayFrom = (day: number, brewDays: string[]): number =>
  brewDays.includes(MONDAY_FIRST[(day - FROM) % 7] ?? '') ? day : brewDayFrom(day + 1, brewDays);

/** A season of 3–8 brews, 1–3 tanks and 1–3 strains. Everything about it follows from the number. */
export function randomHouse(seed: number): House {
  const c = chance(seed);
  const { whole, pick, often } = c;
  const nano = often(0.4);
  const yeasts = randomYeasts(c, nano);
  const brewDays: string[] = nano
    ? ['tue', 'wed', 'thu', 'fri']
    : pick([['sat', 'sun'], ['sat'], ['wed', 'sat']]);
  return House.parse({
    name: `Season ${seed}`,
    kind: nano ? 'nano' : 'home',
    timeZone: 'Europe/Dublin',
    currency: 'EUR',
    from: iso(FROM),
    to: iso(FROM + 75),
    brewDays,
    workDays: often(0.3)
      ? null
      : nano
        ? ['mon', 'tue', 'wed', 'thu', 'fri']
        : ['wed', 'sat', 'sun'],
    starterDays: pick([
      null,
      null,
      ['thu', 'fri', 'sat'],
      ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'],
    ]),
    closed: Array.from({ length: whole(0, 8) }, () => iso(FROM + whole(0, 90))),
    brewsPerDay: whole(1, 2),
    brewLengthL: pick(nano ? [null, 250, 500] : [null, null, 12]),
    orderLeadDays: whole(2, 10),
    packAgeOnArrivalDays: whole(7, 40),
    deliveryCost: 6,
    conditioningRoomL: often(0.25) ? (nano ? 1300 : 50) : null,
    store: {
      tempC: pick([1, 3, 5]),
      maxJars: whole(1, 6),
      jarMl: nano ? 5000 : pick([150, 500]),
      settleDays: whole(0, 2),
    },
    starterGear: { vessels: whole(0, 2), maxLitres: nano ? 40 : pick([1, 3]), stirred: often(0.6) },
    relaxed: often(0.2)
      ? [pick(['gravity-ceiling', 'storage-limit', 'dry-hopped', 'additions'])]
      : [],
    tanks: Array.from({ length: whole(1, 3) }, (_, at) => ({
      tank: `Tank ${at + 1}`,
      minFillL: nano ? 150 : 8,
      // The first tank takes the largest of the brews.
      maxFillL: at === 0 ? (nano ? 1000 : 30) : nano ? 500 : pick([21, 30]),
      minC: pick([2, 2, 8]),
      maxC: 26,
      turnaroundDays: whole(0, 2),
      bottomOutlet: often(0.5),
      outOfUse: often(0.2) ? [{ from: iso(FROM + 30), to: iso(FROM + whole(32, 45)) }] : [],
    })),
    yeasts,
    jars: randomJars(c, nano, yeasts.length),
    brews: randomBrews(c, nano, yeasts.length, brewDays),
  });
}
