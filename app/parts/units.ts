// The units that people read in, never broken from their figure: kept in this browser alone; the plan itself stays in litres, °C, SG and EBC.
import { useSyncExternalStore } from 'react';
import { platoFromSg } from '../../planner/science/gravity.ts';

export type Units = {
  volume: 'metric' | 'us';
  gravity: 'sg' | 'plato';
  colour: 'ebc' | 'srm';
};

const KEY = 'barmline.units';
const DEFAULTS: Units = { volume: 'metric', gravity: 'sg', colour: 'ebc' };
/** US liquid gallon and fluid ounce, exact by definition (NIST Handbook 44, appendix C). */
const LITRES_PER_GALLON = 3.785411784;
const ML_PER_FLUID_OUNCE = 29.5735295625;
/** EBC = 25 × A430, SRM = 12.7 × A430 (both by definition). */
const EBC_PER_SRM = 25 / 12.7;

/** What was kept, mended where it is not one of the choices. */
export function readUnits(text: string | null): Units {
  let kept: unknown = null;
  try {
    kept = JSON.parse(text ?? 'null');
  } catch {
    // What stands there is not ours; the defaults hold.
  }
  const given = typeof kept === 'object' && kept !== null ? (kept as Partial<Units>) : {};
  return {
    volume: given.volume === 'us' ? 'us' : DEFAULTS.volume,
    gravity: given.gravity === 'plato' ? 'plato' : DEFAULTS.gravity,
    colour: given.colour === 'srm' ? 'srm' : DEFAULTS.colour,
  };
}

const listeners = new Set<() => void>();
let current: { text: string | null; units: Units } | null = null;

function stored(): string | null {
  try {
    return window.localStorage.getItem(KEY);
  } catch {
    // A browser that keeps nothing (private window, blocked storage) still shows the defaults.
    return current?.text ?? null;
  }
}

function snapshot(): Units {
  const text = stored();
  if (current === null || current.text !== text) current = { text, units: readUnits(text) };
  return current.units;
}

function subscribe(changed: () => void): () => void {
  listeners.add(changed);
  window.addEventListener('storage', changed);
  return () => {
    listeners.delete(changed);
    window.removeEventListener('storage', changed);
  };
}

/** The units chosen in this browser, and how to choose others. */
export function useUnits(): [Units, (units: Units) => void] {
  const units = useSyncExternalStore(subscribe, snapshot);
  return [units, keepUnits];
}

function keepUnits(units: Units): void {
  const text = JSON.stringify(units);
  current = { text, units };
  try {
    window.localStorage.setItem(KEY, text);
  } catch {
    // See stored().
  }
  for (const listener of listeners) listener();
}

function rounded(value: number, digits: number): string {
  return new Intl.NumberFormat('en-GB', { maximumFractionDigits: digits }).format(value);
}

/** Litres, or US gallons. */
export function litres(volumeL: number, units: Units): string {
  if (units.volume === 'us') return `${rounded(volumeL / LITRES_PER_GALLON, 2)}\u00a0gal`;
  return `${rounded(volumeL, 2)}\u00a0L`;
}

/** Millilitres (litres from ten on), or US fluid ounces. */
export function millilitres(ml: number, units: Units): string {
  if (units.volume === 'us') return `${rounded(ml / ML_PER_FLUID_OUNCE, 1)}\u00a0fl\u00a0oz`;
  return ml >= 10_000 ? `${rounded(ml / 1000, 1)}\u00a0L` : `${rounded(ml, 0)}\u00a0mL`;
}

/** Specific gravity as SG with three places, or °P with one. */
export function gravity(sg: number, units: Units): string {
  return units.gravity === 'plato' ? `${platoFromSg(sg).toFixed(1)}\u00a0°P` : sg.toFixed(3);
}

/** Colour, EBC or SRM. */
export function colour(ebc: number, units: Units, digits = 0): string {
  if (units.colour === 'srm') return `${rounded(ebc / EBC_PER_SRM, 1)}\u00a0SRM`;
  return `${rounded(ebc, digits)}\u00a0EBC`;
}

/** Temperature, °C or °F: it goes with the volumes. */
export function temperature(celsius: number, units: Units): string {
  if (units.volume === 'us') return `${rounded((celsius * 9) / 5 + 32, 0)}\u00a0°F`;
  return `${rounded(celsius, 1)}\u00a0°C`;
}
