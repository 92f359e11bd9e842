// Each limit of a house that a brewer could widen, and the house with it widened. One entry a limit.
import {
  type House,
  resolveSettings,
  SETTINGS,
  type SettingKey,
  WEEKDAYS,
} from '../model/index.ts';

/** A house in which one limit is wider, with what was done in words. */
export type Widened = { id: string; says: string; house: House };

type Limit = (house: House) => Widened[];

/** Every limit that can be widened in this house, in the order in which they are asked. */
export function widen(house: House): Widened[] {
  return LIMITS.flatMap((limit) => limit(house));
}

const LIMITS: readonly Limit[] = [
  oneMoreTank,
  oneMoreBrewDay,
  oneMoreTurn,
  moreJars,
  oneMoreStarter,
  moreConditioning,
  (house) => wider(house, 'maxGeneration', 1, (n) => `yeast pitched up to generation ${n}`),
  (house) => wider(house, 'maxStorageDays', 7, (n) => `slurry pitched up to ${n} days old`),
  (house) =>
    wider(house, 'gravityCeiling', 0.005, (n) => `yeast kept out of beer up to ${n.toFixed(3)}`),
];

function oneMoreTank(house: House): Widened[] {
  const names = new Set(house.tanks.map((tank) => tank.tank));
  const seen = new Set<string>();
  return house.tanks.flatMap((tank) => {
    const { tank: name, outOfUse: _, ...build } = tank;
    // two tanks of one build are one question
    const kind = JSON.stringify(build);
    if (seen.has(kind)) return [];
    seen.add(kind);
    let second = `${name} 2`;
    for (let n = 3; names.has(second); n++) second = `${name} ${n}`;
    const tanks = [...house.tanks, { ...tank, tank: second, outOfUse: [] }];
    return [{ id: `tank:${name}`, says: `a second tank like ${name}`, house: { ...house, tanks } }];
  });
}

const DAY_NAMES = {
  mon: 'Mondays',
  tue: 'Tuesdays',
  wed: 'Wednesdays',
  thu: 'Thursdays',
  fri: 'Fridays',
  sat: 'Saturdays',
  sun: 'Sundays',
} as const;

function oneMoreBrewDay(house: House): Widened[] {
  return WEEKDAYS.filter((day) => !house.brewDays.includes(day)).map((day) => ({
    id: `brew-day:${day}`,
    says: `${DAY_NAMES[day]} to brew on, too`,
    house: {
      ...house,
      brewDays: [...house.brewDays, day],
      workDays: house.workDays === null ? null : [...new Set([...house.workDays, day])],
    },
  }));
}

function oneMoreTurn(house: House): Widened[] {
  const brewsPerDay = house.brewsPerDay + 1;
  const says = `${brewsPerDay} turns of the kettle a day`;
  return [{ id: 'turns', says, house: { ...house, brewsPerDay } }];
}

function moreJars(house: House): Widened[] {
  const maxJars = house.store.maxJars + 2;
  const store = { ...house.store, maxJars };
  return [{ id: 'jars', says: `room for ${maxJars} jars in the cold`, house: { ...house, store } }];
}

function oneMoreStarter(house: House): Widened[] {
  const { vessels, maxLitres } = house.starterGear;
  if (maxLitres === 0) return [];
  const more = { ...house.starterGear, vessels: vessels + 1 };
  const says = `${vessels + 1} starter ${vessels === 0 ? 'vessel' : 'vessels'}`;
  return [{ id: 'starters', says, house: { ...house, starterGear: more } }];
}

function moreConditioning(house: House): Widened[] {
  if (house.conditioningRoomL === null) return [];
  const conditioningRoomL = Math.ceil(house.conditioningRoomL * 1.25);
  return [
    {
      id: 'conditioning',
      says: `room for ${conditioningRoomL} L to condition`,
      house: { ...house, conditioningRoomL },
    },
  ];
}

function wider(
  house: House,
  name: SettingKey,
  by: number,
  says: (value: number) => string,
): Widened[] {
  const value = Math.round((resolveSettings(house.kind, house.rules)[name] + by) * 1e6) / 1e6;
  if (value > SETTINGS[name].max) return [];
  return [
    { id: name, says: says(value), house: { ...house, rules: { ...house.rules, [name]: value } } },
  ];
}
