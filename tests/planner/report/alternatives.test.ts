// Why a brew stands where it stands: whole sentences, and a best other way whose price is what trying it costs.
import { beforeAll, describe, expect, it } from 'vitest';
import { readFolder } from '../../../api/folder/index.ts';
import {
  defaultToday,
  type House,
  NO_FACTS,
  type Plan,
  plan,
  trials,
} from '../../../planner/index.ts';

describe.each(['lantern-shed', 'quay-seven'])('%s', (name) => {
  let house: House;
  let made: Plan;
  beforeAll(async () => {
    const read = await readFolder(new URL(`../../seasons/${name}`, import.meta.url).pathname);
    if (!read.house) throw new Error(`${name} cannot be read`);
    house = read.house;
    made = plan({ house, today: defaultToday(house), steps: 500, seed: 2 });
  });

  it('gives every reason as a sentence of its own', () => {
    for (const { brew, why, alternative } of made.brews) {
      expect(new Set(why).size, brew).toBe(why.length);
      const said = [...why, ...(alternative ? [alternative.says, alternative.source] : [])];
      for (const sentence of said) expect(sentence).toMatch(/^[^a-z].*[^ ]$/);
      for (const sentence of said) expect(sentence).not.toMatch(/undefined|NaN|\d{4}-\d\d-\d\d/);
      if (alternative?.brokenBy) expect(alternative.says).toContain(alternative.brokenBy.slice(1));
      else if (alternative) expect(alternative.extraMinor).not.toBeNull();
    }
  });

  it('prices another day as trying the brew there does, but for the regret of moving it', () => {
    const tryOut = trials({
      house,
      today: made.today,
      facts: NO_FACTS,
      pins: [],
      inForce: made,
      seed: 1,
      steps: null,
    });
    let compared = 0;
    for (const { brew, day, tank, alternative } of made.brews) {
      if (!alternative || alternative.extraMinor === null) continue;
      if (alternative.day === day && alternative.tank === tank) continue;
      // the crop of a tank with an outlet may fall on another day when the plan is laid out anew
      const outlets = house.tanks.filter((one) => one.bottomOutlet).map((one) => one.tank);
      if (outlets.includes(tank) || outlets.includes(alternative.tank)) continue;
      const { costMinor, lines } = tryOut({ brew, day: alternative.day, tank: alternative.tank });
      const regret = lines.filter((line) => line.rule === 'moved');
      const moved = regret.reduce((sum, line) => sum + line.differenceMinor, 0);
      expect(costMinor - moved, brew).toBe(alternative.extraMinor);
      compared += 1;
    }
    if (house.tanks.some((one) => !one.bottomOutlet)) expect(compared).toBeGreaterThan(0);
  });
});
