// A plan read back from its JSON and worked out anew, section by section of docs/planner.md, without the planner.
import type { Brew, House, Jar, Plan, PlannedBrew, Tank, Yeast } from '../../../planner/index.ts';
import { type Numbers, settingsOf, weightsOf } from './page.ts';
import { starterGives, starterSeed } from './starter.ts';

const DAY_MS = 86_400_000;
const WEEK = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];
export const dayOf = (iso: string): number => Date.parse(`${iso}T00:00:00Z`) / DAY_MS;
const isoOf = (day: number): string => new Date(day * DAY_MS).toISOString().slice(0, 10);
/** ⌈x⌉ of the page. */
export const up = (x: number): number => Math.ceil(x - 1e-9);

export const cubic = (sg: number): number =>
  182.46007 * sg ** 3 - 775.68212 * sg ** 2 + 1262.7794 * sg - 669.56218;
export const plato = (sg: number): number => Math.max(0, cubic(sg));

/** One brew of the plan with what follows from it. */
export type Worked = {
  planned: PlannedBrew;
  row: Brew;
  tank: Tank;
  yeast: Yeast;
  day: number;
  emptied: number;
  ready: number;
  fermented: number;
  harvest: number;
  crashed: boolean;
  starterL: number;
  decanted: boolean;
  /** The day on which its yeast leaves its jar or pack. */
  draws: number;
  need: number;
  drawMl: number;
  alive: number;
  ageDays: number;
  pitchedB: number;
  generation: number;
  /** What it gives is a part of its starter; billion living cells of that beyond its need. */
  keeps: boolean;
  spareB: number;
  harvestMl: number;
  boughtPacks: number;
};

export class Season {
  readonly s: Numbers;
  readonly w: Numbers;
  readonly brews = new Map<string, Worked>();
  readonly jars: Map<string, Jar>;
  deliveries = 0;
  readonly today: number;
  readonly to: number;
  private readonly closed: Set<string>;

  constructor(
    readonly house: House,
    readonly plan: Plan,
  ) {
    this.s = settingsOf(house.kind, house.rules);
    this.w = weightsOf(house.kind, house.weights);
    this.closed = new Set(house.closed);
    this.jars = new Map(house.jars.map((jar) => [jar.jar, jar]));
    this.today = dayOf(plan.today);
    this.to = dayOf(house.to);
    const planned = [...plan.brews].sort((a, b) => dayOf(a.day) - dayOf(b.day));
    for (const brew of planned) this.brews.set(brew.brew, this.days(brew));
    this.buy();
    for (const brew of this.brews.values()) this.pitch(brew);
  }

  private is(day: number, days: readonly string[]): boolean {
    const weekday = WEEK[(((day + 4) % 7) + 7) % 7] ?? '';
    return !this.closed.has(isoOf(day)) && days.includes(weekday);
  }
  private works = (day: number) => this.is(day, this.house.workDays ?? this.house.brewDays);
  private starts = (day: number) =>
    this.works(day) ||
    this.is(day, this.house.starterDays ?? (this.house.kind === 'home' ? WEEK : []));

  private days(planned: PlannedBrew): Worked {
    const { s, house } = this;
    const row = find(house.brews, (b) => b.brew === planned.brew);
    const tank = find(house.tanks, (t) => t.tank === planned.tank);
    const yeast = find(house.yeasts, (y) => y.yeast === planned.yeast);
    const day = dayOf(planned.day);
    let emptied = day + row.tankDays;
    while (!this.works(emptied)) emptied++;
    if (planned.done) emptied = dayOf(planned.emptiedOn);
    const slow = plato(row.og) > s('strongBeerP') || yeast.flocculation === 'low';
    const crop =
      (yeast.kind === 'lager' ? s('cropDayLager') : s('cropDayAle')) +
      (slow ? s('cropDaysExtra') : 0);
    const fermented = day + Math.min(crop, row.tankDays);
    const told = this.plan.harvests.find((h) => h.brew === planned.brew);
    const harvest = told ? dayOf(told.day) : emptied;
    const crashed =
      s('crashDays') > 0 &&
      tank.minC <= s('crashC') &&
      harvest - s('crashDays') >= fermented &&
      (row.dryHopDay === null || day + row.dryHopDay < harvest);
    const starterL = planned.starter?.litres ?? 0;
    const decanted = starterL > s('decantFromShare') * row.volumeL;
    let draws = day;
    if (starterL > 0) {
      const grows = starterL > house.starterGear.maxLitres / 2 ? 2 : 1;
      const settles = yeast.flocculation === 'low' ? 'starterSettleDaysLow' : 'starterSettleDays';
      if (decanted) draws = this.lastStarterDay(day - s(settles));
      for (let back = 0; decanted && back < 7 && !this.starts(draws - grows); back++)
        draws = this.lastStarterDay(draws - 1);
      draws -= grows;
    }
    const fresh = planned.source.kind === 'fresh';
    return {
      planned,
      row,
      tank,
      yeast,
      day,
      emptied,
      ready: emptied + row.conditionDays,
      fermented,
      harvest,
      crashed,
      starterL,
      decanted,
      draws,
      need: this.need(row, fresh),
      drawMl: 0,
      alive: 1,
      ageDays: 0,
      pitchedB: planned.pitchedB,
      generation: planned.generation,
      keeps: told?.ofStarter === true,
      spareB: 0,
      harvestMl: told?.done ? told.settledMl.likely : 0,
      boughtPacks: 0,
    };
  }

  private lastStarterDay(day: number): number {
    let last = day;
    while (!this.starts(last)) last--;
    return last;
  }

  need(row: Brew, fresh: boolean): number {
    const { s } = this;
    const p = plato(row.og);
    if (row.needMPerMlP !== null) return row.needMPerMlP * row.volumeL * p;
    let rate = s('rateLager');
    if (row.fermentC > s('lagerToC')) {
      rate = row.fermentC <= s('hybridToC') ? s('rateHybrid') : s('rateAle');
      if (fresh) rate *= s('freshShare');
    }
    if (p > s('strongFromP')) rate *= 1 + s('strongIncrease');
    if (row.souring === 'kettle') rate *= 1 + s('sourIncrease');
    return rate * row.volumeL * p;
  }

  /** k(T): share lost in a day. */
  private loss(tempC: number): number {
    const [k1, k5, k25] = ['storageLossAt1C', 'storageLossAt5C', 'storageLossAt25C'].map((name) =>
      Math.max(1e-9, this.s(name)),
    ) as [number, number, number];
    if (tempC >= 25) return k25;
    return tempC <= 5 ? k1 * (k5 / k1) ** ((tempC - 1) / 4) : k5 * (k25 / k5) ** ((tempC - 5) / 20);
  }

  private ageing(og: number, fg: number): number {
    const [oe, ae] = [cubic(og), cubic(fg)];
    const byWeight = Math.max(0, (oe - 0.1808 * oe - 0.8192 * ae) / (2.0665 - 0.010665 * oe));
    const above = (byWeight * fg) / 0.7907 - this.s('strongAfterAbv');
    return 1 + this.s('strongAgeingPerAbv') * Math.max(0, above);
  }

  aliveOfHarvest(from: Worked, on: number): number {
    const { s } = this;
    const a = from.keeps ? 1 : this.ageing(from.row.og, Math.min(from.row.fg, from.row.og));
    const all = Math.max(0, from.harvest - from.fermented);
    const cold = from.crashed ? Math.min(s('crashDays'), all) : 0;
    const under =
      a *
      s('beerLossShare') *
      (this.loss(from.row.fermentC) * (all - cold) + this.loss(s('crashC')) * cold);
    const stored = a * this.loss(this.house.store.tempC) * Math.max(0, on - from.harvest);
    return s('cropViability') * Math.exp(-under - stored);
  }

  aliveOfJar(jar: Jar, on: number): number {
    const og = jar.sourceOg ?? 1.05;
    const counted = jar.measuredViability !== null;
    const from = dayOf((counted ? jar.measuredOn : null) ?? jar.harvestedOn);
    const start = jar.measuredViability ?? this.s('cropViability');
    const k = this.ageing(og, 1 + (og - 1) / 4) * this.loss(this.house.store.tempC);
    return start * Math.exp(-k * Math.max(0, on - from));
  }

  /** Billion cells per mL after so many days of settling. */
  density(yeast: Yeast, settleDays: number): number {
    const { s } = this;
    const high = yeast.flocculation === 'high' ? 'densityHigh' : 'densityMedium';
    const settled = s(yeast.flocculation === 'low' ? 'densityLow' : high);
    const share = ['density0hShare', 'density24hShare'][settleDays];
    return share === undefined ? settled : settled * s(share);
  }

  private buy(): void {
    const { s, house } = this;
    const left = new Map(house.yeasts.map((y) => [y.yeast, y.packsOnHand]));
    const order = new Map(house.brews.map((b, i) => [b.brew, i]));
    const fresh = [...this.brews.values()]
      .filter((b) => b.planned.source.kind === 'fresh' && !b.planned.done)
      .sort(
        (x, y) =>
          x.draws - y.draws ||
          x.day - y.day ||
          (order.get(x.row.brew) ?? 0) - (order.get(y.row.brew) ?? 0),
      );
    let latest = Number.NEGATIVE_INFINITY;
    for (const brew of fresh) {
      const { yeast } = brew;
      const dry = yeast.form === 'dry';
      const loss = s(dry ? 'dryLossPerDay' : 'liquidLossPerDay');
      const expiry = s(dry ? 'dryExpiryDays' : 'liquidExpiryDays');
      const holds = (age: number) => yeast.packCellsB * Math.exp(-loss * age);
      const made =
        yeast.packsMadeOn === null
          ? this.today - house.packAgeOnArrivalDays
          : dayOf(yeast.packsMadeOn);
      const wanted =
        brew.starterL > 0 && !dry ? starterSeed(this, brew.need, brew.starterL) : brew.need;
      const age = brew.draws - made;
      const onHand = left.get(yeast.yeast) ?? 0;
      const hand = age >= 0 && age <= expiry ? Math.min(onHand, up(wanted / holds(age))) : 0;
      left.set(yeast.yeast, onHand - hand);
      let cells = hand * holds(Math.max(0, age));
      const missing = wanted - cells;
      if (missing > 1e-9) {
        const own = up(missing / holds(house.packAgeOnArrivalDays));
        const joinAge = house.packAgeOnArrivalDays + brew.draws - latest;
        const joined = Number.isFinite(joinAge) ? up(missing / holds(joinAge)) : 0;
        const joins =
          brew.draws - latest <= s('orderWindowDays') &&
          joinAge <= expiry &&
          (joined - own) * this.minor(yeast.packPrice) <=
            house.deliveryCost * this.plan.minorPerMajor;
        brew.boughtPacks = joins ? joined : own;
        cells += brew.boughtPacks * holds(joins ? joinAge : house.packAgeOnArrivalDays);
        if (!joins) {
          latest = brew.draws;
          this.deliveries++;
        }
      }
      brew.alive = cells / ((hand + brew.boughtPacks) * yeast.packCellsB);
      brew.pitchedB = brew.starterL > 0 && !dry ? starterGives(this, cells, brew.starterL) : cells;
      if (!brew.keeps) continue;
      brew.spareB = Math.max(0, brew.pitchedB - brew.need);
      brew.pitchedB -= brew.spareB;
    }
  }

  private pitch(brew: Worked): void {
    const { s, house } = this;
    const { source, done } = brew.planned;
    if (source.kind !== 'fresh') {
      const from = source.kind === 'harvest' ? this.brews.get(source.brew) : undefined;
      const jar = source.kind === 'jar' ? this.jars.get(source.jar) : undefined;
      const harvested = from ? from.harvest : dayOf(jar?.harvestedOn ?? '');
      brew.ageDays = Math.max(0, brew.draws - harvested);
      brew.alive = from
        ? this.aliveOfHarvest(from, brew.draws)
        : this.aliveOfJar(jar as Jar, brew.draws);
      if (!done) brew.generation = from ? givenBy(from) : (jar?.generation ?? 0);
      const want = brew.need * s('pitchMargin');
      const seed = brew.starterL > 0 ? starterSeed(this, want, brew.starterL) : want;
      brew.drawMl =
        seed / (this.density(brew.yeast, from ? house.store.settleDays : 2) * brew.alive);
      if (done) brew.drawMl = source.drawMl;
      else brew.pitchedB = brew.starterL > 0 ? starterGives(this, seed, brew.starterL) : seed;
    } else if (!done) brew.generation = 0;
    if (brew.harvestMl > 0) return;
    if (brew.keeps) {
      const most = s('keptStarterJars') * house.store.jarMl;
      const density = this.density(brew.yeast, house.store.settleDays);
      brew.harvestMl = Math.min(most, brew.spareB / s('cropViability') / density);
      return;
    }
    const grown = Math.min(
      s('growthFactor') * brew.pitchedB,
      s('cellCeilingBPerL') * brew.row.volumeL,
    );
    const { flocculation } = brew.yeast;
    let share = s(flocculation === 'high' ? 'recoverHigh' : 'recoverMedium');
    if (flocculation === 'low')
      share = s('recoverLow') * (brew.crashed ? 1 : s('uncrashedLowShare'));
    brew.harvestMl = (grown * share) / this.density(brew.yeast, house.store.settleDays);
  }

  /** round(… × m) of the page. */
  minor(major: number): number {
    return Math.round(major * this.plan.minorPerMajor);
  }
}

function find<T>(list: readonly T[], is: (x: T) => boolean): T {
  const found = list.find(is);
  if (found === undefined) throw new Error('the plan names what the house does not have');
  return found;
}

/** The generation of what a brew gives, as it is pitched. */
export const givenBy = (from: Worked): number => from.generation + (from.keeps ? 0 : 1);
