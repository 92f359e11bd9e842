// Harvests that may fall short: 8.00 at home, 96.00 in a nano, times the share of the drawn mL above the low value.
import { expect, test } from 'vitest';
import { aBrew, aSeason, lay } from '../../builders/season.ts';

const brews = ['First', 'A', 'B'].map((brew) => aBrew({ brew }));
const from = { harvest: 'First' };
const First = { on: '2027-03-01' };
const A = { on: '2027-03-20', tank: 'Keg B', from };
const B = { on: '2027-03-22', tank: 'Cone', from };

/** Growth is off by a factor `spread` and the density not at all: the low value is the likely one divided by it. */
const sure = (harvestSpread: number, slackDays = 5) => ({
  harvestSpread,
  slackDays,
  densitySpread: 1,
  densitySpreadPerDay: 1,
});

const season = (laid: Parameters<typeof lay>[1], rules: object, part = {}) =>
  lay(aSeason({ brews, rules, ...part }), laid);

test.each([
  ['home', 800],
  ['nano', 9600],
] as const)('in a %s it costs the share above the low value', (kind, price) => {
  const laid = season({ First, A, B }, sure(4), { kind });
  const { t, problem } = laid;
  const first = laid.brew('First');
  const likely = t.cropMl[first] ?? 0;
  const drawn = t.drawnMl[problem.jars.length + first] ?? 0;
  // the two draws are more than a quarter of what is likely
  expect(drawn).toBeGreaterThan(likely / 4);
  const share = (drawn - likely / 4) / drawn;
  expect(laid.sum('thin-harvest')).toBe(Math.round(price * share));
});

test('costs nothing where the low value is enough, where nobody draws, and where no slack is asked for', () => {
  expect(season({ First, A }, sure(1)).sum('thin-harvest')).toBe(0);
  expect(season({ First }, sure(4)).sum('thin-harvest')).toBe(0);
  expect(season({ First, A, B }, sure(4, 0)).sum('thin-harvest')).toBe(0);
});

test('the sentence names both amounts', () => {
  const laid = season({ First, A, B }, sure(4));
  const [said] = laid.found('thin-harvest');
  const low = Math.round((laid.t.cropMl[laid.brew('First')] ?? 0) / 4);
  expect(said?.says).toContain(`which may give only ${low} mL.`);
  expect(said?.remedy).toContain('another harvest');
});
