// Hindsight over HTTP: what the plan in force expected is kept with the news, and stays when the plan moves on.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { HindsightAnswer } from '../../../api/routes/history-shapes.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aPlan } from '../../builders/plan.ts';
import { bundledWorker } from '../../builders/worker.ts';

let open: OpenApp;
beforeAll(async () => {
  open = await openApp({ today: '2027-01-23', workerUrl: await bundledWorker() });
});
afterAll(() => open.close());

async function tell(news: object): Promise<void> {
  const answer = await open.ask('POST', '/api/news', news);
  expect(answer.status, answer.text).toBe(201);
  const { run } = answer.json as { run: { id: string } | null };
  if (run !== null) await open.parts.runs.ended(run.id);
}

const outcomes = async () =>
  HindsightAnswer.parse((await open.ask('GET', '/api/hindsight')).json).hindsight.outcomes;

test('a harvest stands beside what the plan of that day expected, also once that plan is gone', async () => {
  expect(await outcomes()).toEqual([]);
  await tell({ kind: 'brewed', brew: 'Millrace', day: '2027-01-09' });
  await tell({ kind: 'harvested', brew: 'Millrace', day: '2027-01-23', settledMl: 60 });
  const expected = aPlan().harvests.find(({ brew }) => brew === 'Millrace')?.settledMl;
  const seen = { figure: 'settledMl', happened: 60, within: false, likely: expected?.likely };
  expect(await outcomes()).toMatchObject([seen]);
  const { draft } = (await open.ask('GET', '/api/draft')).json as { draft: { id: string } | null };
  if (draft !== null) await open.ask('POST', '/api/draft/adopt', { draft: draft.id });
  expect(await outcomes()).toMatchObject([seen]);
});
