// Single questions over HTTP: the list, an answer with its reasons, and a sentence instead of a number.
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { QuestionAnswer, QuestionsAnswer } from '../../../api/routes/shapes.ts';
import { ErrorBody, QUESTIONS } from '../../../planner/index.ts';
import { type OpenApp, openApp } from '../../builders/app.ts';
import { aHouse } from '../../builders/plan.ts';

let open: OpenApp;
beforeAll(async () => {
  open = await openApp();
});
afterAll(() => open.close());

async function answered(app: OpenApp, id: string, body: unknown) {
  const answer = await app.ask('POST', `/api/questions/${id}`, body);
  expect(answer.status).toBe(200);
  return QuestionAnswer.parse(answer.json).answer;
}

test('the list names every question with its fields, units, bounds and formula in words', async () => {
  const { json } = await open.ask('GET', '/api/questions');
  const { questions } = QuestionsAnswer.parse(json);
  expect(questions.map(({ id }) => id)).toEqual(QUESTIONS.map(({ id }) => id));
  for (const { fields, formula, range, sources } of questions) {
    expect(formula.length).toBeGreaterThan(20);
    expect(range.length).toBeGreaterThan(5);
    expect(sources.length).toBeGreaterThan(0);
    for (const field of fields) expect(field.bound, field.name).not.toBe('');
  }
  const jar = questions.find(({ id }) => id === 'jar');
  expect(jar?.fields.find(({ name }) => name === 'storeC')).toMatchObject({
    kind: 'number',
    unit: '°C',
    min: -2,
    max: 30,
    required: false,
    fallback: 4,
    bound: 'a number from -2 to 30 °C',
  });
});

// With 21 tasters 12 must pick the odd glass at 5 % (FAO Manual, Appendix A).
test('an answer carries sentences, formula, range and sources', async () => {
  const answer = await answered(open, 'taste', { tasters: 21, right: 12 });
  expect(answer.says[0]).toContain('They tasted it');
  expect(answer.figures.find(({ name }) => name === 'right answers needed')?.value).toBe(12);
  expect(answer.sources.join(' ')).toContain('FAO Manual');
  expect(answer.formula).toContain('one in three');
});

test('a prediction comes as low, likely and high, and says where it is beyond the data', async () => {
  const answer = await answered(open, 'jar', { sedimentMl: 100, storeDays: 60 });
  const alive = answer.figures.find(({ name }) => name === 'share alive');
  if (alive?.low == null || alive.value == null || alive.high == null) throw new Error('no range');
  expect(alive.low).toBeLessThan(alive.value);
  expect(alive.high).toBeGreaterThan(alive.value);
  expect(answer.beyond.join(' ')).toContain('60 days');
});

// About four hours in about a litre: common practice, no source. Wort boils over: beerandbrewing.com.
test('a start in fresh wort, and a starter of which a part is kept, with their cautions', async () => {
  const wake = await answered(open, 'wake', { batchL: 20 });
  expect(wake.figures[0]).toMatchObject({ name: 'before pitching', value: 4, unit: 'h' });
  expect(wake.caution).toContain('boils over');
  const keep = await answered(open, 'keep', {
    haveB: 100,
    pitchB: 200,
    keepB: 100,
    batchL: 20,
    stirred: true,
  });
  expect(keep.figures[0]).toMatchObject({ name: 'settled in the jar', unit: 'mL' });
  expect(keep.caution).toContain('never tighten');
});

test('the house’s own settings are used; without a house those of a home', async () => {
  const brewery = await openApp({ house: aHouse({ kind: 'nano' }), plan: null });
  const empty = await openApp({ house: null });
  try {
    const density = async (app: OpenApp) =>
      (await answered(app, 'jar', { sedimentMl: 100, storeDays: 0 })).figures.at(-1)?.value;
    // Medium flocculator: 2.0 billion per mL at home, 1.2 in a brewery (docs/science.md, settings).
    expect(await density(empty)).toBe(2);
    expect(await density(brewery)).toBe(1.2);
  } finally {
    await brewery.close();
    await empty.close();
  }
});

describe('a sentence and no number', () => {
  test.each([
    ['beer', { og: 1048, fg: 1.01 }, 'og', '1.048'],
    ['beer', { og: 12, fg: 1.01 }, 'og', '1.048'],
    ['beer', { og: 1.01, fg: 1.05 }, 'fg', 'Swap'],
    ['count', { perSquare: [30], square: 'central', dilution: 1, stained: 31 }, 'stained', 'both'],
    ['jar', { sedimentMl: 100, storeDays: 7, storeC: 400 }, 'storeC', '30 °C'],
    ['jar', { sedimentMl: 100, storeDays: 7, storeC: 39 }, 'storeC', 'If 39 is °F, write 3.89'],
    ['units', { value: 1.048, unit: '°P' }, 'value', 'choose SG'],
    ['panel', { discriminators: 40 }, 'discriminators', '0.4'],
    ['weigh', { fullG: 300, emptyG: 310 }, 'emptyG', 'Swap'],
    ['units', { value: 1048, unit: 'SG' }, 'value', '1.048'],
    ['wake', { batchL: 20, needB: 200 }, 'haveB', 'Give both'],
    ['keep', { haveB: 1, pitchB: 2, keepB: -1, batchL: 20, stirred: true }, 'keepB', '0.01'],
    ['taste', {}, 'tasters', 'whole number'],
  ])('%s %j', async (id, body, path, remedy) => {
    const answer = await open.ask('POST', `/api/questions/${id}`, body);
    expect(answer.status).toBe(422);
    const { error } = ErrorBody.parse(answer.json);
    expect(error.code).toBe('not-answered');
    expect(error.problems.map((one) => one.path)).toContain(path);
    expect(error.problems.map((one) => one.remedy).join(' ')).toContain(remedy);
    expect(answer.text).not.toContain('figures');
  });

  test('every problem at once', async () => {
    const body = { volumeL: -1, og: 1048, fermentC: 500, yeast: 'x' };
    const { error } = ErrorBody.parse((await open.ask('POST', '/api/questions/pitch', body)).json);
    expect(error.problems.map(({ path }) => path).sort()).toEqual([
      'fermentC',
      'og',
      'volumeL',
      'yeast',
    ]);
    expect(error.message).toContain('(and 3 more)');
  });

  test('a question that there is not', async () => {
    const answer = await open.ask('POST', '/api/questions/constructor', {});
    expect(answer.status).toBe(404);
    expect(ErrorBody.parse(answer.json).error.message).toContain('/api/questions');
  });
});
