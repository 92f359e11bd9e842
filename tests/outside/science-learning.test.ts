// What a house learns from its counts is as sure as it says, in worlds that obey another law.
import { expect, test } from 'vitest';
import { coverage, SHOULDERED, WORLDS } from './science-worlds.ts';

// 600 houses: a true 80 % strays by 1.6 points (one standard error).
test('after five counts, 75–85 % of the next counts fall inside the stated 80 % interval', () => {
  const { learnt, unlearnt, width, widthUnlearnt } = coverage(SHOULDERED, 5, 600, 20270109);
  expect(learnt).toBeGreaterThanOrEqual(0.75);
  expect(learnt).toBeLessThanOrEqual(0.85);
  expect(learnt).toBeGreaterThan(unlearnt);
  expect(width).toBeLessThan(widthUnlearnt);
});

test.each(WORLDS.map((world) => [world.name, world] as const))(
  'in the world "%s" it never does worse than the default by more than chance',
  (_, world) => {
    const { learnt, unlearnt } = coverage(world, 5, 150, 7);
    expect(learnt).toBeGreaterThan(unlearnt - 0.05);
  },
);

test('more counts make narrower intervals', () => {
  const widths = [0, 2, 5, 15].map((counts) => coverage(SHOULDERED, counts, 100, 3).width);
  for (const [i, width] of widths.entries())
    if (i > 0) expect(width).toBeLessThan(widths[i - 1] ?? 0);
});
