// Builds a small house and a small plan that fits it, by hand; a test states only what matters to it.
//
// The season: Millrace (bitter) is pitched from a pack on hand on 9 January and harvested on the 23rd;
// Quill (pale ale) takes that harvest on the 30th; Heron (pils) wants packs ordered and a starter on
// 6 February. One jar of the shelf (J1) is used for nothing. The figures are worked out in the comments.
import { DateTime } from 'luxon';
import type { z } from 'zod';
import {
  Brew,
  House,
  Jar,
  Plan,
  type PlannedBrew,
  type PlannedHarvest,
  Tank,
  type Totals,
  Yeast,
} from '../../planner/model/index.ts';

/** The day so many days later (negative: earlier). */
export function daysAfter(day: string, days: number): string {
  return DateTime.fromISO(day, { zone: 'utc' }).plus({ days }).toFormat('yyyy-MM-dd');
}

export function aTank(part: Partial<z.input<typeof Tank>> = {}): Tank {
  return Tank.parse({
    tank: 'Keg A',
    minFillL: 12,
    maxFillL: 21,
    minC: 2,
    maxC: 24,
    turnaroundDays: 1,
    bottomOutlet: false,
    ...part,
  });
}

export function aYeast(part: Partial<z.input<typeof Yeast>> = {}): Yeast {
  return Yeast.parse({
    yeast: 'Mill Lane Ale',
    kind: 'ale',
    form: 'liquid',
    nature: 'clean',
    packCellsB: 200,
    packPrice: 10.5,
    packsOnHand: 1,
    packsMadeOn: '2026-12-01',
    minC: 16,
    maxC: 22,
    flocculation: 'high',
    ...part,
  });
}

export function aJar(part: Partial<z.input<typeof Jar>> = {}): Jar {
  return Jar.parse({
    jar: 'J1',
    yeast: 'Mill Lane Ale',
    generation: 3,
    settledMl: 220,
    harvestedOn: '2026-12-20',
    sourceOg: 1.044,
    sourceEbc: 24,
    sourceIbu: 30,
    ...part,
  });
}

export function aBrew(part: Partial<z.input<typeof Brew>> = {}): Brew {
  return Brew.parse({
    brew: 'Millrace',
    style: 'Best bitter',
    yeasts: ['Mill Lane Ale'],
    volumeL: 20,
    og: 1.041,
    fg: 1.011,
    ebc: 17,
    ibu: 28,
    fermentC: 18,
    tankDays: 14,
    conditionDays: 13,
    value: 53,
    ...part,
  });
}

export function aHouse(part: Partial<z.input<typeof House>> = {}): House {
  return House.parse({
    name: 'Slate Yard',
    kind: 'home',
    timeZone: 'Europe/Dublin',
    currency: 'EUR',
    from: '2027-01-09',
    to: '2027-06-27',
    brewDays: ['sat', 'sun'],
    workDays: ['wed', 'sat', 'sun'],
    brewsPerDay: 1,
    orderLeadDays: 7,
    packAgeOnArrivalDays: 30,
    deliveryCost: 6,
    store: { tempC: 3, maxJars: 12, jarMl: 500, settleDays: 1 },
    starterGear: { vessels: 1, maxLitres: 3, stirred: true },
    tanks: [
      aTank(),
      aTank({ tank: 'Keg B' }),
      aTank({ tank: 'Cone', maxFillL: 30, bottomOutlet: true }),
    ],
    yeasts: [
      aYeast(),
      aYeast({
        yeast: 'Harbour Lager',
        kind: 'lager',
        packPrice: 11.5,
        packsOnHand: 0,
        packsMadeOn: null,
        minC: 8,
        maxC: 20,
        flocculation: 'medium',
      }),
    ],
    jars: [aJar()],
    brews: [
      aBrew(),
      aBrew({
        brew: 'Quill',
        style: 'Pale ale',
        og: 1.054,
        ebc: 19,
        ibu: 41,
        fermentC: 20,
        tankDays: 12,
        conditionDays: 10,
        dryHopDay: 8,
        value: 57,
      }),
      aBrew({
        brew: 'Heron',
        style: 'German pils',
        yeasts: ['Harbour Lager'],
        og: 1.047,
        fg: 1.013,
        ebc: 7,
        ibu: 36,
        fermentC: 10,
        tankDays: 21,
        conditionDays: 40,
        value: 60,
      }),
    ],
    ...part,
  });
}

export function someTotals(part: Partial<Totals> = {}): Totals {
  return {
    hard: 0,
    leftOutPriority: 0,
    leftOut: 0,
    costMinor: 6000,
    cashMinor: 3000,
    workMinor: 2000,
    riskMinor: 1000,
    packs: 2,
    deliveries: 1,
    lateDays: 0,
    ...part,
  };
}

/** A brew on the calendar from a fresh pack on hand; its later days follow its day unless given. */
export function aPlannedBrew(part: Partial<PlannedBrew> = {}): PlannedBrew {
  const day = part.day ?? '2027-01-09'; // a Saturday
  const emptiedOn = part.emptiedOn ?? daysAfter(day, 14);
  return {
    brew: 'Millrace',
    style: 'Best bitter',
    day,
    tank: 'Keg A',
    yeast: 'Mill Lane Ale',
    done: false,
    kettle: [{ day, turns: 1 }],
    dryHopOn: null,
    crashOn: daysAfter(emptiedOn, -2),
    emptiedOn,
    tankFreeOn: daysAfter(emptiedOn, 1),
    readyOn: daysAfter(emptiedOn, 13),
    daysLate: 0,
    // 20 L × 10.2 °P × 0.75 = 153 B; one pack of 200 B, 39 days old: 200 × exp(−0.0018 × 39) = 186 B
    needB: 153,
    pitchedB: 186,
    source: {
      kind: 'fresh',
      packs: 1,
      packsFromHand: 1,
      packsMadeOn: '2026-12-01',
      packAgeDays: 39,
      orderOn: null,
      arrivesOn: null,
    },
    starter: null,
    generation: 0,
    viability: { low: 0.87, likely: 0.93, high: 0.97 },
    counts: 0,
    pitchedViability: null,
    beforeCounts: null,
    densityBPerMl: null,
    checkOn: null,
    fallback: {
      kind: 'none',
      decideBy: null,
      says: 'No other yeast would reach this day in time.',
    },
    carried: null,
    hazards: [],
    riskMinor: 200,
    why: ['First brew of the strain, from the pack on hand.'],
    alternative: null,
    pins: null,
    ...part,
  };
}

export function aPlannedHarvest(part: Partial<PlannedHarvest> = {}): PlannedHarvest {
  const day = part.day ?? '2027-01-23';
  return {
    brew: 'Millrace',
    yeast: 'Mill Lane Ale',
    day,
    done: false,
    generation: 1,
    cropViability: { low: 0.93, likely: 0.97, high: 0.98 },
    viabilityToday: null,
    // min(4 × 186, 80 × 20) × 0.65 = 483 B; at 2.1 × 0.8 = 1.68 B/mL (read after a day): 288 mL
    cellsB: 483,
    settledMl: { low: 190, likely: 288, high: 400 },
    crashed: true,
    usableFrom: daysAfter(day, 1),
    discardBy: daysAfter(day, 35),
    jars: [
      { ml: 184, for: 'Quill', leavesOn: daysAfter(day, 7) },
      { ml: 104, for: null, leavesOn: daysAfter(day, 35) },
    ],
    ...part,
  };
}

/** The small plan that fits `aHouse()`; any part of it can be replaced. Checked by the plan's own schema. */
export function aPlan(part: Partial<Plan> = {}): Plan {
  return Plan.parse({
    format: 'barmline-plan-1',
    house: 'Slate Yard',
    currency: 'EUR',
    minorPerMajor: 100,
    today: '2027-01-04',
    seed: 1,
    steps: 1000,
    stepsDone: 1000,
    status: 'whole',
    totals: someTotals(),
    brews: [aPlannedBrew(), quill(), heron()],
    leftOut: [],
    harvests: [aPlannedHarvest()],
    orders: [
      {
        orderOn: '2027-01-27',
        arrivesOn: '2027-02-03',
        deliveryMinor: 600,
        lines: [{ yeast: 'Harbour Lager', packs: 1, costMinor: 1150, for: ['Heron'] }],
      },
    ],
    shelf: [
      {
        jar: 'J1',
        yeast: 'Mill Lane Ale',
        state: 'sound',
        discardBy: '2027-01-24',
        usedFor: null,
        kept: false,
        leavesOn: '2027-01-24',
        viabilityToday: { low: 0.6, likely: 0.74, high: 0.85 },
      },
    ],
    chains: [
      {
        yeast: 'Mill Lane Ale',
        root: '1 pack',
        brews: ['Millrace', 'Quill'],
        endsBecause: 'No later brew wants this yeast.',
      },
      {
        yeast: 'Harbour Lager',
        root: '1 pack and a starter',
        brews: ['Heron'],
        endsBecause: 'No later brew wants this yeast.',
      },
    ],
    broken: [],
    costs: [],
    baselines: { freshOnly: someTotals({ cashMinor: 5000 }), dateOrder: someTotals() },
    bound: null,
    notes: [],
    ...part,
  });
}

/** Pale ale pitched from the harvest of Millrace, dry-hopped in the cone. */
export function quill(part: Partial<PlannedBrew> = {}): PlannedBrew {
  return aPlannedBrew({
    brew: 'Quill',
    style: 'Pale ale',
    day: '2027-01-30',
    tank: 'Cone',
    emptiedOn: '2027-02-13',
    dryHopOn: '2027-02-07',
    // 20 L × 13.3 °P × 1.0 = 266 B; 266 / (1.68 × 0.86) = 184 mL
    needB: 266,
    pitchedB: 266,
    source: {
      kind: 'harvest',
      brew: 'Millrace',
      harvestedOn: '2027-01-23',
      drawMl: 184,
      ageDays: 7,
      jars: 1,
    },
    generation: 1,
    viability: { low: 0.78, likely: 0.86, high: 0.91 },
    densityBPerMl: { low: 1.1, likely: 1.68, high: 2.4 },
    checkOn: '2027-01-23',
    fallback: {
      kind: 'order',
      decideBy: '2027-01-23',
      says: 'Order 2 packs of Mill Lane Ale by 23 January.',
    },
    carried: { volumeL: 0.09, ebc: 0, ibu: 0 },
    why: ['Millrace leaves enough yeast a week before.'],
    ...part,
  });
}

/** Pils from one ordered pack that a starter grows. */
export function heron(part: Partial<PlannedBrew> = {}): PlannedBrew {
  return aPlannedBrew({
    brew: 'Heron',
    style: 'German pils',
    day: '2027-02-06',
    tank: 'Keg A',
    yeast: 'Harbour Lager',
    emptiedOn: '2027-02-27',
    readyOn: '2027-04-08',
    // 20 L × 11.7 °P × 1.5 = 351 B; one pack 33 days old gives 188 B, the starter the rest
    needB: 351,
    pitchedB: 351,
    source: {
      kind: 'fresh',
      packs: 1,
      packsFromHand: 0,
      packsMadeOn: '2027-01-04',
      packAgeDays: 33,
      orderOn: '2027-01-27',
      arrivesOn: '2027-02-03',
    },
    starter: {
      litres: 1.5,
      extractG: 150,
      startOn: '2027-02-03',
      growDays: 2,
      chillOn: '2027-02-05',
      initialB: 188,
      finalB: 351,
    },
    why: ['The first lager of the season: there is no slurry of it yet.'],
    ...part,
  });
}
