// Earlier plans and families over HTTP, on the real app and database: list, put back, taken back, refused.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { FamilyAnswer, HistoryAnswer, ShelfAnswer } from '../../../api/routes/history-shapes.ts';
import { type Plan, plan, settledPlan } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aHouse } from '../../builders/plan.ts';

const TODAY = '2027-01-04';
const OLD = '11111111-1111-4111-8111-111111111111';
const NEW = '22222222-2222-4222-8222-222222222222';

const house = aHouse();
const first = plan({ house, today: TODAY, steps: 300, seed: 1 });
/** The same season with Heron a week later. */
const second = plan({
  house,
  today: TODAY,
  facts: { notBefore: [{ brew: 'Heron', day: later(first, 'Heron') }] },
  inForce: first,
  steps: 300,
  seed: 1,
});

function later(made: Plan, brew: string): string {
  const day = made.brews.find((one) => one.brew === brew)?.day ?? TODAY;
  return new Date(Date.parse(`${day}T00:00:00Z`) + 7 * 86_400_000).toISOString().slice(0, 10);
}

describe('plans that were in force', () => {
  let open: OpenApp;
  beforeEach(async () => {
    open = await openApp({ house, plan: null, today: TODAY });
    await open.putInForce(first, OLD);
    open.setNow('2027-01-05T08:00:00Z');
    await open.putInForce(second, NEW);
  });
  afterEach(() => open.close());

  test('are listed, the newest first', async () => {
    const { json } = await open.ask('GET', '/api/history');
    const { plans } = HistoryAnswer.parse(json);
    expect(plans.map(({ id, inForce }) => [id, inForce])).toEqual([
      [NEW, true],
      [OLD, false],
    ]);
  });

  test('are put back as a draft that says what differs', async () => {
    const { status, json } = await open.ask('POST', `/api/history/${OLD}/put-back`);
    expect(status).toBe(200);
    const { draft } = json as {
      draft: { stale: boolean; plan: Plan; changes: { changes: { brew: string }[] } };
    };
    expect(draft.stale).toBe(false);
    const day = (made: Plan) => made.brews.map((one) => [one.brew, one.day, one.tank]).sort();
    expect(day(draft.plan)).toEqual(day(first));
    expect(draft.changes.changes.some((change) => change.brew === 'Heron')).toBe(true);
  });

  test.each([
    ['the one in force', NEW, 409, 'in-force'],
    ['one that never was', '33333333-3333-4333-8333-333333333333', 404, 'no-such-plan'],
  ])('%s is refused', async (_, id, status, code) => {
    const answer = await open.ask('POST', `/api/history/${id}/put-back`);
    expect(answer.status).toBe(status);
    expect(answer.json).toMatchObject({ error: { code } });
  });

  test('are not put back where a brew has been brewed into their tank since', async () => {
    const heron = first.brews.find((one) => one.brew === 'Heron');
    const news = { kind: 'tank-out', tank: heron?.tank, from: heron?.day, to: heron?.emptiedOn };
    expect((await open.ask('POST', '/api/news', news)).status).toBe(201);
    const answer = await open.ask('POST', `/api/history/${OLD}/put-back`);
    expect(answer.status).toBe(409);
    expect(answer.json).toMatchObject({ error: { code: 'facts-forbid' } });
  });
});

test('a plan that is followed carries no charge for having moved', () => {
  const moved = second.costs.filter((line) => ['moved', 'source-changed'].includes(line.rule));
  const charged = moved.reduce((sum, line) => sum + line.amountMinor, 0);
  expect(charged).toBeGreaterThan(0);
  const settled = settledPlan(second);
  expect(settled.totals.riskMinor).toBe(second.totals.riskMinor - charged);
  expect(settled.costs.reduce((sum, line) => sum + line.amountMinor, 0)).toBe(
    settled.totals.costMinor,
  );
  expect(settledPlan(settled)).toBe(settled);
});

describe('families', () => {
  test('of a jar, a harvest and a beer; a name that is not there is refused', async () => {
    const open = await openApp({ house, plan: first, today: TODAY });
    const { status, json } = await open.ask('GET', '/api/family/jar/J1');
    expect(status).toBe(200);
    expect(FamilyAnswer.parse(json).family.members[0]).toMatchObject({
      kin: 'itself',
      place: 'on-shelf',
    });
    expect((await open.ask('GET', '/api/family/beer/Millrace')).status).toBe(200);
    expect((await open.ask('GET', '/api/family/beer/Nobody')).status).toBe(404);
    expect((await open.ask('GET', '/api/family/pail/J1')).status).toBe(400);
    await open.close();
  });
});

test('a season that is over is not planned', async () => {
  const open = await openApp({ house, plan: null, today: '2030-01-01' });
  const { status, json } = await open.ask('POST', '/api/runs', {});
  expect(status).toBe(409);
  expect(json).toMatchObject({
    error: { code: 'season-over', problems: [{ path: 'to', bound: 'on or after 2030-01-01' }] },
  });
  await open.close();
});

test('the shelf: null before there is a plan, then jars, packs and families', async () => {
  const empty = await openApp({ house: null });
  expect((await empty.ask('GET', '/api/shelf')).json).toEqual({ shelf: null });
  await empty.close();
  const open = await openApp({ house, plan: first, today: TODAY });
  const { status, json } = await open.ask('GET', '/api/shelf');
  expect(status).toBe(200);
  const { shelf } = ShelfAnswer.parse(json);
  expect(shelf?.today).toBe(TODAY);
  expect(shelf?.jars.map(({ code }) => code)).toContain('J1');
  expect(shelf?.cultures.filter(({ of }) => of.kind === 'beer')).toHaveLength(first.brews.length);
  await open.close();
});
