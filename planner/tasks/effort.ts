// How long jobs take and at what o'clock a brew day runs, where the house has no setting of its own.
// All of it common practice, no source: it fills the calendar, no decision hangs on it.
import type { House, Plan } from '../model/index.ts';

type ByKind = { home: number; nano: number };

/** Minutes of the jobs for which the house has no setting. */
export const MINUTES = {
  order: { home: 10, nano: 10 },
  takeOut: { home: 5, nano: 10 },
  brew: { home: 330, nano: 420 },
  furtherTurn: { home: 240, nano: 240 },
  dryHop: { home: 15, nano: 30 },
  crash: { home: 5, nano: 5 },
  readJar: { home: 3, nano: 5 },
  package: { home: 120, nano: 240 },
  clean: { home: 45, nano: 90 },
  discard: { home: 5, nano: 10 },
  chill: { home: 5, nano: 5 },
  decant: { home: 10, nano: 15 },
} as const satisfies Record<string, ByKind>;

/** Minutes after midnight. */
const FIRST_KETTLE: ByKind = { home: 9 * 60, nano: 7 * 60 };
const TURN = 4 * 60;
const KETTLE_TO_PITCH = 5 * 60;
const LATEST = 23 * 60;
export const TAKE_OUT_BEFORE_PITCH = 3 * 60;
export const FRESH_START_BEFORE_PITCH = 4 * 60;
export const EVENING = 18 * 60;

/** `HH:MM`, kept inside the day. */
export function clock(minutes: number): string {
  const kept = Math.max(0, Math.min(LATEST, minutes));
  const hours = String(Math.floor(kept / 60)).padStart(2, '0');
  return `${hours}:${String(kept % 60).padStart(2, '0')}`;
}

/** Minutes after midnight at which the kettle of each brew is first lit: brews of one day follow in the plan's order. */
export function kettleTimes(plan: Plan, house: House): Map<string, number> {
  const turnsSoFar = new Map<string, number>();
  const starts = new Map<string, number>();
  for (const brew of plan.brews) {
    starts.set(brew.brew, FIRST_KETTLE[house.kind] + TURN * (turnsSoFar.get(brew.day) ?? 0));
    for (const turn of brew.kettle) {
      turnsSoFar.set(turn.day, (turnsSoFar.get(turn.day) ?? 0) + turn.turns);
    }
  }
  return starts;
}

/** Minutes after midnight at which yeast goes in, given when the kettle is lit. */
export function pitchTime(kettleAt: number): number {
  return Math.min(LATEST, kettleAt + KETTLE_TO_PITCH);
}
