// Clean the tank after it was emptied, before the next beer needs it.
import type { PlannedBrew } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import { type TaskContext, type TaskDraft, type TaskMaker, taskKey } from './context.ts';
import { placeOn, sayDay } from './days.ts';
import { MINUTES } from './effort.ts';
import { nextInTank } from './package.ts';

export const clean: TaskMaker = {
  kind: 'clean',
  make: (context) => context.plan.brews.map((brew) => cleanTask(brew, context)),
};

function cleanTask(brew: PlannedBrew, context: TaskContext): TaskDraft {
  const next = nextInTank(brew, context);
  // Dried on, it is twice the work, so on the day of emptying; else the first work day before the next beer.
  const placed = placeOn(brew.emptiedOn, {
    allowed: context.hands.work,
    from: brew.emptiedOn,
    to: next?.day ?? brew.tankFreeOn,
    first: 'later',
  });
  const nature = context.yeast(brew.yeast)?.nature ?? 'clean';
  const stubborn = nature !== 'clean';
  const souring = context.brew(brew.brew)?.souring ?? null;
  return {
    key: taskKey('clean', brew.brew),
    day: placed.day,
    minutes: MINUTES.clean[context.house.kind] * (stubborn ? 2 : 1),
    time: null,
    brew: brew.brew,
    title: `Clean ${brew.tank} after ${brew.brew}`,
    steps: [
      'Air the tank well, then rinse yeast and hops out with cold water.',
      'Clean it with the cleaner that its maker allows, at the strength and heat on the label.',
      'Rinse until the water runs clean and the tank smells of nothing.',
      ...(stubborn
        ? [
            `${brew.yeast} is ${nature}: take valves, seals and hoses apart, clean everything twice, and use separate soft parts if you can.`,
          ]
        : []),
      ...(souring === 'mixed'
        ? [
            'This beer was soured with bacteria: seals and hoses that touched it stay with sour beer.',
          ]
        : []),
      'Look inside with a lamp from outside. Sanitise just before the next filling.',
    ],
    amounts: [],
    haveReady: [
      'Cleaner and sanitiser',
      'Gloves, face shield, boots',
      'Brush and lamp',
      'Spare seals',
    ],
    goodLooksLike: 'No film, no smell; water runs off in a sheet and leaves no drops.',
    why: [
      next === undefined
        ? `${brew.tank} is free from ${sayDay(brew.tankFreeOn)}.`
        : `${next.brew} goes into ${brew.tank} on ${sayDay(next.day)}.`,
      placed.why,
    ]
      .filter(Boolean)
      .join(' '),
    caution: cautionText('chemicals', 'caustic-co2', 'no-entry', 'co2'),
  };
}
