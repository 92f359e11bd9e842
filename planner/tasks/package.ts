// Package: empty the tank into kegs or bottles on the day on which the plan frees it.
import type { PlannedBrew } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import { type TaskContext, type TaskDraft, type TaskMaker, taskKey } from './context.ts';
import { placeOn, plusDays, sayDay } from './days.ts';
import { MINUTES } from './effort.ts';
import { counted, sayL, saySg } from './words.ts';

export const packageBeer: TaskMaker = {
  kind: 'package',
  make: (context) => context.plan.brews.map((brew) => packageTask(brew, context)),
};

/** The first brew that goes into this tank after the beer has left it. */
export function nextInTank(brew: PlannedBrew, context: TaskContext): PlannedBrew | undefined {
  return context.plan.brews.find(
    (other) => other.tank === brew.tank && other.day >= brew.emptiedOn && other.brew !== brew.brew,
  );
}

function packageTask(brew: PlannedBrew, context: TaskContext): TaskDraft {
  const wanted = context.brew(brew.brew);
  const harvest = context.harvestOf(brew.brew);
  const harvestToday =
    harvest !== undefined && harvest.jars.length > 0 && harvest.day === brew.emptiedOn;
  const next = nextInTank(brew, context);
  const placed = placeOn(brew.emptiedOn, {
    allowed: context.hands.work,
    from: plusDays(brew.day, 1),
    to: brew.tankFreeOn,
    first: 'later',
  });
  return {
    key: taskKey('package', brew.brew),
    day: placed.day,
    minutes: MINUTES.package[context.house.kind],
    time: null,
    brew: brew.brew,
    title: `Package ${brew.brew}:${wanted === undefined ? '' : ` about ${sayL(wanted.volumeL)}`} out of ${brew.tank}`,
    steps: [
      `Read the gravity: steady for three days${wanted === undefined ? '' : `, near ${saySg(wanted.fg)}`}. If it still falls, do not package; say that it is slow.`,
      'Let the pressure out before you open anything.',
      'Move the beer gently into sanitised kegs or bottles.',
      ...(harvestToday
        ? ['Leave the yeast in the tank with a little beer on it: it is harvested today.']
        : []),
      `Keep it for ${counted(wanted?.conditionDays ?? 0, 'day')}: in the glass from ${sayDay(brew.readyOn)}.`,
    ],
    amounts: [
      ...(wanted === undefined
        ? []
        : [
            { what: 'Beer', value: wanted.volumeL, unit: 'L' },
            { what: 'Final gravity', value: wanted.fg, unit: 'SG' },
          ]),
    ],
    haveReady: [
      'Kegs or bottles, clean and sanitised',
      'Hoses, caps or clamps',
      'CO2',
      'Hydrometer',
    ],
    goodLooksLike: 'Clear, clean beer, full kegs or bottles, little foam.',
    why: [
      `${brew.tank} is to be free on ${sayDay(brew.tankFreeOn)}${
        next === undefined ? '' : `; ${next.brew} goes into it on ${sayDay(next.day)}`
      }.`,
      placed.why,
    ]
      .filter(Boolean)
      .join(' '),
    caution: cautionText('pressure', 'bottles', 'co2'),
  };
}
