// What a plan looks like in a terminal.
import { expect, test } from 'vitest';
import { planText } from '../../../api/command/plan-text.ts';
import { table, wrapped } from '../../../api/command/table.ts';
import { plan, tasks } from '../../../planner/index.ts';
import { TODAY, twoOfOnePack } from '../../builders/kept-starter.ts';
import { aHouse, aPlan, aPlannedBrew, heron, quill, someTotals } from '../../builders/plan.ts';

const textOf = (plan = aPlan()) => planText(plan, tasks(plan, aHouse()));

test('every brew has its line with day, tank, yeast, what is pitched, generation and viability', () => {
  const lines = textOf().split('\n');
  const lineOf = (brew: string) => lines.find((line) => line.includes(`  ${brew}  `)) ?? '';
  expect(lineOf('Millrace')).toMatch(
    /^Sat 2027-01-09 {2}Millrace +Keg A +Mill Lane Ale +1 fresh pack +0 +87–93–97 +2027-01-23 +2027-02-05$/,
  );
  expect(lineOf('Quill')).toMatch(/184 mL out of Millrace +1 +78–86–91/);
  expect(lineOf('Heron')).toMatch(/1 fresh pack, 1\.5 L starter +0 /);
});

test('chains, harvests, orders, next tasks and what is saved are told', () => {
  const text = textOf();
  expect(text).toContain('3 of 3 brews placed, no rule broken.');
  expect(text).toContain('Mill Lane Ale: 1 pack → Millrace → Quill');
  expect(text).toContain('184 mL for Quill, 104 mL kept');
  // 11.50 for the pack and 6.00 for the delivery
  expect(text).toMatch(/Wed 2027-01-27 {2}1 pack of Harbour Lager, here by 2027-02-03, €17\.50/);
  // 50.00 for fresh packs throughout against 30.00
  expect(text).toContain('Cash saved against buying fresh: €20.');
  expect(text).toContain('Next tasks');
  expect(text).toContain('a fresh pack is 0');
});

test('what is late, left out or broken is told with the way out', () => {
  const text = textOf(
    aPlan({
      brews: [aPlannedBrew({ daysLate: 3 }), quill(), heron()],
      leftOut: [
        {
          brew: 'Ember',
          priority: 1,
          blockedBy: [{ rule: 'tank-conflict', says: 'No tank is free for 30 days.' }],
          nearestDay: '2027-07-03',
          wayOut: 'A ready-by four days later.',
        },
      ],
      broken: [
        {
          rule: 'fixed-day',
          subject: 'Heron',
          amount: 2,
          unit: 'days',
          says: 'Heron is not on its day.',
          remedy: 'Free the day.',
        },
      ],
    }),
  );
  expect(text).toContain('3 d late');
  expect(text).toContain('3 of 4 brews placed, 1 rule broken.');
  expect(text).toMatch(/Left out\n {2}Ember\n {4}No tank is free for 30 days\.\n.*Sat 2027-07-03/);
  expect(text).toMatch(/Rules that are broken\n {2}Heron is not on its day\.\n {4}Free the day\./);
});

test('a plan that costs more cash than fresh packs does not claim to save', () => {
  const dear = aPlan({ totals: someTotals({ cashMinor: 6000 }) });
  expect(textOf(dear)).toContain('In cash this plan costs €10 more than buying fresh.');
});

test('a currency without minor units is not divided', () => {
  const plan = aPlan({ currency: 'JPY', minorPerMajor: 1 });
  expect(textOf(plan)).toContain('Cash saved against buying fresh: JP¥2,000.');
});

test('a name cannot steer the terminal', () => {
  // built by hand: the model lets no such name in
  const plan = { ...aPlan(), brews: [aPlannedBrew({ brew: 'Red\u001b[31m\nBeer' })] };
  const text = planText(plan, []);
  expect(text).not.toContain('\u001b');
  expect(text).toContain('Red [31m Beer');
});

test('columns are as wide as their widest cell, accents and all', () => {
  const lines = table(
    [{ head: 'A' }, { head: 'Bee', right: true }],
    [
      ['Kölsch', '1'],
      ['é', '22'],
    ],
  );
  expect(lines).toEqual(['A       Bee', 'Kölsch    1', 'é        22']);
});

test('sentences break at spaces, and a long word stays whole', () => {
  expect(wrapped('one two three', '  ', 9)).toEqual(['  one two', '  three']);
  expect(wrapped('incompressible', '  ', 5)).toEqual(['  incompressible']);
});

test('what is kept of a starter is told as that and not as a harvest of the beer', () => {
  const house = twoOfOnePack(1);
  const made = plan({ house, today: TODAY, seed: 1, steps: 4000 });
  const text = planText(made, tasks(made, house));
  expect(text).toMatch(/143 mL kept from the starter of First +0 /);
  expect(text).toMatch(/Wed 2027-03-03 {2}First, its starter +179 mL .* 143 mL for Second/);
});
