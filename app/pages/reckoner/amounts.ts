// Amounts of a question between what is written on the page, in the units that were chosen, and what the server takes.
import { platoFromSg, sgFromPlato } from '../../../planner/science/gravity.ts';
import {
  celsiusFromFahrenheit,
  ebcFromSrm,
  fahrenheitFromCelsius,
  LITRES_PER_US_GAL,
  srmFromEbc,
} from '../../../planner/science/units.ts';
import type { Units } from '../../parts/units.ts';
import type { AskedField, Given } from '../../queries/questions.ts';

/** A way between two units, and how many digits after the point are worth showing. */
type Way = { unit: string; to: (value: number) => number; from: (value: number) => number };

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

/** The server's unit of a field; '' where it has none. */
export const unitOf = (field: AskedField): string =>
  field.kind === 'gravity' ? 'SG' : (field.unit ?? '');

/** Four figures are more than any of these is known to; gravities keep their three places. */
const text = (value: number, unit: string): string =>
  unit === 'SG' ? value.toFixed(3) : String(Number(value.toPrecision(4)));

/** What stands in a field before anything is written. */
export function firstText(field: AskedField, units: Units): string {
  if (field.kind === 'yesNo') return field.fallback === true ? 'yes' : 'no';
  if (field.kind === 'choice') return String(field.fallback ?? field.options[0] ?? '');
  if (typeof field.fallback !== 'number') return '';
  const way = wayOf(unitOf(field), units);
  return text(way.to(field.fallback), way.unit);
}

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)$/;

/** The text of a field in other units; what is no number stays as it is. */
export function rewritten(written: string, field: AskedField, from: Units, to: Units): string {
  if (!NUMBER.test(written.trim())) return written;
  const unit = unitOf(field);
  const before = wayOf(unit, from);
  const after = wayOf(unit, to);
  if (before.unit === after.unit) return written;
  return text(after.to(before.from(Number(written))), after.unit);
}

/** What one field sends; undefined where nothing was written. What is no number goes as text. */
function sentValue(written: string, field: AskedField, units: Units): Given[string] | undefined {
  const trimmed = written.trim();
  if (field.kind === 'yesNo') return trimmed === 'yes';
  if (trimmed === '') return undefined;
  if (field.kind === 'choice') return trimmed;
  const number = (one: string) => (NUMBER.test(one) ? Number(one) : one);
  if (field.kind === 'counts') return trimmed.split(/[\s,;]+/).map(number);
  const plain = number(trimmed);
  return typeof plain === 'number' ? wayOf(unitOf(field), units).from(plain) : plain;
}

/** The body of a question from what is written in its form. */
export function givenOf(
  fields: readonly AskedField[],
  texts: Readonly<Record<string, string>>,
  units: Units,
): Given {
  const given: Given = {};
  for (const field of fields) {
    const value = sentValue(texts[field.name] ?? '', field, units);
    if (value !== undefined) given[field.name] = value;
  }
  return given;
}

/** A number for people: three figures, thousands apart, as the server writes it. */
export function plain(value: number): string {
  if (Math.abs(value) >= 100) return Math.round(value).toLocaleString('en');
  return String(Number(value.toPrecision(3)));
}

/** A figure with its unit as it is read. A difference of temperatures does not occur. */
export function figureText(value: number, unit: string, units: Units): string {
  if (unit === 'share') return `${plain(value * 100)}\u00a0%`;
  if (unit === 'SG') return value.toFixed(4);
  const way = wayOf(unit, units);
  return `${plain(way.to(value))}\u00a0${way.unit}`;
}

/** A sentence of the server with its amounts in the units that were chosen. */
export function inUnits(sentence: string, units: Units): string {
  return sentence.replace(
    /([-+]?\d[\d,]*(?:\.\d+)?) (L|mL|EBC|°C)(?![\p{L}\p{N}/])/gu,
    (whole: string, digits: string, unit: string) => {
      const way = wayOf(unit, units);
      if (way.unit === unit) return whole;
      const value = way.to(Number(digits.replaceAll(',', '')));
      return `${digits.startsWith('+') && value > 0 ? '+' : ''}${plain(value)}\u00a0${way.unit}`;
    },
  );
}
