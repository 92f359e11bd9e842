// What a house learns from its counts is as sure as it says, in worlds that obey another law.
import { expect, test } from 'vitest';
import { coverage, SHOULDERED, WORLDS } from './science-worlds.ts';

// 600 houses: a true 80 % strays by 1.6 points (one standard error).
test('after five counts, 75–85 % of the next counts fall inside the stated 80 % interval', () => {
  const { learnt, unlearnt, width, widthUnlearnt } = coverage(SHOULDERED, 5, 600, 20280517);
  expect(learnt).toBeGreaterThanOrEqual(0.75);
  expect(learnt).toBeLessThanOrEqual(0.85);
  expect(learnt).toBeGreaterThan(unlearnt);
  expect(width).toBeLessThan(widthUnlearnt);
});

// The other worlds, kinder and harsher, may stray further: over 800 houses each they give 73 to 86 %. With 200
// houses a share strays by 2.8 points (one standard error), so twice that is granted beside the 70–90 %.
const CHANCE = 2 * 0.028;
test.each(WORLDS.map((world) => [world.name, world] as const))(
  'in the world "%s" 70–90 %% of them do, but for chance',
  (_name, world) => {
    const { learnt } = coverage(world, 5, 200, 11);
    expect(learnt).toBeGreaterThanOrEqual(0.7 - CHANCE);
    expect(learnt).toBeLessThanOrEqual(0.9 + CHANCE);
  },
);

test('more counts make narrower intervals', () => {
  const widths = [0, 1, 5, 20].map((counts) => coverage(SHOULDERED, counts, 100, 3).width);
  for (const [i, width] of widths.entries())
    if (i > 0) expect(width).toBeLessThan(widths[i - 1] ?? 0);
});
