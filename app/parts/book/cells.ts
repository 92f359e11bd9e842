// One value of the book between what is stored and what is written in a cell, in the units that were chosen. Pure.
import type { Units } from '../units.ts';
import { amountText, wayOf } from '../ways.ts';
import type { FieldSpec } from './fields.ts';

const NUMBER = /^[-+]?(\d+(?:\.\d*)?|\.\d+)(e[-+]?\d+)?$/i;
/** Digits that are kept of an amount that was written in another unit. */
const KEPT_DIGITS = 5;

/** Joins names by |; one that is part of a name has a \ before it, as in the season's files. */
export const joined = (parts: readonly unknown[]): string =>
  parts.map((part) => String(part).replace(/[\\|]/g, '\\$&')).join(' | ');

/** Splits at |; blank parts are left out. */
export function split(text: string): string[] {
  const parts = [...text.matchAll(/((?:\\[\\|]|[^|])*)(?:\||$)/g)].map(([, part = '']) =>
    part.replace(/\\([\\|])/g, '$1').trim(),
  );
  return parts.filter((part) => part !== '');
}

type Stretch = { from: string; to: string };
const isStretch = (value: unknown): value is Stretch =>
  typeof value === 'object' && value !== null && 'from' in value && 'to' in value;

/** The text of a value in its cell. */
export function cellText(spec: FieldSpec, value: unknown, units: Units): string {
  if (value === null || value === undefined) return '';
  if (spec.kind === 'number' && typeof value === 'number') {
    const way = wayOf(spec.unit ?? '', units);
    if (way.unit === spec.unit && spec.unit !== 'SG') return String(value);
    if (way.unit === 'SG' && value !== Number(value.toFixed(3))) return String(value);
    return amountText(way.to(value), way.unit);
  }
  if (spec.kind === 'stretches' && Array.isArray(value)) {
    const parts: readonly unknown[] = value;
    return parts.map((one) => (isStretch(one) ? `${one.from}/${one.to}` : String(one))).join(' | ');
  }
  if (Array.isArray(value)) return joined(value);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'object' ? JSON.stringify(value) : String(value);
}

/** The value that a text in a cell means. What cannot be read stays as it is, for the checks to refuse. */
export function cellValue(spec: FieldSpec, text: string, units: Units): unknown {
  const trimmed = text.trim();
  switch (spec.kind) {
    case 'words':
    case 'strains':
      return split(text);
    case 'stretches':
      return split(text).map((part) => {
        const [from = '', to = from, ...more] = part.split('/').map((day) => day.trim());
        return more.length > 0 ? part : { from, to };
      });
    case 'yesno':
      return trimmed === 'yes';
    case 'maybe':
      return trimmed === '' ? null : trimmed === 'yes';
    case 'style':
      return text;
    case 'number': {
      if (trimmed === '') return spec.blank === undefined ? '' : null;
      if (!NUMBER.test(trimmed)) return trimmed;
      const way = wayOf(spec.unit ?? '', units);
      const value = way.from(Number(trimmed));
      if (way.unit === spec.unit) return value;
      return Number(value.toPrecision(KEPT_DIGITS));
    }
    default:
      return trimmed === '' && spec.blank !== undefined ? null : text;
  }
}

/** The unit of a field as it is read now; '' where it needs none. */
export function unitOf(spec: FieldSpec, units: Units, currency: string): string {
  if (spec.unit === 'currency') return currency;
  return wayOf(spec.unit ?? '', units).unit;
}

/** A value in a sentence: with its unit, and a word where there is nothing. */
export function valueWords(
  spec: FieldSpec | null,
  value: unknown,
  units: Units,
  currency: string,
): string {
  if (value === null || value === undefined || value === '') return spec?.blank ?? 'nothing';
  if (spec === null) {
    if (Array.isArray(value)) return value.length === 0 ? 'none' : value.map(String).join(', ');
    return typeof value === 'object' ? JSON.stringify(value) : String(value);
  }
  if (Array.isArray(value) && value.length === 0) return spec.blank ?? 'none';
  const unit = unitOf(spec, units, currency);
  return `${cellText(spec, value, units)}${unit === '' || unit === 'SG' ? '' : `\u00a0${unit}`}`;
}
