// Discard by: the last day of every jar that the plan does not pitch, in reserve or on the shelf.
import type { PlannedHarvest, ShelfJar } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import {
  type CodedJar,
  shelfKey,
  type TaskContext,
  type TaskDraft,
  type TaskMaker,
  taskKey,
} from './context.ts';
import { earliest, placeOn, sayDay } from './days.ts';
import { MINUTES } from './effort.ts';
import { sayMl } from './words.ts';

export const discardBy: TaskMaker = {
  kind: 'discard-by',
  make: (context) => [
    ...context.plan.harvests.flatMap((harvest) =>
      context
        .jarsOf(harvest)
        .filter((jar) => jar.spare)
        .map((jar, at) => spareTask(jar, at + 1, harvest, context)),
    ),
    ...context.plan.shelf
      .filter((jar) => jar.usedFor === null)
      .map((jar) => shelfTask(jar, context)),
  ],
};

function spareTask(
  jar: CodedJar,
  number: number,
  harvest: PlannedHarvest,
  context: TaskContext,
): TaskDraft {
  const placed = placeOn(harvest.discardBy, {
    allowed: context.hands.short,
    from: harvest.day,
    to: harvest.discardBy,
  });
  return {
    ...common(context),
    key: taskKey('discard-by', harvest.brew, `S${number}`),
    day: placed.day,
    brew: null,
    title: `Discard jar ${jar.code} (${sayMl(jar.ml)} of ${harvest.yeast}), unless it was used`,
    amounts: [{ what: `Jar ${jar.code}`, value: Math.round(jar.ml), unit: 'mL' }],
    why: [
      `It was kept in reserve from ${harvest.brew}; after ${sayDay(harvest.discardBy)} it is too old to pitch.`,
      placed.why,
    ]
      .filter(Boolean)
      .join(' '),
  };
}

function shelfTask(jar: ShelfJar, context: TaskContext): TaskDraft {
  const { plan, house } = context;
  // A jar that was past its day before the season is thrown away as the season is set up, not in the past.
  const start = earliest(plan.today, house.from);
  const overdue = jar.discardBy < start;
  const wanted = overdue ? start : jar.discardBy;
  const placed = placeOn(wanted, {
    allowed: context.hands.short,
    from: start,
    to: overdue ? '9999-12-31' : wanted,
  });
  const ml = house.jars.find((one) => one.jar === jar.jar)?.settledMl;
  const amount = ml === undefined ? jar.yeast : `${sayMl(ml)} of ${jar.yeast}`;
  const suspect = jar.state === 'suspect';
  return {
    ...common(context),
    key: shelfKey(jar.jar),
    day: placed.day,
    brew: null,
    title: `Discard jar ${jar.jar} (${amount})${suspect ? ': suspect, never pitch it' : ', unless it was used'}`,
    amounts: ml === undefined ? [] : [{ what: `Jar ${jar.jar}`, value: ml, unit: 'mL' }],
    why: [
      suspect
        ? 'It is marked suspect and is never pitched; away from the other jars it can do no harm.'
        : `No brew of the plan takes it; after ${sayDay(jar.discardBy)} it is too old to pitch.`,
      placed.why,
    ]
      .filter(Boolean)
      .join(' '),
  };
}

function common(context: TaskContext) {
  return {
    minutes: MINUTES.discard[context.house.kind],
    time: null,
    steps: [
      'See on the season that no brew is to take it.',
      'Let the gas out slowly, then open it outdoors or over a drain.',
      'Boil the slurry or pour it away where it may go: it goes on fermenting in a bin.',
      'Wash the jar and say that it is gone.',
    ],
    haveReady: ['Gloves and glasses', 'A thick cloth', 'Hot water and cleaner'],
    goodLooksLike: 'The jar is clean and the shelf has room for the next harvest.',
    caution: cautionText('closed-jar', 'old-jar'),
  };
}
