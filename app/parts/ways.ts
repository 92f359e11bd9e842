// Quantities between the units in which the server speaks and the ones that were chosen to read in.
import { platoFromSg, sgFromPlato } from '../../planner/science/gravity.ts';
import {
  celsiusFromFahrenheit,
  ebcFromSrm,
  fahrenheitFromCelsius,
  LITRES_PER_US_GAL,
  srmFromEbc,
} from '../../planner/science/units.ts';
import type { Units } from './units.ts';

/** A way between two units. */
export type Way = { unit: string; to: (value: number) => number; from: (value: number) => number };

const ML_PER_FLUID_OUNCE = (LITRES_PER_US_GAL * 1000) / 128;
/** Denser than any wort: what is written so is no °P, and is sent as it stands. */
const MOST_PLATO = 45;
const same = (value: number) => value;

/** The unit in which a quantity is read, from the one in which the server speaks. */
export function wayOf(unit: string, units: Units): Way {
  const us = units.volume === 'us';
  if (unit === 'L' && us)
    return { unit: 'gal', to: (v) => v / LITRES_PER_US_GAL, from: (v) => v * LITRES_PER_US_GAL };
  if (unit === 'mL' && us)
    return {
      unit: 'fl\u00a0oz',
      to: (v) => v / ML_PER_FLUID_OUNCE,
      from: (v) => v * ML_PER_FLUID_OUNCE,
    };
  if (unit === '°C' && us)
    return { unit: '°F', to: fahrenheitFromCelsius, from: celsiusFromFahrenheit };
  if (unit === 'EBC' && units.colour === 'srm')
    return { unit: 'SRM', to: srmFromEbc, from: ebcFromSrm };
  if (unit === 'SG' && units.gravity === 'plato')
    return {
      unit: '°P',
      to: platoFromSg,
      from: (v) => (v >= 0 && v <= MOST_PLATO ? sgFromPlato(v) : v),
    };
  return { unit, to: same, from: same };
}

/** Four figures are more than any of these is known to; gravities keep their three places. */
export const amountText = (value: number, unit: string): string =>
  unit === 'SG' ? value.toFixed(3) : String(Number(value.toPrecision(4)));
