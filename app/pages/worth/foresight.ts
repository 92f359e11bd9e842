// Prediction against what happened as places on a scale: figures of any size beside each other. Pure.
import type { Hindsight, Lag, Outcome } from '../../../planner/index.ts';

export type Drawn = 'settledMl' | 'viability' | 'millionPerMl';

export const DRAWN: readonly { figure: Drawn; title: string; unit: string }[] = [
  { figure: 'settledMl', title: 'What harvests gave', unit: 'mL' },
  { figure: 'viability', title: 'Share alive, as counted', unit: '%' },
  { figure: 'millionPerMl', title: 'Cells in a mL of slurry', unit: 'million' },
];

/** Outcomes of one figure that had an interval: strain by strain, oldest first within each. */
export function byStrain({ outcomes }: Pick<Hindsight, 'outcomes'>, figure: Drawn): Outcome[] {
  return strainByStrain(outcomes.filter((one) => one.figure === figure && one.within !== null));
}

/** How long beers took to foam: strain by strain, by generation, oldest first within each. */
export const lagsByStrain = ({ lags }: Pick<Hindsight, 'lags'>): Lag[] =>
  strainByStrain([...lags].sort((a, b) => a.generation - b.generation));

function strainByStrain<One extends { yeast: string }>(all: readonly One[]): One[] {
  const strains = [...new Set(all.map(({ yeast }) => yeast))];
  return strains.flatMap((yeast) => all.filter((one) => one.yeast === yeast));
}

/** One of them in a breath; also its name for a screen reader. */
export function lagWords({ brew, yeast, generation, viability, hours }: Lag): string {
  const alive =
    viability === null ? '' : `, ${figureWords('viability', viability)} alive by the plan`;
  return `${brew}: ${hours}\u00a0hours after ${yeast} of generation ${generation}${alive}`;
}

/** The widest that is drawn: four times the likely figure, or a quarter of it. */
const MOST_TIMES = 4;

/**
 * Where a figure stands between the foot (0) and the top (1) of its picture. Shares stand as they are; amounts by how many
 * times the likely one they are, each doubling the same way up, held at a quarter and four times.
 */
export function heightOf(value: number, outcome: Pick<Outcome, 'figure' | 'likely'>): number {
  if (outcome.figure === 'viability') return Math.min(1, Math.max(0, value));
  const times = outcome.likely > 0 ? value / outcome.likely : 1;
  const held = Math.min(MOST_TIMES, Math.max(1 / MOST_TIMES, times));
  return Math.log(held) / Math.log(MOST_TIMES) / 2 + 0.5;
}

/** Lines across the picture, with what stands beside them. */
export function rulesOf(figure: Drawn): { height: number; says: string }[] {
  if (figure === 'viability') {
    return [0, 0.5, 1].map((height) => ({ height, says: `${height * 100}\u00a0%` }));
  }
  return [1 / 4, 1, 4].map((times) => ({
    height: heightOf(times, { figure, likely: 1 }),
    says: times === 1 ? 'likely' : times < 1 ? '¼' : '4×',
  }));
}

/** One figure in words. */
export function figureWords(figure: Outcome['figure'], value: number): string {
  if (figure === 'viability') return `${Math.round(value * 100)}\u00a0%`;
  if (figure === 'og' || figure === 'fg') return value.toFixed(3);
  const unit = figure === 'settledMl' ? 'mL' : 'million';
  return `${Math.round(value).toLocaleString('en-GB')}\u00a0${unit}`;
}

/** What it is about: 'jar S14', 'Heron'. */
export const ofWords = ({ of }: Outcome): string => (of.kind === 'jar' ? `jar ${of.jar}` : of.brew);

/** One outcome, in a breath; also its name for a screen reader. */
export function outcomeWords(outcome: Outcome): string {
  const { figure, low, high, likely, happened, within } = outcome;
  const said = (value: number) => figureWords(figure, value);
  const expected =
    low === null || high === null
      ? `planned ${said(likely)}`
      : `expected ${said(low)} to ${said(high)}`;
  const verdict = within === null ? '' : within ? ', within' : ', outside';
  return `${ofWords(outcome)}: ${said(happened)}, ${expected}${verdict}`;
}
