// One season under one stretch of luck, lived as a brewer would without planning again: wait where a tank is full,
// and take packs where the yeast is not there, too little or too weak.
import {
  type House,
  type Plan,
  type PlannedBrew,
  type PlannedHarvest,
  type Range,
  resolveSettings,
} from '../model/index.ts';
import { beerLossPerDay, storageLossPerDay } from '../science/index.ts';
import { dayNumber, type HouseDays, houseDays } from '../timeline/calendar.ts';
import { amountAt, type Dice, shareAt } from './luck.ts';

/** How a draw ended: as planned, or what took the yeast away. */
export type Ended = 'kept' | 'late' | 'short' | 'weak' | 'lost' | 'old';
export type Lived = { daysMoved: number; ended: Ended | null };

type Draw = {
  /** Place of the source among the brews; -1: a jar of the shelf. */
  from: number;
  ml: number;
  share: Range;
  /** Day of the harvest, for a jar of the shelf. */
  harvested: number;
  /** Age in days that was planned for. */
  ageDays: number;
  /** Days before the brew day on which the yeast is taken out. */
  ahead: number;
  starter: boolean;
};

type Brew = {
  day: number;
  done: boolean;
  tank: number;
  tankDays: number;
  turnaround: number;
  turns: number;
  emptied: number;
  draw: Draw | null;
  /** Packs of an order come on this day; -1: from the cupboard, or none. */
  arrives: number;
  harvest: { offset: number; settle: number; ml: Range; done: boolean; day: number } | null;
  /** Rate at which its yeast dies while it lies on the beer, a day. */
  beerLossPerDay: number;
};

/** What is still needed of a draw for the brewer to go on with it: a tenth short is poured all the same. */
const ENOUGH = 0.9;

/** A plan made ready for living it many times. */
export class Season {
  readonly names: string[];
  /** Those still to come. */
  readonly open: number[];
  private readonly brews: Brew[];
  private readonly days: HouseDays;
  private readonly floor: number;
  private readonly maxStorageDays: number;
  private readonly tanks: number;
  /** Rate at which slurry dies in the house's cold store, a day. */
  private readonly lossPerDay: number;

  constructor(
    plan: Plan,
    private readonly house: House,
  ) {
    const settings = resolveSettings(house.kind, house.rules);
    this.floor = settings.viabilityFloor;
    this.maxStorageDays = settings.maxStorageDays;
    this.lossPerDay = storageLossPerDay(house.store.tempC, settings);
    const at = new Map(plan.brews.map(({ brew }, i) => [brew, i]));
    const tankAt = new Map(house.tanks.map(({ tank }, i) => [tank, i]));
    this.tanks = house.tanks.length;
    const harvests = new Map(plan.harvests.map((harvest) => [harvest.brew, harvest]));
    const rows = new Map(house.brews.map((row) => [row.brew, row]));
    this.names = plan.brews.map(({ brew }) => brew);
    this.brews = plan.brews.map((b) => ({
      day: dayNumber(b.day),
      done: b.done,
      tank: tankAt.get(b.tank) ?? 0,
      tankDays: rows.get(b.brew)?.tankDays ?? dayNumber(b.emptiedOn) - dayNumber(b.day),
      turnaround: dayNumber(b.tankFreeOn) - dayNumber(b.emptiedOn),
      turns: Math.min(house.brewsPerDay, b.kettle[0]?.turns ?? 1),
      emptied: dayNumber(b.emptiedOn),
      draw: b.done ? null : drawOf(b, at),
      arrives:
        b.source.kind === 'fresh' && b.source.arrivesOn !== null
          ? dayNumber(b.source.arrivesOn)
          : -1,
      harvest: harvestOf(b, harvests.get(b.brew)),
      beerLossPerDay: beerLossPerDay(rows.get(b.brew)?.fermentC ?? house.store.tempC, settings),
    }));
    this.open = this.brews.flatMap(({ done }, i) => (done ? [] : [i]));
    const first = Math.min(dayNumber(house.from), ...this.brews.map(({ day }) => day));
    const last = Math.max(dayNumber(house.to), ...this.brews.map(({ emptied }) => emptied));
    this.days = houseDays(house, first, last + 400);
  }

  /** Lives it once; one answer a brew, in the plan's order. */
  live(dice: Dice): Lived[] {
    const free = new Int32Array(this.tanks).fill(-1);
    const turns = new Map<number, number>();
    const cropDay = new Int32Array(this.brews.length);
    const cropLater = new Int32Array(this.brews.length);
    const cropMl = new Float64Array(this.brews.length);
    const cropLuck = new Float64Array(this.brews.length);
    return this.brews.map((brew, i) => {
      const slips = dice.slips();
      const slow = dice.slowDays();
      const volumeLuck = dice.deviate();
      cropLuck[i] = dice.deviate();
      const lost = dice.jarLost();
      const late = dice.orderLate();
      const ownLuck = dice.deviate();
      let day = brew.day;
      let ended: Ended | null = null;
      if (!brew.done) {
        for (let n = 0; n < slips; n++) day = this.brewDayAfter(day);
        if (late && brew.arrives >= 0) {
          const there = brew.arrives + dice.lateOrderDays;
          if (there > day) day = this.brewDayOn(there);
        }
        if ((free[brew.tank] as number) > day) day = this.brewDayOn(free[brew.tank] as number);
        while (
          day !== brew.day &&
          (turns.get(day) ?? 0) + brew.turns > this.house.brewsPerDay &&
          day < this.days.first + this.days.count - 1
        ) {
          day = this.brewDayAfter(day);
        }
        turns.set(day, (turns.get(day) ?? 0) + brew.turns);
        if (brew.draw) {
          ended = this.drawn(brew.draw, day, lost, ownLuck, {
            cropDay,
            cropLater,
            cropMl,
            cropLuck,
          });
        }
      }
      const emptied = brew.done ? brew.emptied : this.workDayOn(day + brew.tankDays + slow);
      free[brew.tank] = emptied + brew.turnaround;
      if (brew.harvest) {
        const { offset, ml, done, day: planned } = brew.harvest;
        // a part kept of a starter goes along with the brew day
        const taken = offset === 0 ? day : Math.min(emptied, this.workDayOn(day + offset + slow));
        cropDay[i] = done ? planned : taken;
        // a slow beer keeps its yeast warm for longer than was planned
        cropLater[i] = done ? 0 : Math.max(0, taken - day - offset);
        cropMl[i] = done ? ml.likely : amountAt(ml, volumeLuck);
      }
      return { daysMoved: day - brew.day, ended };
    });
  }

  private drawn(
    draw: Draw,
    day: number,
    lost: boolean,
    ownLuck: number,
    crop: {
      cropDay: Int32Array;
      cropLater: Int32Array;
      cropMl: Float64Array;
      cropLuck: Float64Array;
    },
  ): Ended {
    const use = day - draw.ahead;
    const { from } = draw;
    const harvested = from < 0 ? draw.harvested : (crop.cropDay[from] as number);
    const settle = from < 0 ? 0 : (this.brews[from]?.harvest?.settle ?? 0);
    if (use < harvested + settle) return 'late';
    const age = use - harvested;
    if (age > this.maxStorageDays) return 'old';
    if (lost) return 'lost';
    const older = age - draw.ageDays;
    const luck = from < 0 ? ownLuck : (crop.cropLuck[from] as number);
    const onBeer =
      from < 0 ? 0 : (crop.cropLater[from] as number) * (this.brews[from]?.beerLossPerDay ?? 0);
    const alive = shareAt(draw.share, luck) * Math.exp(-this.lossPerDay * older - onBeer);
    if (!draw.starter && alive < this.floor) return 'weak';
    if (from < 0) return 'kept';
    const wanted = alive > 0 ? (draw.ml * draw.share.likely) / alive : Number.POSITIVE_INFINITY;
    const there = crop.cropMl[from] as number;
    if (there < wanted * ENOUGH) return 'short';
    crop.cropMl[from] = Math.max(0, there - wanted);
    return 'kept';
  }

  private brewDayAfter(day: number): number {
    return this.days.brewDayAfter[day - this.days.first] ?? day + 1;
  }

  private brewDayOn(day: number): number {
    return this.brewDayAfter(day - 1);
  }

  private workDayOn(day: number): number {
    return this.days.nextWork[day - this.days.first] ?? day;
  }
}

function drawOf(b: PlannedBrew, at: ReadonlyMap<string, number>): Draw | null {
  const { source } = b;
  if (source.kind === 'fresh') return null;
  const from = source.kind === 'harvest' ? (at.get(source.brew) ?? -1) : -1;
  const harvested = dayNumber(source.harvestedOn);
  return {
    from,
    ml: source.drawMl,
    share: b.viability,
    harvested,
    ageDays: source.ageDays,
    ahead: dayNumber(b.day) - harvested - source.ageDays,
    starter: b.starter !== null,
  };
}

function harvestOf(b: PlannedBrew, harvest: PlannedHarvest | undefined): Brew['harvest'] {
  if (!harvest) return null;
  const day = dayNumber(harvest.day);
  return {
    offset: day - dayNumber(b.day),
    settle: dayNumber(harvest.usableFrom) - day,
    ml: harvest.settledMl,
    done: harvest.done,
    day,
  };
}
