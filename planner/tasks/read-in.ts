// A task in the units that somebody reads in: the plan stays metric, its sentences are turned figure by figure.
import type { Task } from '../model/index.ts';
import { platoFromSg } from '../science/gravity.ts';
import { rounded } from './words.ts';

export type ReadingUnits = {
  /** Volumes, weights and temperatures: mL, L, g, °C; or US fl oz, gal, oz, °F. */
  volume: 'metric' | 'us';
  gravity: 'sg' | 'plato';
};

export const METRIC: ReadingUnits = { volume: 'metric', gravity: 'sg' };

/** US liquid gallon and fluid ounce, exact by definition (NIST Handbook 44, appendix C). */
const LITRES_PER_GALLON = 3.785411784;
const ML_PER_FLUID_OUNCE = 29.5735295625;
/** Avoirdupois ounce, exact by definition (same source). */
const GRAMS_PER_OUNCE = 28.349523125;

type Turn = { unit: string; value: (metric: number) => number };

/** So that a figure keeps about the precision that it had. */
const near = (value: number): number => rounded(value, value >= 100 ? 0 : value >= 1 ? 1 : 2);

const US: Readonly<Record<string, Turn>> = {
  mL: { unit: 'fl oz', value: (ml) => near(ml / ML_PER_FLUID_OUNCE) },
  L: { unit: 'gal', value: (litres) => rounded(litres / LITRES_PER_GALLON, 2) },
  g: { unit: 'oz', value: (grams) => near(grams / GRAMS_PER_OUNCE) },
  '°C': { unit: '°F', value: (celsius) => Math.round((celsius * 9) / 5 + 32) },
};
const PLATO: Turn = { unit: '°P', value: (sg) => rounded(platoFromSg(sg), 1) };

const FIGURE =
  /(?<![\d.,-])(-?\d+(?:\.\d+)?)(?:(–| to )(-?\d+(?:\.\d+)?))?([ \u00a0])(mL|L|g|°C)(?![\p{L}\d])/gu;
const FIRST_OF_TWO =
  /(?<![\d.,-])(-?\d+(?:\.\d+)?) (mL|L|°C) to (?=-?\d+(?:\.\d+)? (?:mL|L|°C)(?![\p{L}\d]))/gu;
/** Gravities are written with three places, and nothing else is. */
const GRAVITY = /(?<![\d.,])(1\.[01]\d\d)(?![\d\p{L}])/gu;
const GRAVITY_APART = /\bwithin (0\.0\d\d) of\b/g;

function usText(text: string): string {
  return text
    .replace(FIRST_OF_TWO, (_all, figure: string, unit: string) => {
      const turn = US[unit];
      return turn === undefined ? _all : `${turn.value(Number(figure))} ${turn.unit} to `;
    })
    .replace(
      FIGURE,
      (all, low: string, between: string | undefined, high: string, gap: string, unit: string) => {
        const turn = US[unit];
        if (turn === undefined) return all;
        const to = between === undefined ? '' : `${between}${turn.value(Number(high))}`;
        return `${turn.value(Number(low))}${to}${gap}${turn.unit}`;
      },
    )
    .replace(/\bhow many mL\b/g, 'how many fl oz');
}

function platoText(text: string): string {
  return text
    .replace(
      GRAVITY_APART,
      (_all, apart: string) => `within ${PLATO.value(1 + Number(apart))} °P of`,
    )
    .replace(GRAVITY, (_all, sg: string) => `${PLATO.value(Number(sg))} °P`);
}

/** Names are not sentences: a beer called 'Batch 20 L' keeps its name. */
function aroundNames(
  text: string,
  names: readonly string[],
  turn: (part: string) => string,
): string {
  const [name, ...rest] = names;
  if (name === undefined) return turn(text);
  return text
    .split(name)
    .map((part) => aroundNames(part, rest, turn))
    .join(name);
}

/**
 * The same task with every figure in these units.
 * @param names of the house (brews, tanks, yeasts, jars), which are left as they are
 */
export function taskIn(task: Task, units: ReadingUnits, names: readonly string[]): Task {
  if (units.volume === 'metric' && units.gravity === 'sg') return task;
  const kept = [...new Set(names)].filter((name) => /\d/.test(name));
  kept.sort((a, b) => b.length - a.length);
  const turn = (part: string) => {
    const us = units.volume === 'us' ? usText(part) : part;
    return units.gravity === 'plato' ? platoText(us) : us;
  };
  const say = (text: string) => aroundNames(text, kept, turn);
  return {
    ...task,
    title: say(task.title),
    steps: task.steps.map(say),
    amounts: task.amounts.map((amount) => amountIn(amount, units)),
    haveReady: task.haveReady.map(say),
    goodLooksLike: say(task.goodLooksLike),
    why: say(task.why),
    caution: task.caution === null ? null : say(task.caution),
  };
}

function amountIn(amount: Task['amounts'][number], units: ReadingUnits): Task['amounts'][number] {
  const turn =
    amount.unit === 'SG'
      ? units.gravity === 'plato'
        ? PLATO
        : undefined
      : units.volume === 'us'
        ? US[amount.unit]
        : undefined;
  if (turn === undefined) return amount;
  return { ...amount, value: turn.value(amount.value), unit: turn.unit };
}
