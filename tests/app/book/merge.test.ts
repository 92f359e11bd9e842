// Edits in the book, and two edits of the same house laid over each other: nothing is lost, nothing overwritten unseen.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addRows,
  type Book,
  bringRows,
  documentOf,
  duplicateRow,
  isTouched,
  openBook,
  removeRow,
  writeCell,
  writeHead,
} from '../../../app/parts/book/book.ts';
import { mergedBook, mergeOf, pencilled } from '../../../app/parts/book/merge.ts';
import type { House } from '../../../planner/index.ts';
import { aBrew, aHouse } from '../../builders/plan.ts';

const base: House = aHouse({
  brews: [aBrew({ brew: 'A', og: 1.05 }), aBrew({ brew: 'B' }), aBrew({ brew: 'C' })],
});
const book = openBook(base, 4);
const brews = (house: House, change: (rows: House['brews']) => House['brews']): House => ({
  ...house,
  brews: change(house.brews),
});
const names = (of: Book) => (documentOf(of).brews as { brew: string }[]).map(({ brew }) => brew);

describe('the book', () => {
  it('is untouched until something is written, and again when it is written back', () => {
    expect(isTouched(book)).toBe(false);
    expect(documentOf(book)).toEqual(base);
    const once = writeCell(book, 'brews', 0, 'og', 1.06);
    expect(isTouched(once)).toBe(true);
    expect(isTouched(writeCell(once, 'brews', 0, 'og', 1.05))).toBe(false);
  });

  it('duplicates below, under a name of its own', () => {
    const twice = duplicateRow(duplicateRow(book, 'brews', 0), 'brews', 0);
    expect(names(twice)).toEqual(['A', 'A 3', 'A 2', 'B', 'C']);
  });

  it('keeps what is half written as it stands', () => {
    const half = writeCell(book, 'brews', 1, 'og', '1.0x');
    expect((documentOf(half).brews as { og: unknown }[])[1]?.og).toBe('1.0x');
  });

  it('brings rows beside or in the place of what is there', () => {
    const rows = [aBrew({ brew: 'B', ibu: 99 }), aBrew({ brew: 'D' })];
    expect(names(bringRows(book, 'brews', rows, 'add'))).toEqual(['A', 'B', 'C', 'D']);
    const replaced = bringRows(book, 'brews', rows, 'replace');
    expect(names(replaced)).toEqual(['B', 'D']);
    // the row that stays is the same row: one field differs
    expect(pencilled(replaced).map(({ key }) => key)).toEqual([
      'brews[A]',
      'brews[B].ibu',
      'brews[C]',
      'brews[D]',
    ]);
  });

  it('takes a key out of the rules', () => {
    const set = writeHead(book, ['rules', 'maxGeneration'], 3);
    expect(pencilled(set).map(({ key }) => key)).toEqual(['rules.maxGeneration']);
    expect(isTouched(writeHead(set, ['rules', 'maxGeneration'], undefined))).toBe(false);
  });
});

describe('two edits of one house', () => {
  it('in different places both stand', () => {
    const mine = writeCell(writeHead(book, ['name'], 'Mine'), 'brews', 0, 'ibu', 77);
    const theirs = brews({ ...base, deliveryCost: 3 }, ([a, ...rest]) => [
      { ...(a as House['brews'][number]), og: 1.066 },
      ...rest,
    ]);
    expect(mergeOf(mine, theirs).clashes).toEqual([]);
    const merged = mergedBook(mine, theirs, 5, {});
    const document = documentOf(merged);
    expect(document).toMatchObject({ name: 'Mine', deliveryCost: 3 });
    expect(document.brews).toMatchObject([{ brew: 'A', ibu: 77, og: 1.066 }, {}, {}]);
    expect(merged.revision).toBe(5);
  });

  it('in one place clash, and the side that is chosen stands', () => {
    const mine = writeCell(book, 'brews', 0, 'og', 1.04);
    const theirs = brews(base, (rows) => rows.map((row) => ({ ...row, og: 1.06 })));
    const { clashes } = mergeOf(mine, theirs);
    expect(clashes).toMatchObject([{ key: 'brews[A].og', before: 1.05, mine: 1.04, theirs: 1.06 }]);
    const og = (side: 'mine' | 'theirs') =>
      (
        documentOf(mergedBook(mine, theirs, 5, { 'brews[A].og': side })).brews as { og: number }[]
      ).map((row) => row.og);
    expect(og('mine')).toEqual([1.04, 1.06, 1.06]);
    expect(og('theirs')).toEqual([1.06, 1.06, 1.06]);
  });

  it('of the same value do not clash', () => {
    const mine = writeCell(book, 'brews', 0, 'og', 1.06);
    const theirs = brews(base, ([a, ...rest]) => [
      { ...(a as House['brews'][number]), og: 1.06 },
      ...rest,
    ]);
    expect(mergeOf(mine, theirs).clashes).toEqual([]);
    expect(isTouched(mergedBook(mine, theirs, 5, {}))).toBe(false);
  });

  it('clash where one removes the row in which the other wrote', () => {
    const theirs = brews(base, (rows) => rows.slice(1));
    const wrote = writeCell(book, 'brews', 0, 'og', 1.04);
    expect(mergeOf(wrote, theirs).clashes.map(({ key }) => key)).toEqual(['brews[A].og']);
    expect(names(mergedBook(wrote, theirs, 5, {}))).toEqual(['B', 'C', 'A']);
    expect(names(mergedBook(wrote, theirs, 5, { 'brews[A].og': 'theirs' }))).toEqual(['B', 'C']);
    const removed = removeRow(book, 'brews', 0);
    const written = brews(base, (rows) => rows.map((row) => ({ ...row, ibu: 9 })));
    expect(mergeOf(removed, written).clashes.map(({ key }) => key)).toEqual(['brews[A]']);
    expect(names(mergedBook(removed, written, 5, {}))).toEqual(['B', 'C']);
    expect(names(mergedBook(removed, written, 5, { 'brews[A]': 'theirs' }))).toEqual([
      'A',
      'B',
      'C',
    ]);
  });

  it('keep a renamed row one row, and rows that are new on either side', () => {
    const mine = addRows(writeCell(book, 'brews', 1, 'brew', 'B2'), 'brews', [
      aBrew({ brew: 'M' }),
    ]);
    const theirs = brews(base, (rows) => [
      ...rows.map((row) => (row.brew === 'B' ? { ...row, ibu: 88 } : row)),
      aBrew({ brew: 'T' }),
    ]);
    const merged = mergedBook(mine, theirs, 5, {});
    expect(names(merged)).toEqual(['A', 'B2', 'C', 'T', 'M']);
    expect(documentOf(merged).brews).toMatchObject([{}, { brew: 'B2', ibu: 88 }, {}, {}, {}]);
  });

  it('never lose an edit that does not clash (any edits of any fields)', () => {
    const field = fc.constantFrom('og', 'ibu', 'ebc', 'volumeL', 'style');
    const edit = fc.record({ row: fc.integer({ min: 0, max: 2 }), field, value: fc.integer() });
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 6 }), fc.array(edit, { maxLength: 6 }), (a, b) => {
        const write = (edits: typeof a) =>
          edits.reduce((of, one) => writeCell(of, 'brews', one.row, one.field, one.value), book);
        const [mine, theirs] = [write(a), documentOf(write(b)) as unknown as House];
        const { clashes, theirs: other } = mergeOf(mine, theirs);
        const clashing = new Set(clashes.map(({ key }) => key));
        const merged = new Map(
          pencilled({ ...mergedBook(mine, theirs, 5, {}), base }).map((one) => [
            one.key,
            one.after,
          ]),
        );
        for (const one of pencilled(mine)) expect(merged.get(one.key)).toEqual(one.after);
        for (const one of other)
          if (!clashing.has(one.key)) expect(merged.get(one.key)).toEqual(one.after);
      }),
    );
  });
});
