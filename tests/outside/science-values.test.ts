// Holds every model to the values published outside the project.
import { expect, test } from 'vitest';
import { agrees, OUTSIDE_VALUES } from './science-values/index.ts';

test.each(
  OUTSIDE_VALUES.map(
    (v) => [v.model, v.what, v.differs ? 'differs from' : 'agrees with', v] as const,
  ),
)('%s: %s %s its source', (_model, _what, _verdict, outside) => {
  const got = outside.got();
  expect(Number.isFinite(got)).toBe(true);
  if (agrees(outside.expected, got) !== (outside.differs === undefined))
    expect.fail(
      `${outside.what}: got ${got}, expected ${JSON.stringify(outside.expected)} (${outside.source})`,
    );
});

test('no question is asked twice', () => {
  const asked = OUTSIDE_VALUES.map((v) => `${v.model} ${v.what} ${v.source}`);
  expect(new Set(asked).size).toBe(asked.length);
});
