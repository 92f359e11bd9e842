// Asks the rules about one brew alone: in one slot, with one pitch, all else as favourable as it can be.
import type { CostRule, Found } from '../rules/rule.ts';
import type { Judge } from '../search/score.ts';
import { dates } from '../timeline/dates.ts';
import { keepForNextSeason, pitch } from '../timeline/pitch.ts';
import { FRESH, type Problem } from '../timeline/problem.ts';
import { NO_RESERVE } from '../timeline/reserve.ts';
import { placeDone, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';

type Follows = CostRule['follows'];

/** A crop as it can be taken from one beer: days after its pitch, what it has lost on the beer, when it may be drawn. */
export type CropWay = {
  day: number;
  usableFrom: number;
  beerLoss: number;
  crashed: boolean;
};

/** What a pitch costs beside its hazards, its hazards, and the mL it draws. */
export type Pitched = {
  broken: boolean;
  cost: number;
  hazard: number;
  drawMl: number;
  jars: number;
};

/**
 * One brew at a time on a timeline on which only brewed brews stand. Days and prices come from where the plan's own
 * come from, the rules' `at`; amounts that other brews decide are set to the best they can be.
 */
export class Asker {
  readonly t: Timeline;
  /** What the brewed brews cost by themselves. */
  readonly factsCost: number;
  /** Whether where a brew's slurry comes from costs by itself: against a plan in force, or where slack is wanted. */
  readonly chargesSources: boolean;
  private sum = 0;
  private count = 0;
  private readonly add: Found = (amount) => {
    this.sum += amount;
    this.count++;
  };

  constructor(
    readonly problem: Problem,
    readonly judge: Judge,
  ) {
    this.t = new Timeline(problem);
    this.chargesSources =
      problem.inForce.some((was) => was !== null) || problem.settings.slackDays > 0;
    placeDone(this.t);
    unfold(this.t);
    // other draws may leave nothing for a reserve
    this.t.reserveUntil.fill(NO_RESERVE);
    this.factsCost = judge.score(this.t).cost;
  }

  /** Puts brew b on a day into a tank, pitched with nothing to complain of. */
  stand(b: number, day: number, tank: number, yeast: number, starter: number): void {
    const { t } = this;
    t.placed[b] = 1;
    t.day[b] = day;
    t.tank[b] = tank;
    t.yeast[b] = yeast;
    t.source[b] = FRESH;
    t.starter[b] = starter;
    t.crop[b] = -1;
    dates(this.problem, t, b);
    const need = this.problem.brews[b]?.needFreshB ?? 0;
    this.fresh(b, { packs: 0, fromHand: 0, cellsB: need, alive: 1 });
  }

  /** Gives brew b packs: so many, of which so many are paid for, so many cells, so large a share alive. */
  fresh(
    b: number,
    with_: { packs: number; fromHand: number; cellsB: number; alive: number },
  ): void {
    const { t } = this;
    const begun = this.problem.brews[b]?.begun;
    t.source[b] = FRESH;
    t.packs[b] = with_.packs;
    t.packsFromHand[b] = with_.fromHand;
    t.seedB[b] = with_.cellsB;
    t.needB[b] = this.problem.brews[b]?.needFreshB ?? 0;
    t.viability[b] = with_.alive;
    t.ageDays[b] = 0;
    t.drawnEarly[b] = -1;
    pitch(this.problem, t, b);
    // what grows already is not judged: nothing is less than what it costs
    if (begun) t.pitchedB[b] = 0;
  }

  /** Takes brew b out again; a brewed beer goes back to how it stands. */
  leave(b: number): void {
    if (this.problem.brews[b]?.done) {
      dates(this.problem, this.t, b);
      return;
    }
    this.t.placed[b] = 0;
    this.t.source[b] = FRESH;
  }

  /** How many things hard rules find on brew b as it stands. */
  broken(b: number): number {
    this.count = 0;
    for (const rule of this.judge.hard) rule.at?.(this.t, b, this.add);
    return this.count;
  }

  /** What the cost rules that follow from this find on brew b, the joining of hazards left out. */
  cost(b: number, follows: Follows): number {
    this.sum = 0;
    for (const { rule, weight } of this.judge.costs) {
      if (rule.follows === follows && !rule.joinsHazards) rule.at?.(this.t, b, weight, this.add);
    }
    return this.sum;
  }

  /** The hazards of the pitch of brew b, added up. */
  hazard(b: number): number {
    this.sum = 0;
    for (const { rule, weight } of this.judge.hazards) rule.at(this.t, b, weight, this.add);
    let sum = this.sum;
    for (const { rule, weight } of this.judge.relaxed) {
      this.count = 0;
      rule.at?.(this.t, b, this.add);
      sum += this.count * weight;
    }
    return sum;
  }

  /** What so much hazard costs in brew b. */
  risk(b: number, hazard: number): number {
    this.sum = 0;
    this.t.hazard[b] = hazard * CUT;
    for (const { rule, weight } of this.judge.costs) {
      if (rule.joinsHazards) rule.at?.(this.t, b, weight, this.add);
    }
    return this.sum;
  }

  /** The crops that brew b, as it stands, can give: one for each day on which it may be taken. */
  crops(b: number): CropWay[] {
    const { t, problem } = this;
    const out: CropWay[] = [];
    const note = () => {
      const day = t.harvestDay[b] as number;
      if (out.some((way) => way.day === day)) return;
      out.push({
        day,
        usableFrom: t.usableFrom[b] as number,
        beerLoss: t.beerLoss[b] as number,
        crashed: t.crashed[b] === 1,
      });
    };
    note();
    const brew = problem.brews[b];
    if (problem.tanks[t.tank[b] as number]?.bottomOutlet && !brew?.harvested) {
      const last = t.emptied[b] as number;
      for (let k = 0; k <= last - (t.day[b] as number); k++) {
        t.crop[b] = k;
        dates(problem, t, b);
        note();
        if ((t.harvestDay[b] as number) >= last) break;
      }
      t.crop[b] = -1;
      dates(problem, t, b);
    }
    return out;
  }

  /** Lets brew `from` stand as the giver of a crop: begun on this day, of this generation, with nothing to complain of. */
  give(from: number, day: number, yeast: number, generation: number, crop: CropWay): void {
    const { t } = this;
    t.harvestDay[from] = crop.day;
    t.usableFrom[from] = crop.usableFrom;
    t.beerLoss[from] = crop.beerLoss;
    t.crashed[from] = crop.crashed ? 1 : 0;
    if (this.problem.brews[from]?.done) return;
    t.placed[from] = 1;
    t.day[from] = day;
    t.yeast[from] = yeast;
    t.source[from] = FRESH;
    t.generation[from] = generation;
    t.tainted[from] = 0;
  }

  /** Pitches brew b, which stands, from a jar or from what `give` has laid ready. */
  pitchFrom(b: number, source: number): Pitched {
    const { t } = this;
    t.source[b] = source;
    pitch(this.problem, t, b);
    const broken = this.broken(b) > 0;
    if (broken) return { broken, cost: 0, hazard: 0, drawMl: 0, jars: 0 };
    return {
      broken,
      cost: this.cost(b, 'pitch'),
      hazard: this.hazard(b),
      drawMl: t.drawMl[b] as number,
      jars: t.drawJars[b] as number,
    };
  }

  /** What harvesting brew b costs beside its jars, at least, and what each jar adds, at least. */
  harvest(b: number): { once: number; perJar: number } {
    const { t } = this;
    const source = this.problem.jars.length + b;
    const draws = t.draws[source] as number;
    const jars = t.jarsCut[source] as number;
    const placed = t.placed[b] as number;
    t.placed[b] = 1;
    const at = (cut: number): number => {
      t.draws[source] = Math.max(1, draws);
      t.jarsCut[source] = jars + cut;
      return this.cost(b, 'harvest');
    };
    const none = draws > 0 ? at(0) : 0;
    // amounts are rounded once a harvest: a line through two of them, lowered by what rounding can take
    const perJar = Math.max(0, (at(MANY) - at(0) - 1) / MANY);
    const once = Math.max(0, at(0) - none - 1);
    t.draws[source] = draws;
    t.jarsCut[source] = jars;
    t.placed[b] = placed;
    return { once, perJar };
  }

  /** What the plan-wide costs find if a jar of strain y is kept from this source: less than 0 where it is worth something. */
  keep(y: number, source: number): number {
    const { t } = this;
    t.keep[y] = source;
    keepForNextSeason(this.problem, t);
    this.sum = 0;
    for (const { rule, weight } of this.judge.costs) {
      if (rule.follows === 'plan') rule.check(t, weight, this.add);
    }
    const worth = this.sum;
    t.keep[y] = -1;
    return worth;
  }
}

const MANY = 1000;
/** Hazards are added up in another order than the plan's: what that can change is cut off. */
const CUT = 1 - 1e-12;
