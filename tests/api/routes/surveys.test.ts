// Surveys of the plan in force over HTTP: asked, watched, stopped, read, refused; nothing is stored.
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { RunAnswer } from '../../../api/routes/shapes.ts';
import { SurveyAnswer } from '../../../api/routes/survey-shapes.ts';
import { readPlan } from '../../../api/store/plans.ts';
import { type House, plan, steadiness } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aBrew, aHouse, aTank, aYeast } from '../../builders/plan.ts';

const TODAY = '2027-01-04';
const house: House = aHouse({
  tanks: [aTank()],
  yeasts: [aYeast()],
  brews: ['First', 'Second', 'Third'].map((brew) => aBrew({ brew, readyBy: '2027-02-20' })),
});
const inForce = plan({ house, today: TODAY, steps: 300 });

let open: OpenApp;
beforeAll(async () => {
  open = await openApp({ house, plan: inForce, today: TODAY });
});
afterAll(() => open.close());

async function ended(body: unknown): Promise<SurveyAnswer> {
  const answer = await open.ask('POST', '/api/surveys', body);
  expect(answer.status, answer.text).toBe(202);
  const { id } = RunAnswer.parse(answer.json).run;
  await open.parts.surveys.ended(id);
  return SurveyAnswer.parse((await open.ask('GET', `/api/surveys/${id}`)).json);
}

describe('a survey', () => {
  it('tells how steady the plan in force is, as the planner does', async () => {
    const { run, result } = await ended({ kind: 'steadiness', seed: 7, seasons: 200 });
    expect(run).toMatchObject({ kind: 'steadiness', state: 'done', seed: 7, plan: null });
    expect(result).toEqual({
      kind: 'steadiness',
      steadiness: steadiness(inForce, house, { seed: 7, seasons: 200 }),
    });
  });

  it('tells what one more of something would save, and leaves plan and draft alone', async () => {
    const { run, result } = await ended({ kind: 'limits', steps: 300 });
    expect(run).toMatchObject({ kind: 'limits', state: 'done' });
    if (result?.kind !== 'limits') throw new Error('no limits');
    // three beers wanted at once and one tank
    expect(result.limits.limits[0]?.id).toBe('tank:Keg A');
    expect(result.limits.limits[0]?.lateDaysFewer).toBeGreaterThan(0);
    const { db } = open.parts.store;
    expect((await readPlan(db, 'in-force'))?.plan).toEqual(inForce);
    expect(await readPlan(db, 'draft')).toBeNull();
    expect(open.parts.runs.current()).toBeNull();
  });

  it('stops with the answers that it has', async () => {
    const started = await open.ask('POST', '/api/surveys', { kind: 'limits', steps: 5_000_000 });
    const { id } = RunAnswer.parse(started.json).run;
    const second = await open.ask('POST', '/api/surveys', { kind: 'steadiness' });
    expect(second.status).toBe(409);
    expect(second.json).toMatchObject({ error: { code: 'survey-under-way' } });
    expect((await open.ask('POST', `/api/surveys/${id}/stop`)).status).toBe(200);
    await open.parts.surveys.ended(id);
    const { run, result } = SurveyAnswer.parse((await open.ask('GET', `/api/surveys/${id}`)).json);
    expect(run.state).toBe('stopped');
    if (result?.kind !== 'limits') throw new Error('no limits');
    expect(result.limits.stopped).toBe(true);
  });

  it.each([
    [{ kind: 'limits', steps: -1 }, 'steps'],
    [{ kind: 'steadiness', seasons: 0 }, 'seasons'],
    [{ kind: 'steadiness', luck: { slipShare: 2 } }, 'slipShare'],
    [{ kind: 'luck' }, 'kind'],
  ])('refuses %j by the name of the field', async (body, field) => {
    const answer = await open.ask('POST', '/api/surveys', body);
    expect(answer.status).toBe(400);
    expect(answer.text).toContain(field);
  });

  it('knows none that was not asked', async () => {
    for (const path of ['', '/events', '/stop']) {
      const method = path === '/stop' ? 'POST' : 'GET';
      const answer = await open.ask(
        method,
        `/api/surveys/00000000-0000-4000-8000-000000000000${path}`,
      );
      expect(answer.status).toBe(404);
      expect(answer.json).toMatchObject({ error: { code: 'no-such-survey' } });
    }
  });
});

it('needs a plan in force', async () => {
  const empty = await openApp({ plan: null });
  const answer = await empty.ask('POST', '/api/surveys', { kind: 'limits' });
  expect(answer.status).toBe(409);
  expect(answer.json).toMatchObject({ error: { code: 'no-plan' } });
  await empty.close();
});
