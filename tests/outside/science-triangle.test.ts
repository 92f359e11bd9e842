// The triangle test against the FAO's table, row by row.
import { expect, test } from 'vitest';
import { triangleNeeded } from '../../planner/science/triangle.ts';
import { BEYOND_FAO, FAO_LEVELS, FAO_TRIANGLE } from './science-triangle-table.ts';

test.each([...FAO_TRIANGLE, ...BEYOND_FAO])('%s tasters', (tasters, ...needed) => {
  for (const [i, right] of needed.entries())
    expect(triangleNeeded(tasters, FAO_LEVELS[i] ?? 0)).toBe(right);
});
