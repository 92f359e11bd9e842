// The groups in which people read the settings: in order of the list, so that every setting stands in one.
import { expect, test } from 'vitest';
import { SETTING_GROUPS, SETTING_KEYS } from '../../../planner/index.ts';

test('the groups begin at the first setting and follow the order of the list', () => {
  const starts = SETTING_GROUPS.map(({ from }) => SETTING_KEYS.indexOf(from));
  expect(starts[0]).toBe(0);
  expect(starts).toEqual([...new Set(starts)].sort((a, b) => a - b));
});
