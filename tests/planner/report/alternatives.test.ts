// Why a brew stands where it stands: whole sentences, and a best other way whose price is what trying it costs.
import { expect, it } from 'vitest';
import { readFolder } from '../../../api/folder/index.ts';
import {
  defaultToday,
  type House,
  NO_FACTS,
  type Plan,
  plan,
  trials,
} from '../../../planner/index.ts';

async function houseOf(name: string): Promise<House> {
  const { house } = await readFolder(new URL(`../../seasons/${name}`, import.meta.url).pathname);
  if (!house) throw new Error(`${name} cannot be read`);
  return house;
}

const planned = (house: House, seed: number): Plan =>
  plan({ house, today: defaultToday(house), steps: 400, seed });

it.each(['lantern-shed', 'quay-seven'])(
  '%s: every reason is a sentence of its own',
  async (name) => {
    for (const { brew, why, alternative } of planned(await houseOf(name), 2).brews) {
      expect(new Set(why).size, brew).toBe(why.length);
      const said = [...why, ...(alternative ? [alternative.says, alternative.source] : [])];
      for (const sentence of said) expect(sentence).toMatch(/^[^a-z].*[^ ]$/);
      for (const sentence of said) expect(sentence).not.toMatch(/undefined|NaN|\d{4}-\d\d-\d\d/);
      if (alternative?.brokenBy) expect(alternative.says).toContain(alternative.brokenBy.slice(1));
      else if (alternative) expect(alternative.extraMinor).not.toBeNull();
    }
  },
);

it('another day is priced as trying the brew there is, but for the regret of moving it', async () => {
  const house = await houseOf('lantern-shed');
  // the crop of a tank with an outlet may fall on another day when the plan is laid out anew
  const outlets = house.tanks.filter((one) => one.bottomOutlet).map((one) => one.tank);
  let compared = 0;
  for (const seed of [1, 2, 3, 4]) {
    const inForce = planned(house, seed);
    const { today } = inForce;
    const tryOut = trials({ house, today, facts: NO_FACTS, pins: [], inForce, seed, steps: null });
    for (const { brew, day, tank, alternative } of inForce.brews) {
      if (!alternative || alternative.extraMinor === null) continue;
      if (alternative.day === day && alternative.tank === tank) continue;
      if (outlets.includes(tank) || outlets.includes(alternative.tank)) continue;
      const { costMinor, lines } = tryOut({ brew, day: alternative.day, tank: alternative.tank });
      const regret = lines.filter((line) => line.rule === 'moved');
      const moved = regret.reduce((sum, line) => sum + line.differenceMinor, 0);
      expect(costMinor - moved, brew).toBe(alternative.extraMinor);
      compared += 1;
    }
  }
  expect(compared).toBeGreaterThan(0);
});
