// From a plan to what has to be done and when: the one list of kinds of task, and the tasks in their order.
import { type House, type Plan, TASK_KINDS, type Task, type TaskKind } from '../model/index.ts';
import { brewPitch } from './brew-pitch.ts';
import { checkJar } from './check-jar.ts';
import { chillDecant } from './chill-decant.ts';
import { clean } from './clean.ts';
import { compareText, contextOf, type TaskMaker } from './context.ts';
import { crash } from './crash.ts';
import { discardBy } from './discard-by.ts';
import { dryHop } from './dry-hop.ts';
import { harvest } from './harvest.ts';
import { order } from './order.ts';
import { packageBeer } from './package.ts';
import { readVolume } from './read-volume.ts';
import { starter } from './starter.ts';
import { asTold } from './steady.ts';
import { takeOut } from './take-out.ts';

/** Every kind of task, in the order in which they are done on one day. */
export const TASK_MAKERS: readonly TaskMaker[] = [
  order,
  checkJar,
  starter,
  chillDecant,
  takeOut,
  brewPitch,
  dryHop,
  crash,
  harvest,
  readVolume,
  packageBeer,
  clean,
  discardBy,
];

/** A task that was ticked, with the day on which it was done. */
export type DoneTask = { key: string; day: string };

/**
 * Everything that a plan asks to be done, by day, then time (without one: first), then kind, then key.
 * @param done tasks that were ticked: they are flagged and stand on the day on which they were done. What the plan
 *   knows to have happened (a brew brewed, a harvest taken) is flagged too, with what had to come before it.
 * Keys stay the same over re-plans, so that the calendar changes its entries in place.
 */
export function tasks(plan: Plan, house: House, done: readonly DoneTask[] = []): Task[] {
  const doneOn = new Map(done.map((one) => [one.key, one.day]));
  const context = contextOf(asTold(plan), house, (key) => doneOn.has(key));
  const made = TASK_MAKERS.flatMap((maker) =>
    maker.make(context).map(({ happened, ...draft }): Task => {
      const day = doneOn.get(draft.key);
      return {
        ...draft,
        kind: maker.kind,
        day: day ?? draft.day,
        done: day !== undefined || happened === true,
      };
    }),
  );
  return made.sort(byDay);
}

/** The order of work on one day: a tank is cleaned when the beer is out of it and the yeast in its jars. */
const TANK_DAY: readonly TaskKind[] = ['package', 'harvest', 'clean', 'discard-by'];
const WITHIN_A_DAY: readonly TaskKind[] = [
  ...TASK_KINDS.filter((kind) => !TANK_DAY.includes(kind)),
  ...TANK_DAY,
];

function byDay(a: Task, b: Task): number {
  return (
    compareText(a.day, b.day) ||
    compareText(a.time ?? '', b.time ?? '') ||
    WITHIN_A_DAY.indexOf(a.kind) - WITHIN_A_DAY.indexOf(b.kind) ||
    compareText(a.key, b.key)
  );
}
