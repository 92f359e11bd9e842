// A season from the first plan to a slipped brew day, over HTTP, with the real planner in its thread.
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { z } from 'zod';
import * as shape from '../../../api/routes/shapes.ts';
import type { News, TaskKind } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { readCalendar } from '../../builders/calendar.ts';
import { aHouse, daysAfter } from '../../builders/plan.ts';
import { bundledWorker } from '../../builders/worker.ts';

let workerUrl: URL;
beforeAll(async () => {
  workerUrl = await bundledWorker();
});

let open: OpenApp;
beforeEach(async () => {
  open = await openApp({ plan: null, workerUrl });
});
afterEach(() => open.close());

async function ok<S extends z.ZodType>(
  schema: S,
  method: string,
  path: string,
  body?: unknown,
  headers?: Record<string, string>,
): Promise<z.output<S>> {
  const answer = await open.ask(method, path, body, headers);
  expect(answer.status, answer.text).toBeLessThan(300);
  return schema.parse(answer.json);
}

const getPlan = () => ok(shape.PlanAnswer, 'GET', '/api/plan');
const getDraft = () => ok(shape.DraftAnswer, 'GET', '/api/draft');

async function planned(request: object = { steps: 300 }) {
  const { run } = await ok(shape.RunAnswer, 'POST', '/api/runs', request);
  return open.parts.runs.ended(run.id);
}

async function told(news: z.input<typeof News>) {
  const answer = await ok(shape.NewsAnswer, 'POST', '/api/news', news);
  const run = answer.run === null ? null : await open.parts.runs.ended(answer.run.id);
  return { ...answer, run };
}

/** Two weeks after a brew's day, where it surely is not yet. */
const later = (brew: { day: string } | undefined) => daysAfter(brew?.day ?? '2027-01-09', 14);

async function inForce() {
  const { plan } = await getPlan();
  if (plan === null) throw new Error('no plan in force');
  return plan;
}

describe('planning', () => {
  test('the first plan goes in force, with its tasks in the calendar', async () => {
    const before = await getPlan();
    expect(before).toMatchObject({ plan: null, tasks: { count: 0 } });
    const run = await planned();
    expect(run).toMatchObject({ state: 'done', became: 'in-force', kind: 'plan', error: null });
    const after = await getPlan();
    expect(after.id).toBe(run?.plan);
    expect(after.plan?.brews.map(({ brew }) => brew).sort()).toEqual([
      'Heron',
      'Millrace',
      'Quill',
    ]);
    expect(after.behind.says).toBeNull();
    const { tasks } = await ok(shape.TasksAnswer, 'GET', '/api/tasks');
    expect(tasks).toHaveLength(after.tasks.count);
    expect(tasks.map(({ day }) => day)).toEqual(tasks.map(({ day }) => day).sort());
  });

  test('a later plan is a draft that says what differs', async () => {
    await planned();
    const first = await getPlan();
    const run = await planned({ steps: 300, seed: 2, anew: true });
    expect(run).toMatchObject({ state: 'done', became: 'draft', kind: 'plan' });
    expect((await getPlan()).id).toBe(first.id);
    const { draft } = await getDraft();
    expect(draft).toMatchObject({ id: run?.plan, stale: false });
  });

  test('one run at a time, unless it is to be replaced', async () => {
    const { run } = await ok(shape.RunAnswer, 'POST', '/api/runs', { steps: 1_000_000 });
    const refused = await open.ask('POST', '/api/runs', { steps: 10 });
    expect(refused.status).toBe(409);
    const next = await ok(shape.RunAnswer, 'POST', '/api/runs', { steps: 10, replace: true });
    expect(open.parts.runs.get(run.id)).toMatchObject({ state: 'stopped', became: 'nothing' });
    expect(await open.parts.runs.ended(next.run.id)).toMatchObject({ state: 'done' });
  });

  test('stopped, a run keeps the best so far', async () => {
    const { run } = await ok(shape.RunAnswer, 'POST', '/api/runs', { steps: 1_000_000_000 });
    await ok(shape.RunAnswer, 'POST', `/api/runs/${run.id}/stop`);
    const ended = await open.parts.runs.ended(run.id);
    expect(ended).toMatchObject({ state: 'stopped', became: 'in-force' });
    const plan = await inForce();
    expect(plan.brews).toHaveLength(3);
    expect(plan.stepsDone).toBeLessThan(1_000_000_000);
  });

  test('its events end with how it went', async () => {
    const { run } = await ok(shape.RunAnswer, 'POST', '/api/runs', { steps: 300 });
    const { text, headers } = await open.ask('GET', `/api/runs/${run.id}/events`);
    expect(headers.get('Content-Type')).toMatch(/^text\/event-stream/);
    const events = text
      .trim()
      .split('\n\n')
      .map((block) => /^event: (.+)\ndata: (.+)$/.exec(block)?.slice(1) ?? []);
    expect(
      events
        .map(([name]) => name)
        .slice(0, -1)
        .every((name) => name === 'progress'),
    ).toBe(true);
    const [name, data] = events.at(-1) ?? [];
    expect(name).toBe('done');
    expect(shape.RunAnswer.parse(JSON.parse(data ?? '')).run).toMatchObject({
      state: 'done',
      id: run.id,
    });
    // whoever comes late hears the end at once
    const late = await open.ask('GET', `/api/runs/${run.id}/events`);
    expect(late.text).toMatch(/^event: done\n/);
  });
});

describe('a brew day slips', () => {
  test('the draft keeps what it can, says why, and on adoption the calendar changes in place', async () => {
    await planned();
    const { made } = await ok(shape.FeedMadeAnswer, 'POST', '/api/feeds', {});
    const feed = new URL(made.address ?? '').pathname;
    const read = async () => readCalendar((await open.ask('GET', feed)).text).events;
    const before = await read();
    const [first] = (await inForce()).brews;
    if (first === undefined) throw new Error('no brew');
    const to = daysAfter(first.day, 14);
    const eve = daysAfter(first.day, -1);
    open.setNow(`${eve}T18:00:00Z`);
    open.setToday(eve);
    const { run, entry } = await told({ kind: 'slipped', brew: first.brew, to });
    expect(entry).toBe(1);
    expect(run).toMatchObject({ state: 'done', became: 'draft', kind: 'replan' });

    // Until it is adopted nothing moves.
    expect(await read()).toEqual(before);
    expect((await getPlan()).behind).toMatchObject({ record: true, house: false });
    const { draft } = await getDraft();
    if (draft === null) throw new Error('no draft');
    expect(draft.stale).toBe(false);
    const moved = draft.plan.brews.find(({ brew }) => brew === first.brew);
    expect((moved?.day ?? '') >= to).toBe(true);
    expect(draft.changes.changes.map(({ brew }) => brew)).toContain(first.brew);

    const adopted = await ok(shape.PlanAnswer, 'POST', '/api/draft/adopt', { draft: draft.id });
    expect(adopted.id).toBe(draft.id);
    expect(adopted.behind.says).toBeNull();
    const after = await read();
    const pitch = (events: typeof after) =>
      events.find(
        ({ categories, url }) =>
          categories === ('brew-pitch' satisfies TaskKind) &&
          decodeURIComponent(url).includes(first.brew),
      );
    const [was, is] = [pitch(before), pitch(after)];
    expect(is?.uid).toBe(was?.uid);
    expect(is?.start.slice(0, 10)).toBe(moved?.day);
    expect(is?.sequence).toBe((was?.sequence ?? 0) + 1);
    expect(is?.lastModified).toBe(`${eve}T18:00:00Z`);
    const known = new Map(before.map((event) => [event.uid, event]));
    for (const event of after) {
      const old = known.get(event.uid);
      if (old?.description === event.description && old.start === event.start)
        expect(event).toEqual(old);
    }
    expect(await getDraft()).toEqual({ draft: null });
  });

  test('taken back, the record says so and the draft is gone with it', async () => {
    await planned();
    const [first] = (await inForce()).brews;
    await told({ kind: 'slipped', brew: first?.brew ?? '', to: later(first) });
    expect((await getDraft()).draft).not.toBeNull();
    expect((await told({ kind: 'undone', entry: 1 })).run).toBeNull();
    const { entries } = await ok(shape.RecordAnswer, 'GET', '/api/record');
    expect(entries.map(({ entry }) => [entry.no, entry.news.kind])).toEqual([
      [1, 'slipped'],
      [2, 'undone'],
    ]);
    expect((await getPlan()).behind.record).toBe(false);
    expect(await getDraft()).toEqual({ draft: null });
  });

  test('dismissed, the old plan stays and says that news came in', async () => {
    await planned();
    const before = await getPlan();
    const [first] = before.plan?.brews ?? [];
    await told({ kind: 'slipped', brew: first?.brew ?? '', to: later(first) });
    const { draft } = await getDraft();
    await ok(shape.DraftAnswer, 'POST', '/api/draft/dismiss', { draft: draft?.id });
    expect((await getPlan()).id).toBe(before.id);
    expect((await getPlan()).behind.record).toBe(true);
  });

  test('a draft that news has overtaken says so and is not adopted', async () => {
    await planned();
    const { brews } = await inForce();
    await told({ kind: 'slipped', brew: brews[0]?.brew ?? '', to: later(brews[0]) });
    const { draft } = await getDraft();
    // The second piece of news comes from another device; its re-plan is held back here.
    const news = { kind: 'slipped', brew: brews[1]?.brew ?? '', to: later(brews[1]) };
    const answer = await ok(shape.NewsAnswer, 'POST', '/api/news', news);
    await open.parts.runs.ended(answer.run?.id ?? '').then(() => undefined);
    const refused = await open.ask('POST', '/api/draft/adopt', { draft: draft?.id });
    expect(refused.status).toBe(409);
    const newer = (await getDraft()).draft;
    expect(newer?.id).not.toBe(draft?.id);
    await ok(shape.PlanAnswer, 'POST', '/api/draft/adopt', { draft: newer?.id });
  });

  test('two devices at once: both pieces of news land, in order', async () => {
    await planned();
    const [one, two] = (await inForce()).brews;
    const answers = await Promise.all([
      open.ask('POST', '/api/news', { kind: 'slipped', brew: one?.brew, to: later(one) }),
      open.ask('POST', '/api/news', { kind: 'slipped', brew: two?.brew, to: later(two) }),
    ]);
    expect(answers.map(({ status }) => status)).toEqual([201, 201]);
    const { entries } = await ok(shape.RecordAnswer, 'GET', '/api/record');
    expect(entries.map(({ entry }) => entry.no)).toEqual([1, 2]);
    await open.parts.runs.ended(open.parts.runs.current()?.id ?? '');
    expect((await getDraft()).draft?.stale).toBe(false);
  });
});

describe('a task is done', () => {
  test('it is marked in the list and in the calendar, and nothing is planned anew', async () => {
    await planned();
    const { made } = await ok(shape.FeedMadeAnswer, 'POST', '/api/feeds', {});
    const { tasks } = await ok(shape.TasksAnswer, 'GET', '/api/tasks');
    const task = tasks.find(({ kind }) => kind === 'order');
    if (task === undefined) throw new Error('no order');
    open.setToday(task.day);
    const { run } = await told({ kind: 'task-done', task: task.key, day: task.day });
    expect(run).toBeNull();
    const rows = (await ok(shape.TasksAnswer, 'GET', '/api/tasks')).tasks;
    expect(rows.find(({ key }) => key === task.key)).toMatchObject({ uid: task.uid, done: true });
    const { text } = await open.ask('GET', new URL(made.address ?? '').pathname);
    const event = readCalendar(text).events.find(({ uid }) => uid === task.uid);
    expect(event).toMatchObject({ sequence: 0, summary: `Done: ${task.title}` });
  });
});

test('news that cannot be is refused with the ways out, and nothing is half-applied', async () => {
  await planned();
  for (const news of [
    { kind: 'slipped', brew: 'Nobody', to: '2027-01-23' },
    { kind: 'harvested', brew: 'Quill', day: '2027-01-04', settledMl: 100 },
    { kind: 'brewed', brew: 'Quill', day: '2027-06-01' },
    { kind: 'undone', entry: 5 },
    { kind: 'task-done', task: 'no such task', day: '2027-01-04' },
  ]) {
    const answer = await open.ask('POST', '/api/news', news);
    expect(answer.status, JSON.stringify(news)).toBe(409);
    const { error } = answer.json as { error: { problems: { remedy: string }[] } };
    expect(error.problems.length).toBeGreaterThan(0);
    for (const { remedy } of error.problems) expect(remedy.length).toBeGreaterThan(5);
  }
  expect((await ok(shape.RecordAnswer, 'GET', '/api/record')).entries).toEqual([]);
});

describe('the house is edited', () => {
  test('the plan in force says so; planning again gives a draft', async () => {
    await planned();
    const { house, revision } = await ok(shape.HouseAnswer, 'GET', '/api/house');
    if (house === null) throw new Error('no house');
    const brews = house.brews.filter(({ brew }) => brew !== 'Heron');
    await ok(
      shape.HouseAnswer,
      'PUT',
      '/api/house',
      { ...house, brews },
      { 'If-Match': `"${revision}"` },
    );
    expect((await getPlan()).behind).toMatchObject({ house: true, record: false });
    const run = await planned({ steps: 300 });
    expect(run).toMatchObject({ state: 'done', became: 'draft' });
    const { draft } = await getDraft();
    expect(draft?.plan.brews.map(({ brew }) => brew)).not.toContain('Heron');
  });

  test('a new season puts plan, record and open tasks away, and keeps what was done', async () => {
    await planned();
    const { tasks } = await ok(shape.TasksAnswer, 'GET', '/api/tasks');
    const order = tasks.find(({ kind }) => kind === 'order');
    open.setToday(order?.day ?? '');
    await told({ kind: 'task-done', task: order?.key ?? '', day: order?.day ?? '' });
    const answer = await ok(
      shape.HouseAnswer,
      'PUT',
      '/api/house?startOver=true',
      aHouse({ name: 'Slate Yard again' }),
      { 'If-Match': '1' },
    );
    expect(answer.revision).toBe(2);
    expect((await getPlan()).plan).toBeNull();
    expect((await ok(shape.RecordAnswer, 'GET', '/api/record')).entries).toEqual([]);
    const left = (await ok(shape.TasksAnswer, 'GET', '/api/tasks')).tasks;
    expect(left.map(({ uid }) => uid)).toEqual([order?.uid]);
    const run = await planned();
    expect(run).toMatchObject({ state: 'done', became: 'in-force' });
    // A pitch of the new season is an entry of its own, also where its key is that of an old one.
    const fresh = (await ok(shape.TasksAnswer, 'GET', '/api/tasks')).tasks;
    const uids = new Set(fresh.map(({ uid }) => uid));
    expect(uids.has(order?.uid ?? '')).toBe(true);
    const before = new Map(tasks.map(({ key, uid }) => [key, uid]));
    const again = fresh.filter(({ key, done }) => !done && before.has(key));
    expect(again.length).toBeGreaterThan(3);
    for (const { key, uid } of again) expect(uid).not.toBe(before.get(key));
  });
});
