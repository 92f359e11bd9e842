// One cell of a CSV file: its text to a value of the house, and back.
import type { CellKind } from './columns.ts';

const NUMBER = /^[+-]?(\d+(?:\.\d*)?|\.\d+)(e[+-]?\d+)?$/i;
const WITH_DECIMAL_COMMA = /^[+-]?\d+,\d+$/;
const YES_NO = new Map([
  ['yes', true],
  ['true', true],
  ['no', false],
  ['false', false],
]);

/** Splits at `|`; a `|` or `\` that belongs to a name has a `\` before it. Blank parts are left out. */
function splitList(text: string): string[] {
  const parts = [''];
  for (let at = 0; at < text.length; at++) {
    const letter = text[at] ?? '';
    const next = text[at + 1];
    if (letter === '\\' && (next === '|' || next === '\\')) {
      parts.push((parts.pop() ?? '') + next);
      at++;
    } else if (letter === '|') {
      parts.push('');
    } else {
      parts.push((parts.pop() ?? '') + letter);
    }
  }
  return parts.map((part) => part.trim()).filter((part) => part !== '');
}

const joinList = (parts: readonly string[]) =>
  parts.map((part) => part.replace(/[\\|]/g, '\\$&')).join('|');

/** `2027-03-01/2027-03-07|2027-05-02`; a single day is its own stretch. */
function readStretches(text: string): unknown {
  return splitList(text).map((part) => {
    const [from = '', to = from, ...more] = part.split('/').map((day) => day.trim());
    return more.length > 0 ? part : { from, to };
  });
}

/** How a spreadsheet knows a formula, after any number of our own marks before it. */
const LIKE_A_FORMULA = /^'*[=+\-@\t\r＝＋－＠]/;

/** A text that a spreadsheet would run or reckon gets a mark before it, so that it stays a text. */
const inert = (text: string) => (LIKE_A_FORMULA.test(text) ? `'${text}` : text);

/** Takes that mark off again. */
const asWritten = (text: string) =>
  text.startsWith("'") && LIKE_A_FORMULA.test(text) ? text.slice(1) : text;

/**
 * The value of a cell for the house's schema; undefined for a blank one. What cannot be read as its
 * kind stays text, so that the schema refuses it and the text is shown as it stands.
 * @param decimalComma whether numbers are written with a decimal comma in this file
 */
export function readCell(cell: string, kind: CellKind, decimalComma: boolean): unknown {
  const text = cell.trim();
  if (text === '') return undefined;
  switch (kind) {
    case 'text':
      return asWritten(text);
    case 'number':
    case 'gravity': {
      const plain = decimalComma && WITH_DECIMAL_COMMA.test(text) ? text.replace(',', '.') : text;
      return NUMBER.test(plain) ? Number(plain) : text;
    }
    case 'yesno':
    case 'flag':
      return YES_NO.get(text.toLowerCase()) ?? text;
    case 'list':
      return splitList(asWritten(text));
    case 'stretches':
      return readStretches(text);
  }
}

type Stretch = { from: string; to: string };

const isStretch = (value: unknown): value is Stretch =>
  typeof value === 'object' && value !== null && 'from' in value && 'to' in value;

/** The text of a value; blank for null and for an empty list. */
export function writeCell(value: unknown, kind: CellKind): string {
  if (value === null || value === undefined) return '';
  if (Array.isArray(value)) {
    const parts: readonly unknown[] = value;
    return kind === 'stretches'
      ? parts
          .filter(isStretch)
          .map(({ from, to }) => `${from}/${to}`)
          .join('|')
      : inert(joinList(parts.map(String)));
  }
  if (typeof value === 'boolean') return value ? 'yes' : kind === 'flag' ? '' : 'no';
  if (kind === 'gravity' && typeof value === 'number') {
    const threePlaces = value.toFixed(3);
    return Number(threePlaces) === value ? threePlaces : String(value);
  }
  return typeof value === 'string' ? inert(value) : String(value);
}
