// How steady a plan is: many seasons are lived under luck drawn from stated distributions, and what holds is counted.
import type { z } from 'zod';
import {
  type BrewSteadiness,
  type House,
  Luck,
  type Plan,
  type Steadiness,
} from '../model/index.ts';
import { Dice } from './luck.ts';
import { type Ended, Season } from './season.ts';

/** How many seasons are drawn where nobody says otherwise. */
export const SEASONS = 1000;
const TELL_EVERY = 50;

/**
 * Lives the rest of a plan through many seasons of slips, slow beers, weak or small harvests, lost jars and late
 * packs, without planning again, and counts how often each brew keeps its day and its yeast. `luck` replaces the
 * guessed shares. The same plan, seed and number of seasons give the same answer. `watch` is told how many
 * seasons are done, and may stop it by returning true: what is counted is then what was drawn.
 * @throws ZodError where `luck` is out of its bounds
 */
export function steadiness(
  plan: Plan,
  house: House,
  options: { seed?: number; seasons?: number; luck?: z.input<typeof Luck> } = {},
  watch?: (seasonsDone: number, seasons: number) => boolean,
): Steadiness {
  const luck = Luck.parse(options.luck ?? {});
  const seed = options.seed ?? 1;
  const wanted = options.seasons ?? SEASONS;
  const season = new Season(plan, house);
  const dice = new Dice(seed, luck);
  const tallies = season.names.map(newTally);
  let allHeld = 0;
  let seasons = 0;
  for (; seasons < wanted; seasons++) {
    if (seasons % TELL_EVERY === 0 && watch?.(seasons, wanted)) break;
    const lived = season.live(dice);
    let held = true;
    for (const i of season.open) {
      const { daysMoved, ended } = lived[i] ?? { daysMoved: 0, ended: null };
      const tally = tallies[i];
      if (!tally) continue;
      tally.daysMoved += daysMoved;
      if (daysMoved === 0) tally.onDay++;
      if (ended !== null) tally.ended[ended]++;
      if (daysMoved !== 0 || (ended !== null && ended !== 'kept')) held = false;
    }
    if (held) allHeld++;
  }
  const brews = season.open.map((i) =>
    counted(season.names[i] ?? '?', tallies[i] ?? newTally(), seasons),
  );
  const sums = {
    keepsDay: mean(brews.map(({ keepsDay }) => keepsDay)),
    keepsSource: mean(brews.flatMap(({ keepsSource }) => keepsSource ?? [])),
    allHold: seasons === 0 || brews.length === 0 ? null : allHeld / seasons,
  };
  return { seasons, seed, luck, brews, ...sums, says: inWords(seasons, sums) };
}

type Tally = { onDay: number; daysMoved: number; ended: Record<Ended, number> };

const newTally = (): Tally => ({
  onDay: 0,
  daysMoved: 0,
  ended: { kept: 0, late: 0, short: 0, weak: 0, lost: 0, old: 0 },
});

function counted(brew: string, tally: Tally, seasons: number): BrewSteadiness {
  const { kept, ...losses } = tally.ended;
  const pitches = Object.values(tally.ended).reduce((sum, n) => sum + n, 0);
  const worst = Object.entries(losses).sort((a, z) => z[1] - a[1] || (a[0] < z[0] ? -1 : 1))[0];
  return {
    brew,
    keepsDay: seasons === 0 ? 0 : tally.onDay / seasons,
    keepsSource: pitches === 0 ? null : kept / pitches,
    meanDaysMoved: seasons === 0 ? 0 : tally.daysMoved / seasons,
    weakestPoint: worst && worst[1] > 0 ? (worst[0] as BrewSteadiness['weakestPoint']) : null,
  };
}

const mean = (parts: readonly number[]): number | null =>
  parts.length === 0 ? null : parts.reduce((sum, x) => sum + x, 0) / parts.length;

const inTen = (part: number): string => `${Math.round(part * 100)} of 100`;

function inWords(
  seasons: number,
  { keepsDay, keepsSource }: Pick<Steadiness, 'keepsDay' | 'keepsSource'>,
): string {
  if (seasons === 0 || keepsDay === null)
    return 'Nothing is left to come: there is nothing to try.';
  const yeast =
    keepsSource === null ? '' : `, and ${inTen(keepsSource)} re-pitches have their own yeast`;
  return `Tried on ${seasons.toLocaleString('en')} seasons with guessed slips, weak harvests and lost jars, without planning again: ${inTen(keepsDay)} brews keep their day${yeast}.`;
}
