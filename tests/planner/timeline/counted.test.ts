// How sure a counted share is: Wilson's interval of the cells that were looked at, where they are written down.
import { expect, test } from 'vitest';
import type { YeastCount } from '../../../planner/index.ts';
import { resolveSettings } from '../../../planner/model/index.ts';
import { countedShare } from '../../../planner/timeline/counted.ts';
import { aHouse } from '../../builders/plan.ts';

const SETTINGS = resolveSettings('home', {});
const COUNT = {
  yeast: 'Mill Lane Ale',
  harvestedOn: '2026-11-01',
  countedOn: '2026-11-10',
  share: 0.9,
};
const row = (stained: number, total: number): YeastCount => ({
  yeast: COUNT.yeast,
  countedOn: COUNT.countedOn,
  harvestedOn: COUNT.harvestedOn,
  stained,
  total,
  millionPerMl: null,
  sourceAbv: null,
  generation: 1,
});
const sure = (...counts: YeastCount[]) => countedShare(aHouse({ counts }), COUNT, SETTINGS);

// E. B. Wilson 1927 at z = 1.28155, worked by hand: (p + z²/2n ± z√(p(1−p)/n + z²/4n²)) / (1 + z²/n).
test.each([
  ['no cells known: 200, as usually counted', [], 0.8695, 0.924],
  ['400 cells, 40 of them stained', [row(40, 400)], 0.8791, 0.9176],
  ['50 cells, 5 of them stained', [row(5, 50)], 0.8323, 0.9423],
] as const)('90 %% alive, %s', (_, rows, low, high) => {
  const v = sure(...rows);
  expect(v.low).toBeCloseTo(low, 3);
  expect(v.high).toBeCloseTo(high, 3);
  expect(v.likely).toBe(0.9);
});

test('a count of other slurry, another day or another share says nothing of this one', () => {
  const none = sure();
  expect(sure({ ...row(5, 50), yeast: 'Another' })).toEqual(none);
  expect(sure({ ...row(5, 50), countedOn: '2026-11-11' })).toEqual(none);
  expect(sure({ ...row(5, 50), harvestedOn: '2026-11-02' })).toEqual(none);
  expect(sure(row(10, 50))).toEqual(none);
});

test('all or none alive stay inside 0 and 1', () => {
  const all = countedShare(aHouse({}), { ...COUNT, share: 1 }, SETTINGS);
  expect([all.likely, all.high]).toEqual([1, 1]);
  expect(all.low).toBeGreaterThan(0.98);
  const none = countedShare(aHouse({}), { ...COUNT, share: 0 }, SETTINGS);
  expect([none.low, none.likely]).toEqual([0, 0]);
});
