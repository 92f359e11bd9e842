// Discard by: the last day of every jar that the plan does not pitch, in reserve or on the shelf.
import type { PlannedHarvest, ShelfJar } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import {
  outOf,
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
    ...harvestLeftovers(context).map((left) => leftoverTask(left, context)),
    ...context.plan.shelf
      .filter((jar) => jar.usedFor === null)
      .map((jar) => shelfTask(jar, context)),
  ],
};

/** Slurry of a harvest that no brew is to get: a spare jar, or what a harvest gave beyond the jars of the plan. */
export type Leftover = {
  key: string;
  code: string;
  ml: number;
  harvest: PlannedHarvest;
  /** The beer for whose sake it is kept in reserve; null: it is no reserve. */
  untilPassed: string | null;
};

/** A rest up to this share of the harvest stays in the jars that are drawn. Common practice, no source. */
const REST_SHARE = 0.05;

export function harvestLeftovers(context: TaskContext): Leftover[] {
  return context.plan.harvests.flatMap((harvest) => {
    const jars = context.jarsOf(harvest);
    const kept = jars.filter((jar) => jar.spare);
    const spare = kept.map((jar, at): Leftover => {
      const { code, ml, untilPassed } = jar;
      // the reserve comes last, so that it renames no other
      const which = untilPassed === undefined ? `S${at + 1}` : 'reserve';
      const key = taskKey('discard-by', harvest.brew, which);
      return { key, code, ml, harvest, untilPassed: untilPassed ?? null };
    });
    const rest = harvest.settledMl.likely - jars.reduce((sum, jar) => sum + jar.ml, 0);
    // Before the harvest a rest is not kept at all; after it, what was told to be in the jars is there.
    if (!harvest.done || rest <= REST_SHARE * harvest.settledMl.likely) return spare;
    const key = taskKey('discard-by', harvest.brew, 'rest');
    return [
      ...spare,
      {
        key,
        code: `${context.beerCode(harvest.brew)}, the rest`,
        ml: rest,
        harvest,
        untilPassed: null,
      },
    ];
  });
}

function leftoverTask(left: Leftover, context: TaskContext): TaskDraft {
  return left.untilPassed === null
    ? spareTask(left, context)
    : reserveTask(left, left.untilPassed, context);
}

/** Stands on the day on which its beer can be tasted, or on the jar's last day if that comes first. */
function reserveTask(left: Leftover, beer: string, context: TaskContext): TaskDraft {
  const { harvest } = left;
  const ready = context.planned(beer)?.readyOn ?? harvest.discardBy;
  const wanted = earliest(ready, harvest.discardBy);
  const placed = placeOn(wanted, {
    allowed: context.hands.short,
    from: harvest.day,
    to: harvest.discardBy,
    first: 'later',
  });
  const task = common(context);
  return {
    ...task,
    key: left.key,
    day: placed.day,
    brew: null,
    title: `Discard jar ${left.code} (${sayMl(left.ml)} of ${harvest.yeast} ${outOf(harvest)}) once ${beer} is tasted and passed, at the latest on ${sayDay(harvest.discardBy)}`,
    steps: [
      `Taste ${beer} (ready on ${sayDay(ready)}). If it is good, say that it was passed: the jar may go. If it is not, say that it is suspect and keep the jar: look at it, say that it is sound, and it is pitched instead.`,
      ...task.steps,
    ],
    amounts: [{ what: `Jar ${left.code}`, value: Math.round(left.ml), unit: 'mL' }],
    why: [
      `It is kept in reserve: should ${beer}, the first beer of this yeast to be ready, turn out bad, the yeast goes back one generation. After ${sayDay(harvest.discardBy)} it is too old to pitch.`,
      placed.why,
    ]
      .filter(Boolean)
      .join(' '),
  };
}

function spareTask(left: Leftover, context: TaskContext): TaskDraft {
  const { harvest } = left;
  const placed = placeOn(harvest.discardBy, {
    allowed: context.hands.short,
    from: harvest.day,
    to: harvest.discardBy,
  });
  return {
    ...common(context),
    key: left.key,
    day: placed.day,
    brew: null,
    title: `Discard jar ${left.code} (${sayMl(left.ml)} of ${harvest.yeast} ${outOf(harvest)}), unless it was used`,
    amounts: [{ what: `Jar ${left.code}`, value: Math.round(left.ml), unit: 'mL' }],
    why: [
      `No brew of the plan takes this yeast of ${harvest.brew}; after ${sayDay(harvest.discardBy)} it is too old to pitch.`,
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
