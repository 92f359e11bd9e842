// Read the settled volume of the jars: only now is it known how much yeast there is.
import type { PlannedHarvest } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import {
  type CodedJar,
  sayWhatFor,
  type TaskContext,
  type TaskDraft,
  type TaskMaker,
  taskKey,
} from './context.ts';
import { earliest, placeOn, plusDays, sayDay } from './days.ts';
import { clock, MINUTES } from './effort.ts';
import { counted, listed, sayMl } from './words.ts';

export const readVolume: TaskMaker = {
  kind: 'read-volume',
  make: (context) =>
    context.plan.harvests.flatMap((one) => (one.jars.length === 0 ? [] : [readTask(one, context)])),
};

function readTask(one: PlannedHarvest, context: TaskContext): TaskDraft {
  const { house } = context;
  const settle = house.store.settleDays;
  const jars = context.jarsOf(one);
  const draws = jars.filter((jar) => !jar.spare).map((jar) => jar.leavesOn);
  const firstDraw = earliest(one.discardBy, ...draws);
  // Read too early the yeast has not settled, so it rather waits; but it is read before the first jar is drawn.
  const placed = placeOn(plusDays(one.day, settle), {
    allowed: context.hands.short,
    from: one.day,
    to: firstDraw,
    first: 'later',
  });
  const keptMl = jars.reduce((sum, jar) => sum + jar.ml, 0);
  return {
    key: taskKey('read-volume', one.brew),
    day: placed.day,
    minutes: jars.length * MINUTES.readJar[house.kind],
    time: beforeKettle(jars, placed.day, context),
    brew: one.brew,
    title: `Read ${listed(jars.map((jar) => jar.code))} of ${one.brew}: how many mL have settled? ${sayMl(keptMl)} wanted`,
    steps: [
      'Do not shake the jars. Let the gas out of each and set the lid back loose.',
      'Read where the pale layer ends, in mL, and write it on the label.',
      'Smell each jar: bread and beer.',
      'Add the jars up and enter the mL. If it is less than wanted, the plan is made anew from that.',
    ],
    amounts: jars.map((jar) => ({
      what: `${jar.code}${jar.for === null ? ',' : ''} ${sayWhatFor(jar)}`,
      value: Math.round(jar.ml),
      unit: 'mL',
    })),
    haveReady: ['A lamp', 'A ruler or a jar with marks', 'A waterproof pen'],
    goodLooksLike: `A sharp line between yeast and clear ${one.ofStarter ? 'wort' : 'beer'}; in all ${sayMl(one.settledMl.low)} to ${sayMl(one.settledMl.high)}.`,
    why: [
      settle === 0
        ? `${one.brew} is harvested and pitched without settling: read what you can, it is a guess.`
        : `The yeast ${one.ofStarter ? `kept from the starter of ${one.brew}` : `of ${one.brew}`} (${sayDay(one.day)}) has settled for ${counted(settle, 'day')}; what can be pitched follows from this reading.`,
      placed.why,
    ]
      .filter(Boolean)
      .join(' '),
    caution: cautionText('closed-jar'),
  };
}

/** Read on the day of a draw, it is read before that kettle is lit; else at any time. */
function beforeKettle(jars: readonly CodedJar[], day: string, context: TaskContext): string | null {
  const lit = jars.flatMap((jar) =>
    jar.for !== null && jar.leavesOn === day ? [context.kettleAt(jar.for)] : [],
  );
  return lit.length === 0 ? null : clock(Math.min(...lit) - 60);
}
