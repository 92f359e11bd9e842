// Entries that left the calendar travel along in a copy of the house.
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aPlan } from '../../builders/plan.ts';

let open: OpenApp;
beforeEach(async () => {
  open = await openApp();
});
afterEach(() => open.close());

const exported = async () => (await open.ask('GET', '/api/backups/house.json')).text;

test('what left the calendar is in it, and comes back under its UID elsewhere too', async () => {
  const read = async () =>
    JSON.parse(await exported()).calendar as {
      uid: string;
      taskKey: string;
      sequence: number;
      goneAt: string | null;
    }[];
  const before = await read();
  await open.putInForce(aPlan({ brews: [], harvests: [], orders: [] }));
  const empty = await read();
  expect(empty.filter(({ goneAt }) => goneAt !== null).length).toBeGreaterThan(5);
  const document = JSON.parse(await exported());
  const other = await openApp({ house: null });
  try {
    const body = { document, apply: true, addresses: true };
    await other.ask('POST', '/api/backups/restore', body, { 'If-Match': '0' });
    await other.putInForce(aPlan());
    const { text } = await other.ask('GET', '/api/tasks');
    const { tasks } = JSON.parse(text) as { tasks: { key: string; uid: string }[] };
    expect(tasks.length).toBeGreaterThan(5);
    for (const { key, uid } of tasks) {
      expect(uid).toBe(before.find(({ taskKey }) => taskKey === key)?.uid);
    }
  } finally {
    await other.close();
  }
});

test("another house's copy takes up none of the UIDs that were here, though its brews have the same names", async () => {
  const uidsOf = async (app: OpenApp) => {
    const { text } = await app.ask('GET', '/api/tasks');
    return (JSON.parse(text) as { tasks: { uid: string }[] }).tasks.map(({ uid }) => uid);
  };
  const here = await uidsOf(open);
  expect(here.length).toBeGreaterThan(5);
  const other = await openApp();
  try {
    const document = JSON.parse((await other.ask('GET', '/api/backups/house.json')).text) as {
      house: { revision: number };
      calendar: { taskKey: string }[];
    };
    // of the other house only one entry, so that the rest is laid out anew here
    document.calendar = document.calendar.slice(0, 1);
    const body = { document, apply: true, addresses: true };
    const answer = await open.ask('POST', '/api/backups/restore', body, { 'If-Match': '1' });
    expect(answer.status).toBe(200);
    await open.putInForce(aPlan());
    const now = await uidsOf(open);
    expect(now.length).toBe(here.length);
    expect(now.filter((uid) => here.includes(uid))).toEqual([]);
  } finally {
    await other.close();
  }
});
