// The small seasons that the exact checks run on, by name of what is tight in them.
import type { House } from '../../../planner/index.ts';
import { dice, type SmallShape } from './small-season.ts';

const SOFT = ['gravity-ceiling', 'dry-hopped', 'additions', 'kettle-soured'];

/** Brews, tanks, strains, days between brews; then what else differs. Odd seeds pay 5 for a delivery, even ones nothing. */
function shape(
  seed: number,
  [brews, tanks, strains, apartDays]: readonly [number, number, number, number],
  part: Partial<SmallShape> = {},
): SmallShape {
  return {
    seed,
    brews,
    tanks,
    strains,
    apartDays,
    deliveryCost: seed % 2 === 1 ? 5 : 0,
    starters: false,
    jars: 2,
    candidates: [2, 5],
    outlet: false,
    ...part,
  };
}

/** Of three brews at most: every plan there is can be tried. */
export const TINY: readonly SmallShape[] = [
  shape(21, [3, 1, 1, 12], { candidates: [2, 3], outlet: true }),
  shape(22, [3, 2, 1, 10], { candidates: [2, 2], jars: 1 }),
  shape(23, [2, 2, 2, 14], { candidates: [2, 2], jars: 1, starters: true }),
  shape(24, [3, 1, 2, 9], { candidates: [2, 2], jars: 1, nano: true }),
  shape(25, [2, 1, 1, 12], { candidates: [2, 3], starters: true, outlet: true }),
  shape(26, [3, 1, 1, 5], { candidates: [2, 2], jars: 1, relaxed: SOFT }),
  shape(28, [3, 2, 1, 7], { candidates: [2, 2], jars: 1, outlet: true, packsOnHand: 6 }),
  shape(30, [3, 2, 1, 9], { candidates: [2, 2], jars: 0, outlet: true, maxJars: 1 }),
  shape(43, [2, 2, 1, 1], { candidates: [2, 2], jars: 0, outlet: true, starters: true }),
  shape(32, [3, 2, 1, 6], { candidates: [2, 2], jars: 0, outlet: true, conditioningRoomL: 30 }),
  shape(36, [3, 2, 1, 8], { candidates: [2, 2], jars: 0, outlet: true }),
  shape(38, [3, 3, 1, 1], { candidates: [2, 2], jars: 0 }),
  shape(45, [3, 3, 1, 1], { candidates: [2, 3], jars: 0, largeBrews: true }),
];

/** Seasons of those in which one limit or price decides, and the same house without it. */
export const DECIDED_BY: readonly [what: string, seed: number, without: (house: House) => House][] =
  [
    ['room on the shelf', 30, (h) => ({ ...h, store: { ...h.store, maxJars: 99 } })],
    ['starter vessels', 43, (h) => ({ ...h, starterGear: { ...h.starterGear, vessels: 9 } })],
    ['conditioning room', 32, (h) => ({ ...h, conditioningRoomL: null })],
    ['the jar for the next season', 36, (h) => ({ ...h, rules: { ...h.rules, endJarValue: 0 } })],
    ['turns a day', 38, (h) => ({ ...h, brewsPerDay: 9 })],
    ['turns of large brews', 45, (h) => ({ ...h, brewsPerDay: 9 })],
  ];

/** Of five or six brews: the ten that the planner is compared on. */
export const TEN: readonly SmallShape[] = [
  shape(1, [6, 2, 1, 7], { outlet: true }),
  shape(2, [6, 2, 2, 6], { candidates: [3, 5], outlet: true, jars: 3 }),
  shape(3, [6, 1, 2, 10], { candidates: [2, 4], jars: 1, starters: true }),
  shape(4, [5, 1, 1, 12], { candidates: [2, 4], jars: 3, starters: true, outlet: true }),
  shape(5, [6, 2, 2, 8], { candidates: [2, 3], starters: true, outlet: true }),
  shape(6, [6, 2, 2, 4], { conditioningRoomL: 60 }),
  shape(7, [6, 2, 1, 7], { candidates: [3, 5], outlet: true, nano: true }),
  shape(8, [6, 2, 2, 8], { candidates: [2, 2], starters: true, outlet: true, relaxed: SOFT }),
  shape(9, [6, 2, 1, 6], { largeBrews: true, maxJars: 2 }),
  shape(10, [6, 2, 2, 9], {
    candidates: [2, 4],
    jars: 0,
    starters: true,
    outlet: true,
    packsOnHand: 3,
  }),
];

/** Everything that a house may relax. */
const RELAXABLE = [...SOFT, 'generation-limit', 'storage-limit', 'viability-floor'] as const;

/** A shape at random by its number, of `most` brews at most: every rule is in play in some of any two hundred. */
export function randomShape(number: number, most: number): SmallShape {
  const roll = dice(number + 7000);
  const between = (low: number, high: number) => low + Math.floor(roll() * (high - low + 1));
  const chance = (share: number) => roll() < share;
  const brews = between(2, most);
  const large = chance(0.2);
  const jars = between(0, 3);
  return {
    seed: 1000 + number,
    brews,
    tanks: between(1, 3),
    strains: between(1, 2),
    apartDays: between(2, 12),
    deliveryCost: chance(0.5) ? 5 : 0,
    starters: chance(0.35),
    jars,
    candidates: [2, between(2, 4)],
    outlet: chance(0.5),
    nano: chance(0.3),
    packsOnHand: chance(0.3) ? between(1, 4) : 0,
    relaxed: chance(0.4) ? RELAXABLE.filter(() => chance(0.5)) : [],
    largeBrews: large,
    ...(chance(0.2) ? { conditioningRoomL: 40 } : {}),
    ...(chance(0.3) ? { maxJars: jars + between(0, 1) } : {}),
  };
}
