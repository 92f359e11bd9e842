// Writing: all or nothing, one after the other, and what happened is never rewritten.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { readHouse, readRevision, saveHouse } from '../../../api/store/house.ts';
import { addPlan, adopt, readPlan } from '../../../api/store/plans.ts';
import { addEntry, readRecord } from '../../../api/store/record.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aHouse, aPlan } from '../../builders/plan.ts';
import { entryOf, readBack } from '../../builders/record.ts';

let open: OpenApp;
beforeEach(async () => {
  open = await openApp();
});
afterEach(() => open.close());

const at = new Date('2027-01-05T10:00:00Z');

test('what throws half-way takes everything back', async () => {
  const { store } = open.parts;
  await expect(
    store.write(async (tx) => {
      await addEntry(tx, 1, at, entryOf(1));
      await saveHouse(tx, { house: aHouse(), demo: false, at, startOver: false });
      throw new Error('power cut');
    }),
  ).rejects.toThrow('power cut');
  expect(await readRecord(store.db, 1)).toEqual([]);
  expect((await readHouse(store.db))?.revision).toBe(1);
  // and the next writer finds the door open
  await store.write((tx) => addEntry(tx, 1, at, entryOf(1)));
  expect(await readRecord(store.db, 1)).toHaveLength(1);
});

test('twenty writers at once all land, one after the other', async () => {
  const { store } = open.parts;
  await Promise.all(
    Array.from({ length: 20 }, () =>
      store.write(async (tx) => {
        const seen = (await readRecord(tx, 1)).length;
        await new Promise((resolve) => setTimeout(resolve, 1));
        await addEntry(tx, 1, at, entryOf(seen + 1));
      }),
    ),
  );
  const numbers = (await readRecord(store.db, 1)).map(({ entry }) => entry.no);
  expect(numbers).toEqual(Array.from({ length: 20 }, (_, index) => index + 1));
});

test('a reader sees nothing of a write that is under way', async () => {
  const { store } = open.parts;
  let seenMeanwhile = -1;
  await store.write(async (tx) => {
    await addEntry(tx, 1, at, entryOf(1));
    seenMeanwhile = (await readRecord(store.db, 1)).length;
  });
  expect(seenMeanwhile).toBe(0);
  expect(await readRecord(store.db, 1)).toHaveLength(1);
});

describe('the record', () => {
  test('refuses to be changed or cleared, whoever tries', async () => {
    const { store } = open.parts;
    await store.write((tx) => addEntry(tx, 1, at, entryOf(1)));
    await expect(readBack(store.db, "UPDATE record SET entry = '{}'")).rejects.toThrow();
    await expect(readBack(store.db, 'DELETE FROM record')).rejects.toThrow();
    expect(await readRecord(store.db, 1)).toHaveLength(1);
  });

  test('takes each number once', async () => {
    const { store } = open.parts;
    await store.write((tx) => addEntry(tx, 1, at, entryOf(1)));
    await expect(store.write((tx) => addEntry(tx, 1, at, entryOf(1)))).rejects.toThrow();
    // What the database refused does not spoil what is written after it.
    for (const no of [2, 3, 4, 5, 6, 7]) {
      await store.write((tx) => addEntry(tx, 1, at, entryOf(no)));
    }
    expect(await readRecord(store.db, 1)).toHaveLength(7);
  });
});

describe('the house', () => {
  test('keeps its earlier revisions', async () => {
    const { store } = open.parts;
    await store.write((tx) =>
      saveHouse(tx, {
        house: aHouse({ name: 'Slate Yard II' }),
        demo: false,
        at,
        startOver: false,
      }),
    );
    expect((await readHouse(store.db))?.house.name).toBe('Slate Yard II');
    expect((await readRevision(store.db, 1))?.house.name).toBe('Slate Yard');
    expect(await readRevision(store.db, 99)).toBeNull();
  });

  test('begins a new season with a record of its own', async () => {
    const { store } = open.parts;
    await store.write((tx) => addEntry(tx, 1, at, entryOf(1)));
    const next = await store.write((tx) =>
      saveHouse(tx, { house: aHouse(), demo: false, at, startOver: true }),
    );
    expect(next.season).toBe(2);
    expect(await readRecord(store.db, 2)).toEqual([]);
    expect(await readRecord(store.db, 1)).toHaveLength(1);
  });
});

describe('plans', () => {
  const made = (id: string) => ({
    id,
    season: 1,
    madeAt: at.toISOString(),
    houseRevision: 1,
    recordNo: 0,
    plan: aPlan({ seed: 7 }),
    changes: null,
  });
  const [first, second] = [crypto.randomUUID(), crypto.randomUUID()];

  test('a newer draft takes the place of an older one', async () => {
    const { store } = open.parts;
    await store.write((tx) => addPlan(tx, made(first), 'draft'));
    await store.write((tx) => addPlan(tx, made(second), 'draft'));
    expect((await readPlan(store.db, 'draft'))?.id).toBe(second);
  });

  test('adopting puts exactly one plan in force', async () => {
    const { store } = open.parts;
    await store.write((tx) => addPlan(tx, made(first), 'draft'));
    expect(await store.write((tx) => adopt(tx, second, store.now()))).toBe(false);
    expect(await store.write((tx) => adopt(tx, first, store.now()))).toBe(true);
    expect((await readPlan(store.db, 'in-force'))?.id).toBe(first);
    expect(await readPlan(store.db, 'draft')).toBeNull();
  });
});
