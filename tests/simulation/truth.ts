// What really happens in the simulated season: distributions of its own, which the planner cannot see and none of which is its prediction.
import { dice } from '../kill/user.ts';

/**
 * Settled slurry out of a litre of beer, mL: 60 million cells per mL, 60 % of them recovered, 1.6 billion in a mL of
 * slurry (the middles of 40–80, 50–70 % and 1.0–2.0 as brewing texts quote them; from memory), and as much apart as
 * breweries report.
 */
const ML_PER_LITRE = 22;
const YIELD_SPREAD = 0.35;
/** Share alive on the day of the harvest, and what is lost a day in the cold: −7 % in 6 days at 1 °C (McCaig & Bendiak 1985). */
const ALIVE_AT_FIRST = 0.96;
const LOST_A_DAY = 0.012;
const STRAIN_SPREAD = 0.5;
const CELLS_LOOKED_AT = 300;

/** How often things go wrong; common practice, no source. */
const CHANCE = { slip: 0.08, slow: 0.07, lost: 0.04, counted: 0.4 } as const;
export type Chance = { readonly [What in keyof typeof CHANCE]: number };
const MOST_SLIP_DAYS = 9;
const MOST_SLOW_DAYS = 6;

export class Truth {
  private readonly roll: () => number;
  private readonly lossOf = new Map<string, number>();

  constructor(
    seed: number,
    private readonly chance: Chance = CHANCE,
  ) {
    this.roll = dice(seed);
  }

  private normal(): number {
    return Math.sqrt(-2 * Math.log(1 - this.roll())) * Math.cos(2 * Math.PI * this.roll());
  }

  /** Days by which a brew slips on the day it was to be brewed; 0: it is brewed. */
  slipDays(): number {
    return this.roll() < this.chance.slip ? 1 + Math.floor(this.roll() * MOST_SLIP_DAYS) : 0;
  }

  /** Days that a beer needs longer than its tank days; 0: none. */
  slowDays(): number {
    return this.roll() < this.chance.slow ? 2 + Math.floor(this.roll() * (MOST_SLOW_DAYS - 1)) : 0;
  }

  /** What a beer gives, mL settled; null: lost. */
  harvestMl(volumeL: number): number | null {
    if (this.roll() < this.chance.lost) return null;
    return Math.round(volumeL * ML_PER_LITRE * Math.exp(YIELD_SPREAD * this.normal()));
  }

  /** What is poured where the plan says so many mL: a jug is read to a few per cent, and holds no more than there is. */
  poured(drawMl: number): number {
    return Math.floor(drawMl * Math.min(1, Math.exp(0.05 * this.normal())));
  }

  /** A count under the microscope of slurry of this age; null: nobody looks. */
  count(yeast: string, ageDays: number): { stained: number; total: number } | null {
    if (this.roll() >= this.chance.counted) return null;
    const known = this.lossOf.get(yeast);
    const loss = known ?? LOST_A_DAY * Math.exp(STRAIN_SPREAD * this.normal());
    this.lossOf.set(yeast, loss);
    const alive = ALIVE_AT_FIRST * Math.exp(-loss * ageDays);
    let stained = 0;
    for (let cell = 0; cell < CELLS_LOOKED_AT; cell += 1) if (this.roll() >= alive) stained += 1;
    return { stained, total: CELLS_LOOKED_AT };
  }
}
