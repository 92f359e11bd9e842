// What the published range of a brew's style says of its gravity, bitterness and colour. Pure; only ever a hint.
import { ebcFromSrm } from '../../../planner/science/units.ts';
import type { Written } from '../../parts/book/book.ts';
import type { Hint } from '../../parts/book/ledger.tsx';
import type { Units } from '../../parts/units.ts';
import { amountText, wayOf } from '../../parts/ways.ts';
import { GUIDELINE, STYLE_RANGES, type StyleRange } from './guideline.ts';

const plain = (text: string) =>
  text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z]+/g, ' ')
    .trim();

const BY_NAME = new Map(STYLE_RANGES.map((range) => [plain(range.style), range]));

/** The range of a style by its name; accents and capitals aside. */
export const rangeOf = (style: string): StyleRange | null => BY_NAME.get(plain(style)) ?? null;

function between([low, high]: readonly [number, number], unit: string, units: Units): string {
  const way = wayOf(unit, units);
  const word = way.unit === 'SG' ? '' : `\u00a0${way.unit}`;
  // a published colour is no finer than a whole EBC
  const text = (value: number) =>
    amountText(way.unit === 'EBC' ? Math.round(value) : way.to(value), way.unit);
  return `${text(low)} to ${text(high)}${word}`;
}

type Judged = { field: string; label: string; unit: string; range: readonly [number, number] };

function judged({ og, ibu, srm }: StyleRange): Judged[] {
  const [pale, dark] = srm;
  return [
    { field: 'og', label: 'OG', unit: 'SG', range: og },
    { field: 'ebc', label: 'colour', unit: 'EBC', range: [ebcFromSrm(pale), ebcFromSrm(dark)] },
    { field: 'ibu', label: 'bitterness', unit: 'IBU', range: ibu },
  ];
}

/** One sentence where a figure lies outside the range of its style; none where all are inside. */
export function styleHints(row: Written, units: Units): Hint[] {
  const range = rangeOf(String(row.style ?? ''));
  if (range === null) return [];
  const outside = judged(range).flatMap(({ field, label, unit, range: [low, high] }) => {
    const value = row[field];
    // half a unit of the last published place is not outside
    const slack = field === 'og' ? 0.0005 : 0.5;
    if (typeof value !== 'number' || (value >= low - slack && value <= high + slack)) return [];
    const way = value < low ? 'below' : 'above';
    return [`its ${label} is ${way} ${between([low, high], unit, units)}`];
  });
  if (outside.length === 0) return [];
  return [
    {
      key: 'style',
      says: `For ${range.style}, ${outside.join('; ')} (${GUIDELINE}). A hint, nothing more.`,
    },
  ];
}

/** The ranges of a style in one line, for the list from which it is picked. */
export function rangeWords(range: StyleRange, units: Units): string {
  return judged(range)
    .map(({ label, unit, range: ends }) => `${label} ${between(ends, unit, units)}`)
    .join(', ');
}
