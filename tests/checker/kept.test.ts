// The second judge notices what is wrong with a part kept of a starter.
import { expect, it } from 'vitest';
import { type Plan, plan } from '../../planner/index.ts';
import { TODAY, twoOfOnePack } from '../builders/kept-starter.ts';
import { checkPlan } from './index.ts';

const house = twoOfOnePack(1);
const good = plan({ house, today: TODAY, seed: 1, steps: 6000 });

/** The rules that are named of the plan with its harvest, and the brew that is pitched from it, changed. */
function named(
  harvest: Partial<Plan['harvests'][number]>,
  second: Partial<Plan['brews'][number]> = {},
  of = house,
): string[] {
  const changed: Plan = {
    ...good,
    harvests: good.harvests.map((one) => ({ ...one, ...harvest })),
    brews: good.brews.map((brew) => (brew.brew === 'Second' ? { ...brew, ...second } : brew)),
  };
  return checkPlan(of, changed).map(({ rule }) => rule);
}

it('lets a good plan pass', () => expect(named({})).toEqual([]));

it.each([
  ['kept on another day than brew day', { day: '2027-03-04' }, 'dates kept-day'],
  ['drawn before it has settled', { usableFrom: '2027-03-03' }, 'dates usable-from'],
  ['called crashed', { crashed: true }, 'dates kept-crashed'],
  ['called generation 1', { generation: 1 }, '9 generation-of-harvest'],
  [
    'more than the starter holds',
    { cellsB: 400, settledMl: { low: 1, likely: 238.1, high: 500 } },
    '4 kept-overdrawn',
  ],
  [
    'more alive than a fresh crop',
    { cropViability: { low: 1, likely: 1.02, high: 1 } },
    'amounts crop-viability',
  ],
] as const)('%s', (_, harvest, rule) => expect(named(harvest)).toContain(rule));

it('a generation added', () => expect(named({}, { generation: 1 })).toContain('9 generation'));

it('kept where the house asks for none, or in more jars than it asks for', () =>
  expect(named({}, {}, twoOfOnePack(0))).toContain('4 kept-jars'));

it('kept of a brew without a starter', () => {
  const brews = good.brews.map((brew) =>
    brew.brew === 'First' ? { ...brew, starter: null } : brew,
  );
  expect(checkPlan(house, { ...good, brews }).map(({ rule }) => rule)).toContain('3 kept-of-what');
});

it('the same jar called a harvest of the beer', () => {
  const harvests = good.harvests.map(({ ofStarter: _, ...harvest }) => harvest);
  const found = checkPlan(house, { ...good, harvests }).map(({ rule }) => rule);
  expect(found).toEqual(expect.arrayContaining(['8 additions', 'dates harvest-at-emptying']));
});
