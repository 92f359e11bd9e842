// Chill a large starter so that the yeast settles, and on brew day pour the spent wort off it.
import type { PlannedBrew } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import { type TaskContext, type TaskDraft, type TaskMaker, taskKey } from './context.ts';
import { sayDay } from './days.ts';
import { clock, MINUTES, TAKE_OUT_BEFORE_PITCH } from './effort.ts';
import { sayCells, sayL } from './words.ts';

export const chillDecant: TaskMaker = {
  kind: 'chill-decant',
  make: (context) => context.plan.brews.flatMap((brew) => chillTasks(brew, context)),
};

function chillTasks(brew: PlannedBrew, context: TaskContext): TaskDraft[] {
  const plan = brew.starter;
  if (plan === null || plan.chillOn === null) return [];
  const common = {
    brew: brew.brew,
    amounts: [{ what: 'Starter', value: plan.litres, unit: 'L' }],
    happened: context.isBrewed(brew.brew),
  };
  return [
    {
      ...common,
      key: taskKey('chill-decant', brew.brew, 1),
      day: plan.chillOn,
      minutes: MINUTES.chill[context.house.kind],
      time: null,
      title: `Chill the starter for ${brew.brew}: ${sayL(plan.litres)} into the cold`,
      steps: [
        'See that it has stopped foaming; if not, give it some hours more.',
        'Stop the stirrer and lift the stir bar out with a clean magnet.',
        `Put the starter into the cold, lid loose, and leave it alone until ${sayDay(brew.day)}.`,
      ],
      haveReady: [`Room for ${sayL(plan.litres)} in the cold`],
      goodLooksLike: 'By brew day a firm pale layer lies under clear wort.',
      why: `A starter of ${sayL(plan.litres)} is too much spent wort for ${brew.brew}; cold lets the yeast settle.`,
      caution: cautionText('starter-vent'),
    },
    {
      ...common,
      key: taskKey('chill-decant', brew.brew, 2),
      day: brew.day,
      minutes: MINUTES.decant[context.house.kind],
      time: clock(context.pitchAt(brew.brew) - TAKE_OUT_BEFORE_PITCH),
      title: `Pour the spent wort off the starter for ${brew.brew}`,
      steps: [
        'Take the starter out of the cold without shaking it.',
        'Smell and taste what you pour off: bread and beer; sour or solvent means do not pitch.',
        'Pour the clear wort off and leave just enough to swirl the yeast up.',
        'Let the yeast come up to the temperature of the wort, lid loose.',
        ...(context.harvestOf(brew.brew)?.ofStarter
          ? ['Do not pour it all into the wort: a part of it is kept in a jar.']
          : []),
      ],
      haveReady: ['A sanitised funnel or clean pour', 'A tasting glass'],
      goodLooksLike: `A cream of yeast, about ${sayCells(plan.finalB)} living cells, smelling of bread.`,
      why: `${brew.brew} is pitched today, and the spent wort of the starter would thin it.`,
      caution: cautionText('starter-vent', 'hot-glass'),
    },
  ];
}
