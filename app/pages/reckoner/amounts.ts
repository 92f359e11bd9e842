// Amounts of a question between what is written on the page, in the units that were chosen, and what the server takes.
import type { Units } from '../../parts/units.ts';
import { amountText as text, wayOf } from '../../parts/ways.ts';
import type { AskedField, Given } from '../../queries/questions.ts';

/** The server's unit of a field; '' where it has none. */
export const unitOf = (field: AskedField): string =>
  field.kind === 'gravity' ? 'SG' : (field.unit ?? '');

/** What stands in a field before anything is written. */
export function firstText(field: AskedField, units: Units): string {
  if (field.kind === 'yesNo') return field.fallback === true ? 'yes' : 'no';
  if (field.kind === 'choice') return String(field.fallback ?? field.options[0] ?? '');
  if (typeof field.fallback !== 'number') return '';
  const way = wayOf(unitOf(field), units);
  return text(way.to(field.fallback), way.unit);
}

const NUMBER = /^[-+]?(\d+(?:\.\d*)?|\.\d+)$/;

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
    /((?:[-+]|(?<![\d,]))\d[\d,]*(?:\.\d+)?) (L|mL|EBC|°C)(?![\p{L}\p{N}/])/gu,
    (whole: string, digits: string, unit: string) => {
      const way = wayOf(unit, units);
      if (way.unit === unit) return whole;
      const value = way.to(Number(digits.replaceAll(',', '')));
      return `${digits.startsWith('+') && value > 0 ? '+' : ''}${plain(value)}\u00a0${way.unit}`;
    },
  );
}
