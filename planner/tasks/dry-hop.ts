// Dry hop: after the yeast has been taken where that is planned, and never on a day without hands.
import type { PlannedBrew } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import { type TaskContext, type TaskDraft, type TaskMaker, taskKey } from './context.ts';
import { latest, placeOn, plusDays, sayDay } from './days.ts';
import { MINUTES } from './effort.ts';
import { sayL } from './words.ts';

export const dryHop: TaskMaker = {
  kind: 'dry-hop',
  make: (context) =>
    context.plan.brews.flatMap((brew) =>
      brew.dryHopOn === null ? [] : [dryHopTask(brew, brew.dryHopOn, context)],
    ),
};

/** The harvest of this beer that the hops must wait for, if there is one. */
function harvestBefore(brew: PlannedBrew, dryHopOn: string, context: TaskContext): string | null {
  const harvest = context.harvestOf(brew.brew);
  if (harvest === undefined || harvest.jars.length === 0) return null;
  return harvest.day <= dryHopOn ? harvest.day : null;
}

function dryHopTask(brew: PlannedBrew, dryHopOn: string, context: TaskContext): TaskDraft {
  const after = harvestBefore(brew, dryHopOn, context);
  const placed = placeOn(dryHopOn, {
    allowed: context.hands.short,
    from: latest(plusDays(brew.day, 1), after ?? ''),
    to: plusDays(brew.emptiedOn, -1),
  });
  const litres = context.brew(brew.brew)?.volumeL;
  return {
    key: taskKey('dry-hop', brew.brew),
    day: placed.day,
    minutes: MINUTES.dryHop[context.house.kind],
    time: null,
    brew: brew.brew,
    title: `Dry hop ${brew.brew} in ${brew.tank}`,
    steps: [
      ...(after === null
        ? []
        : [
            `See that the yeast was harvested (${sayDay(after)}): beer with hops in it gives none.`,
          ]),
      'Let the pressure out of the tank.',
      `Weigh the hops of the recipe${litres === undefined ? '' : ` for ${sayL(litres)}`} and add them a handful at a time.`,
      'Close the tank and write the day down.',
    ],
    amounts: litres === undefined ? [] : [{ what: 'Beer', value: litres, unit: 'L' }],
    haveReady: ['The hops, weighed', 'A sanitised scoop'],
    goodLooksLike: 'Little foam, and no hops left hanging above the beer.',
    why: [
      `The recipe of ${brew.brew} hops it on ${sayDay(dryHopOn)}.`,
      after === null
        ? 'Its yeast is not kept after this.'
        : 'Its yeast is taken before the hops go in.',
      placed.why,
    ]
      .filter(Boolean)
      .join(' '),
    caution: cautionText('gush', 'co2', 'pressure', 'ladder'),
    happened: context.isPackaged(brew.brew),
  };
}
