// Seasons made by a seed: so many brews, tight or loose tanks, one to six strains, a stocked or an empty shelf.
import type { z } from 'zod';
import { type Brew, House, type Jar, type Tank, type Yeast } from '../../planner/index.ts';
import { dice } from '../outside/highs/small-season.ts';
import { STYLES } from './styles.ts';

type In<T extends z.ZodType> = z.input<T>;

export type Shape = {
  brews: number;
  seed: number;
  /** Tanks as full as they go, or with room to spare. */
  tanks: 'tight' | 'loose';
  strains: number;
  shelf: 'stocked' | 'empty';
};

/** The seasons of one size: every mixture of the three, taken in turn. */
export function shapeOf(brews: number, number: number): Shape {
  return {
    brews,
    seed: brews * 1000 + number,
    tanks: number % 2 === 0 ? 'tight' : 'loose',
    strains: 1 + ((number * 5 + 2) % Math.min(6, Math.max(2, Math.floor(brews / 3)))),
    shelf: number % 4 < 2 ? 'empty' : 'stocked',
  };
}

export const nameOf = (shape: Shape): string =>
  `${shape.brews} brews, ${shape.tanks} tanks, ${shape.strains} strain${shape.strains > 1 ? 's' : ''}, shelf ${shape.shelf} (${shape.seed})`;

const FIRST = Date.UTC(2027, 0, 4);
const iso = (day: number): string => new Date(FIRST + day * 86_400_000).toISOString().slice(0, 10);

export const GENERATED_TODAY = iso(-14);

const KINDS = ['ale', 'lager', 'wheat', 'saison', 'belgian', 'kveik'] as const;
const RANGE = {
  ale: [15, 22],
  lager: [8, 14],
  wheat: [16, 24],
  saison: [17, 28],
  belgian: [16, 25],
  kveik: [17, 38],
} as const;
const FLOCCULATION = {
  ale: 'high',
  lager: 'medium',
  wheat: 'low',
  saison: 'low',
  belgian: 'medium',
  kveik: 'high',
} as const;

/** A home below 40 brews, a small brewery from there on. */
export function generatedSeason(shape: Shape): House {
  const roll = dice(shape.seed);
  const within = ([low, high]: readonly [number, number]) => low + roll() * (high - low);
  const whole = (range: readonly [number, number]) => Math.round(within(range));
  const pick = <T>(of: readonly T[]): T => of[Math.floor(roll() * of.length)] as T;
  const nano = shape.brews >= 40;
  const kinds = KINDS.slice(0, shape.strains);
  const styles = STYLES.filter(({ strain }) => (kinds as readonly string[]).includes(strain));
  const volumes = nano ? [500, 1000] : [18, 20];
  // a tank takes about 16 days a brew; loose ones stand empty a third of the time
  const apart = nano ? 3 : 7;
  const need = 17 / apart;
  const tankCount = Math.max(1, Math.ceil(shape.tanks === 'tight' ? need * 1.15 : need * 1.6));
  const length = Math.ceil(shape.brews * apart + 40);
  const yeasts = kinds.map(
    (kind): In<typeof Yeast> => ({
      yeast: `Strain ${kind}`,
      kind,
      form: 'liquid',
      nature: kind === 'saison' ? 'diastatic' : 'clean',
      packCellsB: nano ? 5000 : 200,
      packPrice: nano ? pick([150, 165]) : pick([9.5, 11]),
      packsOnHand: 0,
      minC: RANGE[kind][0],
      maxC: RANGE[kind][1],
      flocculation: FLOCCULATION[kind],
    }),
  );
  const tanks = Array.from(
    { length: tankCount },
    (_, i): In<typeof Tank> => ({
      tank: `Tank ${i + 1}`,
      minFillL: Math.min(...volumes) * 0.6,
      maxFillL: Math.max(...volumes) * 1.1,
      minC: 1,
      maxC: 30,
      turnaroundDays: 1,
      bottomOutlet: i % 3 === 0,
    }),
  );
  const brews = Array.from({ length: shape.brews }, (_, b): In<typeof Brew> => {
    const style = pick(styles);
    const wanted = b * apart + whole([0, 14]);
    const tankDays = whole(style.tankDays);
    const conditionDays = whole(style.conditionDays);
    const slack = whole([7, 35]);
    const second = roll() < 0.15 ? kinds.filter((kind) => kind === 'ale' || kind === 'kveik') : [];
    const liked = `Strain ${style.strain}`;
    return {
      brew: `Brew ${b + 1}`,
      style: style.style,
      yeasts: [
        liked,
        ...second
          .map((kind) => `Strain ${kind}`)
          .filter(
            (yeast) => yeast !== liked && (style.strain === 'ale' || style.strain === 'kveik'),
          ),
      ],
      volumeL: pick(volumes),
      og: Number(within(style.og).toFixed(3)),
      fg: Number(within(style.fg).toFixed(3)),
      ibu: whole(style.ibu),
      ebc: whole(style.ebc),
      fermentC: whole(style.fermentC),
      tankDays,
      conditionDays,
      ...(style.dryHop ? { dryHopDay: whole([5, 8]) } : {}),
      additions: [...(style.additions ?? [])],
      notBefore: iso(Math.max(0, wanted - 7)),
      readyBy: iso(wanted + tankDays + conditionDays + slack),
      priority: whole([1, 3]),
      value: nano ? whole([900, 2100]) : whole([40, 75]),
    };
  });
  const jars =
    shape.shelf === 'empty'
      ? []
      : kinds.map(
          (kind, j): In<typeof Jar> => ({
            jar: `J${j + 1}`,
            yeast: `Strain ${kind}`,
            generation: whole([1, 3]),
            settledMl: nano ? 6000 : 220,
            harvestedOn: iso(-whole([15, 20])),
            sourceOg: 1.046,
            sourceEbc: 12,
            sourceIbu: 25,
          }),
        );
  return House.parse({
    name: nameOf(shape),
    kind: nano ? 'nano' : 'home',
    timeZone: 'Europe/Dublin',
    currency: 'EUR',
    from: iso(0),
    to: iso(length),
    brewDays: nano ? ['mon', 'tue', 'wed', 'thu', 'fri'] : ['sat', 'sun'],
    workDays: nano ? ['mon', 'tue', 'wed', 'thu', 'fri'] : ['wed', 'sat', 'sun'],
    brewsPerDay: nano ? 2 : 1,
    orderLeadDays: 5,
    packAgeOnArrivalDays: 20,
    deliveryCost: nano ? 25 : 6,
    store: {
      tempC: nano ? 2 : 3,
      maxJars: nano ? 14 : 12,
      jarMl: nano ? 20_000 : 500,
      settleDays: 1,
    },
    starterGear: { vessels: 1, maxLitres: nano ? 40 : 3, stirred: true },
    tanks,
    yeasts,
    jars,
    brews,
  } satisfies z.input<typeof House>);
}
