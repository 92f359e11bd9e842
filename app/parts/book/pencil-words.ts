// Places and edits of the house as a person reads them. Pure.
import type { Units } from '../units.ts';
import type { ListName } from './book.ts';
import { valueWords } from './cells.ts';
import type { Difference } from './differences.ts';
import { FIELDS, type FieldSpec } from './fields.ts';
import { headSpec } from './head-fields.ts';

export type Reader = { units: Units; currency: string };

const LIST_WORD: Readonly<Record<ListName, string>> = {
  tanks: 'Tank',
  yeasts: 'Yeast',
  jars: 'Jar',
  brews: 'Brew',
  counts: 'A count',
};

export function specOf({ list, field }: Pick<Difference, 'list' | 'field'>): FieldSpec | null {
  if (field === null) return null;
  if (list === null) return headSpec(field);
  const specs: readonly FieldSpec[] = list === 'counts' ? [] : FIELDS[list];
  return specs.find((spec) => spec.field === field) ?? null;
}

/** 'OG of Heron', 'Brew Heron', 'Cold store, temperature' */
export function placeWords(one: Difference): string {
  const label = specOf(one)?.label ?? one.field ?? '';
  if (one.list === null) return label;
  if (one.list === 'counts') return 'A count of yeast';
  return one.field === null ? `${LIST_WORD[one.list]} ${one.name}` : `${label} of ${one.name}`;
}

/** A value of a place, as it is read. */
export function sideWords(one: Difference, value: unknown, { units, currency }: Reader): string {
  if (one.field !== null) return valueWords(specOf(one), value, units, currency);
  return value === null ? 'not there' : 'there';
}

/** What an edit did: 'OG of Heron: 1.048, was 1.050' */
export function editWords(one: Difference, reader: Reader): string {
  if (one.field === null) {
    return `${placeWords(one)} ${one.before === null ? 'is new' : 'is removed'}`;
  }
  const after = sideWords(one, one.after, reader);
  return `${placeWords(one)}: ${after}, was ${sideWords(one, one.before, reader)}`;
}
