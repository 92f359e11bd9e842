// A task was ticked: where it says more than 'done' (brewed, harvested, packaged, thrown away), that is what it comes to.
import type { News, Task } from '../../model/index.ts';
import { contextOf, SHELF, shelfKey, taskKey } from '../../tasks/context.ts';
import { plusDays } from '../../tasks/days.ts';
import { harvestLeftovers } from '../../tasks/discard-by.ts';
import { tasks } from '../../tasks/index.ts';
import { orderOfTask } from '../../tasks/order.ts';
import { asTold } from '../../tasks/steady.ts';
import type { Asked, Resolved } from '../asked.ts';
import type { RecordFact } from '../entry.ts';
import { hoppedFact } from './beer.ts';
import { brewedFact, pitchSource } from './brewed.ts';
import { harvestedFact } from './harvested.ts';
import { goneFact } from './jar-gone.ts';

type TaskDone = News & { kind: 'task-done' };

export function taskDoneFact(news: TaskDone, asked: Asked): Resolved {
  const all = tasks(asked.inForce, asked.house, asked.state.done);
  const task = all.find((one) => one.key === news.task);
  if (task === undefined) {
    const ticked = asked.ledger.done.has(news.task);
    return {
      refusals: [
        {
          code: ticked ? 'already-done' : 'unknown-task',
          field: 'task',
          value: news.task,
          bound: 'the key of a task of the plan in force',
          message: ticked
            ? `The task ${news.task} was done already, and the plan in force no longer has it.`
            : `The plan in force has no task ${news.task}.`,
          remedy: ticked
            ? 'There is nothing to do.'
            : 'Look at the list of tasks again: the plan may have been made anew.',
        },
      ],
    };
  }
  if (task.done && !asked.ledger.done.has(news.task)) {
    return {
      refusals: [
        {
          code: 'already-done',
          field: 'task',
          value: news.task,
          message: `${task.title}: this is done already, by what is recorded.`,
          remedy: 'There is nothing to do; if that is wrong, take the entry back that says so.',
        },
      ],
    };
  }
  return comesTo(task, news, asked);
}

function comesTo(task: Task, news: TaskDone, asked: Asked): Resolved {
  const { day } = news;
  const brew = task.brew;
  switch (task.kind) {
    case 'brew-pitch':
      // Later days of a long brew have a number behind the name; the yeast went in on the first.
      if (brew !== null && news.task === taskKey('brew-pitch', brew)) {
        return brewedFact({ brew, day, tank: null, drawnMl: null }, asked);
      }
      return ticked(brew, 'brewed');
    case 'harvest':
      return brew === null ? ticked(null, 'brewed') : harvestAsPlanned(brew, news, asked);
    case 'package':
      return brew === null
        ? ticked(null, 'brewed')
        : { fact: { kind: 'emptied', brew, day } satisfies RecordFact };
    case 'dry-hop':
      return brew === null ? ticked(null, 'brewed') : hoppedFact({ brew, day }, asked);
    case 'crash':
    case 'clean':
      return ticked(brew, 'brewed');
    case 'read-volume':
      return ticked(brew, 'harvested');
    case 'starter':
      return brew === null ? ticked(null, 'brewed') : begun(brew, news, asked);
    case 'order':
      return ordered(news, asked);
    case 'discard-by':
      return discarded(news, asked);
    default:
      return ticked(null, 'brewed');
  }
}

function ticked(brew: string | null, been: 'brewed' | 'harvested'): Resolved {
  return { fact: { kind: 'ticked', needs: brew === null ? null : { brew, been } } };
}

/** A starter was begun: its yeast is out of the jar or the pack, whatever happens to the brew day. */
function begun(brew: string, news: TaskDone, asked: Asked): Resolved {
  const planned = asTold(asked.inForce).brews.find((one) => one.brew === brew);
  if (!planned?.starter || news.task !== taskKey('starter', brew)) return ticked(null, 'brewed');
  return {
    fact: {
      kind: 'begun',
      begun: {
        brew,
        day: news.day,
        yeast: planned.yeast,
        litres: planned.starter.litres,
        source: pitchSource(planned, 1),
      },
    },
  };
}

/** Ordered: the packs of that delivery are paid for and come the lead after the day of the order. */
function ordered(news: TaskDone, asked: Asked): Resolved {
  const order = orderOfTask(news.task, contextOf(asked.inForce, asked.house));
  if (order === undefined) return ticked(null, 'brewed');
  const arrivesOn = plusDays(news.day, asked.house.orderLeadDays);
  return {
    fact: {
      kind: 'bought',
      lines: order.lines.map((line) => ({ yeast: line.yeast, packs: line.packs, arrivesOn })),
    },
  };
}

/** Harvested as planned: the jars hold what the plan keeps. */
function harvestAsPlanned(brew: string, news: TaskDone, asked: Asked): Resolved {
  const planned = asked.inForce.harvests.find((one) => one.brew === brew);
  const settledMl = planned?.jars.reduce((sum, jar) => sum + jar.ml, 0) ?? 0;
  return harvestedFact({ brew, day: news.day, settledMl }, asked);
}

/** A jar of the shelf is gone; a spare jar of a harvest takes its mL out of what that harvest holds. */
function discarded(news: TaskDone, asked: Asked): Resolved {
  const { inForce, house } = asked;
  const shelf = news.task.startsWith(`discard-by:${SHELF}:`);
  if (shelf) {
    const jar = inForce.shelf.find((one) => shelfKey(one.jar) === news.task);
    return jar === undefined
      ? ticked(null, 'brewed')
      : goneFact({ jar: jar.jar, day: news.day }, asked);
  }
  const left = harvestLeftovers(contextOf(asTold(inForce), house)).find(
    (one) => one.key === news.task,
  );
  return left === undefined
    ? ticked(null, 'brewed')
    : { fact: { kind: 'discarded', brew: left.harvest.brew, ml: left.ml } };
}
