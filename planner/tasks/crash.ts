// Crash: cool the beer so that the yeast drops before it is harvested or packaged.
import type { PlannedBrew } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import { type TaskContext, type TaskDraft, type TaskMaker, taskKey } from './context.ts';
import { placeOn, plusDays, sayDay } from './days.ts';
import { MINUTES } from './effort.ts';
import { saySg } from './words.ts';

export const crash: TaskMaker = {
  kind: 'crash',
  make: (context) =>
    context.plan.brews.flatMap((brew) =>
      brew.crashOn === null ? [] : [crashTask(brew, brew.crashOn, context)],
    ),
};

function crashTask(brew: PlannedBrew, crashOn: string, context: TaskContext): TaskDraft {
  const harvest = context.harvestOf(brew.brew);
  const forHarvest = harvest !== undefined && harvest.jars.length > 0 && harvest.day >= crashOn;
  const placed = placeOn(crashOn, {
    allowed: context.hands.short,
    from: plusDays(brew.day, 1),
    to: plusDays(forHarvest ? harvest.day : brew.emptiedOn, -1),
  });
  const fg = context.brew(brew.brew)?.fg;
  const crashC = context.settings.crashC;
  return {
    key: taskKey('crash', brew.brew),
    day: placed.day,
    minutes: MINUTES.crash[context.house.kind],
    time: null,
    brew: brew.brew,
    title: `Crash ${brew.brew}: set ${brew.tank} to ${crashC} °C`,
    steps: [
      `Read the gravity: it should be steady${fg === undefined ? '' : ` near ${saySg(fg)}`}. If it still falls, leave it warm and say that it is slow.`,
      'Taste for butter: if there is any, leave it warm two days more and say so.',
      `Set ${brew.tank} to ${crashC} °C.`,
      'Cooling draws in what lies in the blow-off tube: close it or feed CO2 at low pressure first, so that neither air nor water gets in.',
    ],
    amounts: [
      { what: 'Crash to', value: crashC, unit: '°C' },
      ...(fg === undefined ? [] : [{ what: 'Final gravity', value: fg, unit: 'SG' }]),
    ],
    haveReady: ['Hydrometer and sample jar', 'CO2, or a way to keep air out'],
    goodLooksLike: 'The beer is cold within a day or two and clears from the top.',
    why: [
      forHarvest
        ? `Cold drops the yeast for the harvest on ${sayDay(harvest.day)}.`
        : `Cold clears the beer before it is packaged on ${sayDay(brew.emptiedOn)}.`,
      placed.why,
    ]
      .filter(Boolean)
      .join(' '),
    caution: cautionText('vacuum', 'co2'),
    happened: context.isPackaged(brew.brew),
  };
}
