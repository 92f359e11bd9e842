// What differs between two plans: only that, brew by brew, each change with a sentence and its reason.
import type { Change, Changes, House, Plan, PlannedBrew } from '../model/index.ts';
import { compareText, saySource } from '../tasks/context.ts';
import { sayDay } from '../tasks/days.ts';
import { tasks } from '../tasks/index.ts';
import { asTold, SAME_AMOUNT } from '../tasks/steady.ts';
import { sayL } from '../tasks/words.ts';
import { type Reasoned, withoutCircles } from './circles.ts';
import {
  addedReason,
  amountReason,
  dayReasons,
  droppedReason,
  type Pair,
  pairOf,
  type Reason,
  type Since,
  sourceReasons,
  tankReasons,
} from './reason.ts';

/**
 * What differs between the plan in force and a new one, with the reasons found in the two and in what came between.
 * Changes come in order of the days they concern. Amounts that change by up to 5 % are listed apart, as `smaller`.
 */
export function compare(before: Plan, after: Plan, house: House, since: Since = {}): Changes {
  const pair = pairOf(asTold(before), asTold(after), house, since);
  const names = [...new Set([...before.brews, ...after.brews].map((brew) => brew.brew))];
  const changes = names.flatMap((name) => ofBrew(pair.was(name), pair.now(name), pair));
  changes.sort((a, b) => compareText(a.day, b.day) || compareText(a.brew, b.brew));
  return {
    changes: withoutCircles(changes),
    smaller: names.flatMap((name) => smallerAmount(pair.was(name), pair.now(name))),
    ...ofTasks(before, after, house),
    before: before.totals,
    after: after.totals,
  };
}

function ofBrew(
  was: PlannedBrew | undefined,
  now: PlannedBrew | undefined,
  pair: Pair,
): Reasoned[] {
  if (was === undefined && now === undefined) return [];
  if (was === undefined && now !== undefined) {
    return [
      {
        kind: 'added',
        brew: now.brew,
        before: null,
        after: now.day,
        day: now.day,
        says: `${now.brew} is brewed on ${sayDay(now.day)} into ${now.tank}.`,
        reason: addedReason(now, pair),
        rule: null,
        reasons: [],
      },
    ];
  }
  if (now === undefined || was === undefined) {
    if (was === undefined) return [];
    return [
      {
        kind: 'dropped',
        brew: was.brew,
        before: was.day,
        after: null,
        day: was.day,
        says: `${was.brew}, planned for ${sayDay(was.day)}, is left out.`,
        reason: droppedReason(was, pair),
        rule: pair.forced.get(was.brew)?.rule ?? null,
        reasons: [],
      },
    ];
  }
  const changes: Reasoned[] = [];
  const { brew, day } = now;
  const rule = now.done ? null : (pair.forced.get(brew)?.rule ?? null);
  const note = (
    kind: Change['kind'],
    before: string,
    after: string,
    says: string,
    why: string | Reason[],
  ) => {
    // mL follow from a count and packs from their age; only packs are also chosen
    const forced = kind === 'amount' && now.source.kind !== 'fresh' ? null : rule;
    const [reason, reasons] = typeof why === 'string' ? [why, []] : ['', why];
    changes.push({ kind, brew, before, after, day, says, reason, rule: forced, reasons });
  };

  if (was.day !== now.day) {
    note(
      'moved',
      was.day,
      now.day,
      `${now.brew} moves from ${sayDay(was.day)} to ${sayDay(now.day)}.`,
      dayReasons(was, now, pair),
    );
  }
  if (was.tank !== now.tank) {
    note(
      'tank',
      was.tank,
      now.tank,
      `${now.brew} goes into ${now.tank} instead of ${was.tank}.`,
      tankReasons(was, now, pair),
    );
  }
  if (was.yeast !== now.yeast) {
    note(
      'yeast',
      was.yeast,
      now.yeast,
      `${now.brew} is pitched with ${now.yeast} instead of ${was.yeast}.`,
      sourceReasons(was, now, pair),
    );
  }
  if (sourceName(was) !== sourceName(now)) {
    note(
      'source',
      sourceName(was),
      sourceName(now),
      `${now.brew} takes ${saySource(now)} instead of ${saySource(was)}.`,
      sourceReasons(was, now, pair),
    );
  } else if (amountDiffers(was, now)) {
    note(
      'amount',
      saySource(was),
      saySource(now),
      `${now.brew} takes ${saySource(now)} instead of ${saySource(was)}.`,
      amountReason(was, now),
    );
  }
  if (starterDiffers(was, now)) {
    note('starter', starterName(was), starterName(now), starterSays(was, now), starterReason(now));
  }
  return changes;
}

function sourceName(brew: PlannedBrew): string {
  const { source } = brew;
  switch (source.kind) {
    case 'fresh':
      return 'fresh packs';
    case 'jar':
      return `jar ${source.jar}`;
    case 'harvest':
      return source.ofStarter
        ? `part of the starter of ${source.brew}`
        : `harvest of ${source.brew}`;
  }
}

function differs(old: number, current: number): boolean {
  return Math.abs(current - old) > SAME_AMOUNT * Math.max(Math.abs(old), 1e-9);
}

function amountDiffers(was: PlannedBrew, now: PlannedBrew): boolean {
  if (was.source.kind === 'fresh' || now.source.kind === 'fresh') {
    return (
      was.source.kind === 'fresh' &&
      now.source.kind === 'fresh' &&
      was.source.packs !== now.source.packs
    );
  }
  return differs(was.source.drawMl, now.source.drawMl);
}

/** An amount that is written otherwise than before, though not by enough for a change. */
function smallerAmount(
  was: PlannedBrew | undefined,
  now: PlannedBrew | undefined,
): Changes['smaller'] {
  if (was === undefined || now === undefined || now.done) return [];
  if (sourceName(was) !== sourceName(now) || amountDiffers(was, now)) return [];
  const [before, after] = [saySource(was), saySource(now)];
  return before === after ? [] : [{ brew: now.brew, before, after }];
}

function starterDiffers(was: PlannedBrew, now: PlannedBrew): boolean {
  // What was grown for a brew that is brewed is past.
  if (now.done) return false;
  return differs(was.starter?.litres ?? 0, now.starter?.litres ?? 0);
}

function starterName(brew: PlannedBrew): string {
  return brew.starter === null ? 'no starter' : `starter of ${sayL(brew.starter.litres)}`;
}

function starterSays(was: PlannedBrew, now: PlannedBrew): string {
  if (now.starter === null) return `${now.brew} needs no starter any more.`;
  const day = sayDay(now.starter.startOn);
  return was.starter === null
    ? `${now.brew} needs a starter of ${sayL(now.starter.litres)}, begun on ${day}.`
    : `The starter for ${now.brew} is ${sayL(now.starter.litres)} instead of ${sayL(was.starter.litres)}, begun on ${day}.`;
}

function starterReason(now: PlannedBrew): string {
  return now.starter === null
    ? `There are cells enough in ${saySource(now)}.`
    : `There are not cells enough for ${now.brew} in ${saySource(now)}.`;
}

/** Which tasks come, go and move, by key. */
function ofTasks(before: Plan, after: Plan, house: House) {
  const was = new Map(tasks(before, house).map((task) => [task.key, task]));
  const now = new Map(tasks(after, house).map((task) => [task.key, task]));
  const brewed = new Set(after.brews.filter((brew) => brew.done).map((brew) => brew.brew));
  const tasksMoved = [...now].flatMap(([key, task]) => {
    const old = was.get(key);
    return old === undefined || old.day === task.day
      ? []
      : [{ key, before: old.day, after: task.day }];
  });
  return {
    tasksAdded: [...now.keys()].filter((key) => !was.has(key)),
    // What prepared a brew that is brewed is past, not gone.
    tasksGone: [...was]
      .filter(([key, task]) => !now.has(key) && !(task.brew !== null && brewed.has(task.brew)))
      .map(([key]) => key),
    tasksMoved,
  };
}
