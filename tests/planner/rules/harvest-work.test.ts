// Work on harvests: 20 minutes at 0.08 at home, 30 at 0.35 in a nano, once a beer that feeds somebody (common practice).
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

const brews = ['First', 'A', 'B'].map((brew) => aBrew({ brew }));
const from = { harvest: 'First' };
const First = { on: '2027-03-01' };
const A = { on: '2027-03-20', tank: 'Keg B', from };
const B = { on: '2027-03-22', tank: 'Cone', from };

test.each([
  [{ First }, {}, 0, 'nobody draws from it'],
  [{ First, A }, {}, 160, 'one draw'],
  [{ First, A, B }, {}, 160, 'two draws, one harvest'],
  [{ First, A }, { kind: 'nano' }, 1050, 'a nano'],
  [{ First, A }, { rules: { harvestMinutes: 45 } }, 360, 'a slower house'],
] as const)('%j, %j: %i minor units (%s)', (laid, part, minor, _why) => {
  expect(lay(aSeason({ brews, ...part }), laid).sum('harvest-work')).toBe(minor);
});

const brewed = (harvested: { brew: string; day: string; settledMl: number }[]) => ({
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
        pitchedB: 190,
      },
    ],
    harvested,
  },
});

test('a harvest out of a brewed beer is still work, one that has been taken no longer', () => {
  const house = aSeason({ brews });
  expect(lay(house, { A }, brewed([])).sum('harvest-work')).toBe(160);
  const taken = [{ brew: 'First', day: '2027-03-15', settledMl: 300 }];
  expect(lay(house, { A }, brewed(taken)).sum('harvest-work')).toBe(0);
});

test('a jar kept for the next season is reason enough to harvest', () => {
  const season = lay(aSeason({ brews }), { First }, { keep: { 'Mill Lane Ale': from } });
  expect(season.sum('harvest-work')).toBe(160);
});

test('the sentence names the minutes and the beer', () => {
  const [said] = lay(aSeason({ brews }), { First, A }).found('harvest-work');
  expect(said?.says).toBe('20 minutes to harvest First.');
  expect(said?.remedy).toContain('more brews');
});
