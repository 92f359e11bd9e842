// Small random seasons for properties: a few brews, tanks, strains and jars, as a brewer might have them.
import fc from 'fast-check';
import type { House, Weekday } from '../../planner/model/index.ts';
import { RULES } from '../../planner/rules/index.ts';
import { aBrew, aJar, aSeason, aTank, aYeast, daysAfter, MONDAY } from './season.ts';

const STRAINS = ['Ash', 'Birch'];
const RELAXABLE = RULES.filter((rule) => rule.level === 'hard' && rule.relaxedTo).map((r) => r.id);
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: null, freq: 2 });
const days = (min: number, max: number) =>
  fc.integer({ min, max }).map((n) => daysAfter(MONDAY, n));

const brew = fc.record({
  yeasts: fc.shuffledSubarray(STRAINS, { minLength: 1 }),
  volumeL: fc.integer({ min: 12, max: 25 }),
  og: fc.integer({ min: 1036, max: 1085 }).map((points) => points / 1000),
  ebc: fc.integer({ min: 6, max: 70 }),
  ibu: fc.integer({ min: 8, max: 60 }),
  fermentC: fc.integer({ min: 16, max: 22 }),
  tankDays: fc.integer({ min: 8, max: 16 }),
  dryHopDay: maybe(fc.integer({ min: 3, max: 8 })),
  souring: fc.constantFrom(null, null, null, 'kettle' as const),
  additions: fc.constantFrom<string[]>([], [], ['fruit']),
  notBefore: maybe(days(0, 60)),
  readyBy: maybe(days(40, 110)),
  priority: fc.integer({ min: 1, max: 3 }),
  fades: maybe(fc.boolean()),
  needMPerMlP: fc.constantFrom(null, null, null, 1.1),
});

const jar = fc.record({
  yeast: fc.constantFrom(...STRAINS),
  generation: fc.integer({ min: 1, max: 5 }),
  settledMl: fc.integer({ min: 60, max: 400 }),
  harvestedOn: days(-20, -1),
  measuredViability: maybe(fc.integer({ min: 60, max: 97 }).map((percent) => percent / 100)),
  state: fc.constantFrom('sound' as const, 'sound' as const, 'watch' as const, 'suspect' as const),
});

/** A season of three months in which nothing has happened yet. Nothing in it is fixed. */
export const seasons: fc.Arbitrary<House> = fc
  .record({
    kind: fc.constantFrom('home' as const, 'nano' as const),
    brews: fc.array(brew, { minLength: 2, maxLength: 6 }),
    jars: fc.array(jar, { maxLength: 3 }),
    brewDays: fc.constantFrom<Weekday[]>(['sat', 'sun'], ['tue', 'fri']),
    workDays: fc.constantFrom<Weekday[] | null>(null, ['mon', 'wed', 'fri']),
    brewsPerDay: fc.integer({ min: 1, max: 2 }),
    brewLengthL: fc.constantFrom(null, 12),
    tanks: fc.array(fc.record({ maxFillL: fc.constantFrom(21, 30), bottomOutlet: fc.boolean() }), {
      minLength: 1,
      maxLength: 3,
    }),
    packsOnHand: fc.integer({ min: 0, max: 2 }),
    maxJars: fc.integer({ min: 3, max: 8 }),
    jarMl: fc.constantFrom(100, 500),
    settleDays: fc.integer({ min: 0, max: 2 }),
    vessels: fc.integer({ min: 0, max: 2 }),
    stirred: fc.boolean(),
    form: fc.constantFrom('liquid' as const, 'liquid' as const, 'dry' as const),
    coldest: fc.constantFrom(2, 2, 6),
    relaxed: fc.oneof(fc.constant<string[]>([]), fc.subarray(RELAXABLE)),
  })
  .map((s) =>
    aSeason({
      kind: s.kind,
      to: '2027-05-31',
      brewDays: s.brewDays,
      workDays: s.workDays,
      brewsPerDay: s.brewsPerDay,
      brewLengthL: s.brewLengthL,
      relaxed: s.relaxed,
      store: { tempC: 3, maxJars: s.maxJars, jarMl: s.jarMl, settleDays: s.settleDays },
      starterGear: { vessels: s.vessels, maxLitres: 3, stirred: s.stirred },
      tanks: s.tanks.map((tank, i) => aTank({ tank: `T${i}`, minC: s.coldest, ...tank })),
      yeasts: STRAINS.map((yeast) =>
        aYeast({
          yeast,
          form: yeast === 'Birch' ? s.form : 'liquid',
          packsOnHand: s.packsOnHand,
          packsMadeOn: '2027-02-01',
          minC: 16,
          maxC: 22,
          flocculation: yeast === 'Ash' ? 'high' : 'low',
        }),
      ),
      jars: s.jars.map((row, i) => aJar({ jar: `J${i}`, ...row })),
      brews: s.brews.map((row, i) => aBrew({ brew: `B${i}`, ...row })),
    }),
  );
