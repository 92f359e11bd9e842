// A brew tried elsewhere over HTTP: told in the planner's words, refused in the record's, and nothing is stored.
import { afterAll, beforeAll, expect, test } from 'vitest';
import { TrialAnswer } from '../../../api/routes/trial-shapes.ts';
import { ErrorBody } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aPlan } from '../../builders/plan.ts';

let open: OpenApp;
beforeAll(async () => {
  open = await openApp();
});
afterAll(() => open.close());

const move = { brew: 'Quill', day: '2027-01-16', tank: 'Keg A' };

test('a day on which the yeast is not there yet is told, and nothing changes', async () => {
  const before = (await open.ask('GET', '/api/record')).text;
  const answer = await open.ask('POST', '/api/trial', move);
  expect(answer.status).toBe(200);
  const { trial } = TrialAnswer.parse(answer.json);
  // Quill takes the harvest of Millrace, which is taken on 23 January
  const yeast = trial.breaks.find(({ rule }) => rule === 'yeast-forward');
  expect(yeast?.subject).toBe('Quill');
  expect(trial.breaks.every(({ says, remedy }) => says !== '' && remedy !== '')).toBe(true);
  expect((await open.ask('GET', '/api/record')).text).toBe(before);
  expect((await open.ask('GET', '/api/draft')).json).toEqual({ draft: null });
});

test.each([
  ['brew', { ...move, brew: 'Nobody' }, 422],
  ['tank', { ...move, tank: 'Bath' }, 422],
  ['day', { ...move, day: '2026-12-24' }, 422],
  ['day', { ...move, day: '2031-01-01' }, 422],
  ['/day', { ...move, day: 'soon' }, 400],
])('%s is named where it cannot be meant', async (path, asked, status) => {
  const answer = await open.ask('POST', '/api/trial', asked);
  expect(answer.status).toBe(status);
  const { error } = ErrorBody.parse(answer.json);
  expect(error.problems[0]?.path.replace(/^\//, '')).toBe(path.replace(/^\//, ''));
  expect(error.problems[0]?.message).not.toBe('');
});

test('without a plan there is nothing to try it on', async () => {
  const empty = await openApp({ plan: null });
  expect((await empty.ask('POST', '/api/trial', move)).status).toBe(409);
  await empty.close();
});

test('another plan in force is tried on anew', async () => {
  const first = TrialAnswer.parse((await open.ask('POST', '/api/trial', move)).json);
  await open.putInForce(aPlan());
  const second = TrialAnswer.parse((await open.ask('POST', '/api/trial', move)).json);
  expect(second.plan).not.toBe(first.plan);
});
