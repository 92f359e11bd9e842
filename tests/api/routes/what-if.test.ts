// A house that is not saved is planned, watched, stopped and compared, and nothing is stored.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { RunAnswer } from '../../../api/routes/shapes.ts';
import { WhatIfAnswer } from '../../../api/routes/what-if-shapes.ts';
import { readHouse } from '../../../api/store/house.ts';
import { readPlan } from '../../../api/store/plans.ts';
import { type House, plan } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aBrew, aHouse, aTank, aYeast } from '../../builders/plan.ts';

const TODAY = '2027-01-04';
const house: House = aHouse({
  tanks: [aTank({ tank: 'One' }), aTank({ tank: 'Two' })],
  yeasts: [aYeast()],
  brews: [aBrew({ brew: 'First' }), aBrew({ brew: 'Second' }), aBrew({ brew: 'Third' })],
});

let open: OpenApp;
beforeAll(async () => {
  const inForce = plan({ house, today: TODAY, steps: 300 });
  open = await openApp({ house, plan: inForce, today: TODAY });
});
afterAll(() => open.close());

async function start(body: unknown): Promise<string> {
  const answer = await open.ask('POST', '/api/what-if', body);
  expect(answer.status, answer.text).toBe(202);
  return RunAnswer.parse(answer.json).run.id;
}

async function ended(body: unknown): Promise<WhatIfAnswer> {
  const id = await start(body);
  await open.parts.whatIfs.ended(id);
  return WhatIfAnswer.parse((await open.ask('GET', `/api/what-if/${id}`)).json);
}

describe('a what-if', () => {
  it('plans the changed house and says what differs, storing nothing', async () => {
    const { db } = open.parts.store;
    const before = JSON.stringify([await readHouse(db), await readPlan(db, 'in-force')]);
    const changed = { ...house, tanks: house.tanks.slice(0, 1) };
    const { run, result } = await ended({ house: changed, steps: 300 });
    expect(run.state).toBe('done');
    expect(run.became).toBe('nothing');
    expect(new Set(result?.plan.brews.map(({ tank }) => tank))).toEqual(new Set(['One']));
    // the tank that is gone held a beer: at least that one moves
    expect(result?.changes?.changes.length).toBeGreaterThan(0);
    expect(result?.changes?.after).toEqual(result?.plan.totals);
    expect(JSON.stringify([await readHouse(db), await readPlan(db, 'in-force')])).toBe(before);
    expect(await readPlan(db, 'draft')).toBeNull();
    expect(open.parts.runs.current()).toBeNull();
  });

  it('takes brews out and in, and changed weights and rules', async () => {
    const changed = {
      ...house,
      brews: [...house.brews.slice(1), aBrew({ brew: 'Fourth' })],
      weights: { lateness: 5 },
      rules: { maxGeneration: 0 },
    };
    const { result } = await ended({ house: changed, steps: 300 });
    const names = result?.plan.brews.map(({ brew }) => brew) ?? [];
    expect(names).not.toContain('First');
    expect(names).toContain('Fourth');
    expect(result?.plan.brews.every(({ generation }) => generation === 0)).toBe(true);
  });

  it('of nothing changed moves nothing', async () => {
    const { result } = await ended({ steps: 0 });
    expect(result?.changes?.changes).toEqual([]);
  });

  it('streams its end, and is stopped with the best so far', async () => {
    const id = await start({ steps: 1_000_000_000 });
    const second = await open.ask('POST', '/api/what-if', {});
    expect(second.status).toBe(409);
    const stopped = await open.ask('POST', `/api/what-if/${id}/stop`);
    expect(stopped.status).toBe(200);
    await open.parts.whatIfs.ended(id);
    const events = await open.ask('GET', `/api/what-if/${id}/events`);
    expect(events.text).toMatch(/^event: stopped\n/);
    const answer = WhatIfAnswer.parse((await open.ask('GET', `/api/what-if/${id}`)).json);
    expect(answer.run.state).toBe('stopped');
    expect(answer.result?.plan.brews.length).toBe(3);
  });

  it('gives way to another one that says so', async () => {
    const first = await start({ steps: 1_000_000_000 });
    const { run } = await ended({ steps: 0, replace: true });
    expect(run.state).toBe('done');
    expect(
      WhatIfAnswer.parse((await open.ask('GET', `/api/what-if/${first}`)).json).result,
    ).toBeNull();
  });

  it('refuses a house that is none with every problem, and one that nobody knows', async () => {
    const bad = await open.ask('POST', '/api/what-if', {
      house: { ...house, brews: [{ ...aBrew(), og: 1048, volumeL: -1 }] },
    });
    expect(bad.status).toBe(422);
    expect(bad.text).toContain('Write it with its point: 1.048.');
    expect(bad.text).toContain('brews[0].volumeL');
    const nobody = crypto.randomUUID();
    for (const [method, path] of [
      ['GET', `/api/what-if/${nobody}`],
      ['GET', `/api/what-if/${nobody}/events`],
      ['POST', `/api/what-if/${nobody}/stop`],
    ] as const) {
      expect((await open.ask(method, path)).status).toBe(404);
    }
  });
});
