// Starters laid out: how large, in how many steps, when to begin, what to keep, and the wake-up in fresh wort.
//
// Step-ups of 5–10 times, a vitality start 3–6 h before pitching: common practice, no source. Growth
// itself is in starter.ts.
import type { Settings } from '../model/settings.ts';
import type { Flocculation } from './slurry.ts';
import { extractG, starterGivesB, starterGrowDays, starterSeedB } from './starter.ts';

export type StarterGear = { maxLitres: number; stirred: boolean };

/** Smallest starter that takes `seedB` to `wantB`, litres; Infinity where the vessel is too small for it. */
export function starterLitres(
  seedB: number,
  wantB: number,
  gear: StarterGear,
  s: Settings,
): number {
  if (seedB >= wantB) return 0;
  const enough = (litres: number) =>
    starterGivesB(seedB, litres, gear.stirred, s) >= wantB * (1 - 1e-9);
  if (!enough(gear.maxLitres)) return Infinity;
  let low = 0;
  let high = gear.maxLitres;
  for (let i = 0; i < 60 && high - low > 1e-12 * high; i++) {
    const middle = (low + high) / 2;
    if (enough(middle)) high = middle;
    else low = middle;
  }
  return high;
}

export type StarterStep = {
  litres: number;
  extractG: number;
  startB: number;
  endB: number;
  growDays: 1 | 2;
};

/** No one steps up more often: what is gained is lost again in handling. */
export const MOST_STEPS = 4;

/**
 * The fewest steps from `seedB` to `wantB` in this gear, each decanted before the next; an empty list
 * where no starter is needed, null where `MOST_STEPS` do not get there. Steps grow by like factors as
 * far as the vessel allows.
 */
export function stepUps(
  seedB: number,
  wantB: number,
  gear: StarterGear,
  s: Settings,
): StarterStep[] | null {
  if (seedB >= wantB) return [];
  if (!(seedB > 0) || !(gear.maxLitres > 0)) return null;
  for (let steps = 1; steps <= MOST_STEPS; steps++) {
    // Backwards: before each step there must be what the largest vessel needs, better an even share.
    const cells = [wantB];
    for (let left = steps - 1; left > 0; left--) {
      const after = cells[0] ?? wantB;
      const least = starterSeedB(after, gear.maxLitres, gear.stirred, s);
      cells.unshift(Math.max(least, after * (seedB / after) ** (1 / (left + 1))));
    }
    const plan: StarterStep[] = [];
    let startB = seedB;
    for (const endB of cells) {
      const litres = starterLitres(startB, endB, gear, s);
      if (!Number.isFinite(litres)) break;
      plan.push({
        litres,
        extractG: extractG(litres, s),
        startB,
        endB,
        growDays: starterGrowDays(litres, gear.maxLitres),
      });
      startB = endB;
    }
    if (plan.length === steps) return plan;
  }
  return null;
}

/** Whether a starter is chilled and decanted instead of pitched whole. */
export function starterDecanted(litres: number, batchL: number, s: Settings): boolean {
  return litres > s.decantFromShare * batchL;
}

/** Days that a starter of this yeast stands in the cold before it is decanted. */
export function starterSettleDays(flocculation: Flocculation, s: Settings): number {
  return flocculation === 'low' ? s.starterSettleDaysLow : s.starterSettleDays;
}

/** Days before the pitch on which the first of these steps must begin so that the last ends in time. */
export function starterLeadDays(
  steps: readonly StarterStep[],
  batchL: number,
  s: Settings,
  flocculation: Flocculation = 'medium',
): number {
  let days = 0;
  steps.forEach((step, i) => {
    days += step.growDays;
    // Every step but the last is settled and decanted before fresh wort goes on.
    if (i < steps.length - 1 || starterDecanted(step.litres, batchL, s))
      days += starterSettleDays(flocculation, s);
  });
  return days;
}

export type KeptStarter = StarterStep & {
  pitchB: number;
  keepB: number;
  /** Share of the finished starter that goes into the jar. */
  keepShare: number;
  /** What is kept is still the pack's own yeast. */
  generation: 0;
};

/**
 * A starter built larger on purpose: `pitchB` for the brew and `keepB` into a jar, which stays
 * generation 0. Null where the vessel cannot give both.
 */
export function buildAndKeep(
  seedB: number,
  pitchB: number,
  keepB: number,
  gear: StarterGear,
  s: Settings,
): KeptStarter | null {
  const endB = pitchB + keepB;
  const litres = starterLitres(seedB, endB, gear, s);
  if (!Number.isFinite(litres) || litres === 0) return null;
  return {
    litres,
    extractG: extractG(litres, s),
    startB: seedB,
    endB,
    growDays: starterGrowDays(litres, gear.maxLitres),
    pitchB,
    keepB,
    keepShare: keepB / endB,
    generation: 0,
  };
}

/** Fresh wort for slurry some hours before it is pitched: it wakes up, and no growth is counted. */
export function vitalityStart(
  batchL: number,
  s: Settings,
): { hoursBefore: number; litres: number; extractG: number } {
  const litres = batchL * s.vitalityShare;
  return { hoursBefore: s.vitalityHours, litres, extractG: extractG(litres, s) };
}

export type FreshPitch = { packs: number; starterLitres: number; cost: number };

/**
 * Every way to meet a need from fresh packs, cheapest first: enough packs, or fewer and one starter.
 * Costs in the house's currency. Dry yeast and houses without a vessel: packs alone.
 */
export function freshPitches(
  want: { needB: number; packViableB: number; packPrice: number; dry: boolean },
  gear: StarterGear & { vessels: number },
  s: Settings,
): FreshPitch[] {
  const enough = Math.ceil(want.needB / want.packViableB - 1e-9);
  const ways: FreshPitch[] = [{ packs: enough, starterLitres: 0, cost: enough * want.packPrice }];
  if (!want.dry && gear.vessels > 0)
    for (let packs = 1; packs < enough; packs++) {
      const litres = starterLitres(packs * want.packViableB, want.needB, gear, s);
      if (!Number.isFinite(litres)) continue;
      const cost =
        packs * want.packPrice + litres * s.starterWortPerL + s.starterMinutes * s.pricePerMinute;
      ways.push({ packs, starterLitres: litres, cost });
    }
  return ways.sort((a, b) => a.cost - b.cost || a.packs - b.packs);
}
