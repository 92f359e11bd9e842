// No more drawn than there is. Need 1.0 M/mL/°P (Crooks via Fahrendorf; Colorado Brewers Guild); densities
// as in planner/model/settings.ts: 2.1 B/mL settled for 48 h, 0.8 of that after a day.
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay, TWELVE_P, UNDYING } from '../../builders/season.ts';

const beer = (brew: string) => aBrew({ brew, og: TWELVE_P });
const brews = [beer('First'), beer('A'), beer('B'), beer('C')];
const from = { harvest: 'First' };
const draws = {
  A: { on: '2027-03-20', tank: 'Keg B', from },
  B: { on: '2027-03-21', tank: 'Cone', from },
  C: { on: '2027-03-22', tank: 'Keg A', from },
};
const house = aSeason({ rules: UNDYING, brews });

test('a harvest feeds two brews and not three', () => {
  // Pitched: one pack of 200 B. Harvest: min(4 × 200, 80 × 20) × 0.65 = 520 B, at 1.68 B/mL 309.5 mL.
  // A draw: 20 L × 12 °P × 1.0 = 240 B, at 1.68 B/mL 142.9 mL. Two: 285.7. Three: 428.6, 119.0 too many.
  const { First, A, B, C } = { First: { on: '2027-03-01' }, ...draws };
  expect(lay(house, { First, A, B }).found('draw-limit')).toEqual([]);
  const [said] = lay(house, { First, A, B, C }).found('draw-limit');
  expect(said?.amount).toBe(120);
  expect(said?.says).toBe('429 mL are drawn from slurry from First, 120 mL more than it holds.');
  expect(said?.remedy).toContain('starter');
});

const brewed = (settledMl: number) => ({
  today: '2027-03-16',
  facts: {
    brewed: [
      {
        brew: 'First',
        day: '2027-03-01',
        tank: 'Keg A',
        yeast: 'Mill Lane Ale',
        source: { kind: 'fresh' as const, packs: 1 },
        generation: 0,
        pitchedB: 200,
      },
    ],
    harvested: [{ brew: 'First', day: '2027-03-15', settledMl }],
  },
});

test.each([
  [286, 0],
  [285, 1],
  [200, 86],
  [0, 286],
])('once %i mL were harvested, 285.7 mL are %i too many', (ml, over) => {
  expect(lay(house, { A: draws.A, B: draws.B }, brewed(ml)).sum('draw-limit')).toBe(over);
});

// A jar of the shelf is stated at 48 h: 240 B / (2.1 × 0.9) = 126.98 mL.
const shelf = (settledMl: number) =>
  aSeason({
    rules: UNDYING,
    brews,
    jars: [aJar({ settledMl, harvestedOn: '2027-02-20', measuredViability: 0.9 })],
  });
const jar = { jar: 'J1' };

test.each([
  [127, 0],
  [126, 1],
  [120, 7],
])('a jar of %i mL, 127 mL wanted: %i too many', (ml, over) => {
  const season = lay(shelf(ml), { A: { on: '2027-03-02', from: jar } });
  expect(season.sum('draw-limit')).toBe(over);
});

test('an opened jar feeds one pitch, however much is in it', () => {
  const season = lay(shelf(1000), {
    A: { on: '2027-03-02', from: jar },
    B: { on: '2027-03-03', tank: 'Keg B', from: jar },
  });
  const [said] = season.found('draw-limit');
  // the second draw, 127 mL, is one too many
  expect(said?.amount).toBe(127);
  expect(said?.says).toBe('jar J1 is opened for 2 pitches; an opened jar feeds one.');
});

test('a jar kept for the next season is a draw too', () => {
  const laid = { A: { on: '2027-03-02', from: jar } };
  const keep = { 'Mill Lane Ale': jar };
  expect(lay(shelf(1000), laid, { keep }).sum('draw-limit')).toBeGreaterThan(0);
  expect(lay(shelf(1000), {}, { keep }).sum('draw-limit')).toBe(0);
});

test('the margin of the house counts into the draw', () => {
  // 1.2 × 126.98 = 152.4 mL
  const generous = aSeason({
    rules: { ...UNDYING, pitchMargin: 1.2 },
    brews,
    jars: [aJar({ settledMl: 150, harvestedOn: '2027-02-20', measuredViability: 0.9 })],
  });
  expect(lay(generous, { A: { on: '2027-03-02', from: jar } }).sum('draw-limit')).toBe(3);
});
