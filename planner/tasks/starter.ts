// Make the starter: how much wort, which yeast goes in, and how long it grows.
import type { PlannedBrew } from '../model/index.ts';
import { boilingCaution, type CautionId, cautionText } from './cautions.ts';
import { saySource, type TaskContext, type TaskDraft, type TaskMaker, taskKey } from './context.ts';
import { sayDay } from './days.ts';
import { clock, FRESH_START_BEFORE_PITCH, MINUTES } from './effort.ts';
import { counted, listed, sayCells, sayL } from './words.ts';

export const starter: TaskMaker = {
  kind: 'starter',
  make: (context) => context.plan.brews.flatMap((brew) => starterTask(brew, context)),
};

function starterTask(brew: PlannedBrew, context: TaskContext): TaskDraft[] {
  const plan = brew.starter;
  if (plan === null) return [];
  const { settings, house } = context;
  const kept = context.harvestOf(brew.brew)?.ofStarter;
  const sameDay = plan.startOn === brew.day;
  const later = plan.chillOn === null ? 0 : MINUTES.chill[house.kind] + MINUTES.decant[house.kind];
  const cautions: CautionId[] = [boilingCaution(plan.litres), 'hot-glass', 'starter-vent'];
  if (brew.source.kind !== 'fresh') cautions.push('closed-jar');
  return [
    {
      key: taskKey('starter', brew.brew),
      day: plan.startOn,
      minutes: Math.max(10, settings.starterMinutes - later),
      time: sameDay ? clock(context.pitchAt(brew.brew) - FRESH_START_BEFORE_PITCH) : null,
      brew: brew.brew,
      title: `Make a starter of ${sayL(plan.litres)} for ${brew.brew} from ${saySource(brew)}`,
      steps: [
        `Boil ${Math.round(plan.extractG)} g of dry malt extract in water for 10 minutes, so that ${sayL(plan.litres)} remain.`,
        'Cover it and cool it to 20–25 °C.',
        `Put in ${saySource(brew)}: about ${sayCells(plan.initialB)} living cells.`,
        growing(plan.growDays, house.starterGear.stirred),
        plan.chillOn === null
          ? `${kept === undefined ? 'All of it goes' : 'It goes'} into ${brew.brew} on ${sayDay(brew.day)}${kept === undefined ? '' : ', but for the part that is kept'}.`
          : `It is chilled on ${sayDay(plan.chillOn)} and poured off on ${sayDay(brew.day)}.`,
      ],
      amounts: [
        { what: 'Starter wort', value: plan.litres, unit: 'L' },
        { what: 'Dry malt extract', value: Math.round(plan.extractG), unit: 'g' },
        ...seed(brew),
        { what: 'Living cells it should give', value: Math.round(plan.finalB), unit: 'billion' },
      ],
      haveReady: [
        `A vessel that holds ${sayL(plan.litres * 1.3)} or more, clean and sanitised`,
        ...(house.starterGear.stirred ? ['The stirrer'] : []),
        'Dry malt extract',
        'Foil or a foam stopper',
      ],
      goodLooksLike:
        plan.growDays === 0
          ? 'Foam or rising bubbles before it is pitched.'
          : 'Cloudy and foaming within a day, then a pale layer of yeast when it stands; it smells of bread and beer.',
      why: reason(brew, plan.initialB, context),
      caution: cautionText(...cautions),
      happened: context.isBrewed(brew.brew),
    },
  ];
}

/** Why a starter is made: the yeast at hand is too little, or it would do and the harvest is to be larger. */
function reason(brew: PlannedBrew, seedB: number, context: TaskContext): string {
  const needs = `${brew.brew} needs ${sayCells(brew.needB)} living cells on ${sayDay(brew.day)}`;
  const holds = `${saySource(brew)} holds about ${sayCells(seedB)}`;
  const harvest = context.plan.harvests.find((one) => one.brew === brew.brew);
  if (harvest?.ofStarter) {
    const takers = [...new Set(harvest.jars.flatMap((jar) => jar.for ?? []))];
    return `${needs}; ${holds}. It is made larger, so that a part can be kept in a jar${takers.length > 0 ? ` for ${listed(takers)}` : ''}.`;
  }
  if (seedB < brew.needB) return `${needs}; ${holds}.`;
  const fed = [...new Set(harvest?.jars.flatMap((jar) => jar.for ?? []))];
  const harvested =
    fed.length > 0
      ? `so that its harvest is large enough for ${fed.join(', ')}`
      : 'to be sure of it';
  return `${needs}, and ${holds}: that would do. The starter makes ${sayCells(brew.pitchedB)} of it ${harvested}.`;
}

function growing(days: number, stirred: boolean): string {
  if (days === 0)
    return 'Keep it at room temperature until it is pitched today, and shake it now and then.';
  const span = counted(days, 'day');
  return stirred
    ? `Let it grow on the stirrer at room temperature for ${span}.`
    : `Let it grow at room temperature for ${span}, and shake it whenever you pass.`;
}

function seed(brew: PlannedBrew): TaskDraft['amounts'] {
  return brew.source.kind === 'fresh'
    ? [{ what: brew.yeast, value: brew.source.packs, unit: 'packs' }]
    : [{ what: 'Slurry', value: Math.round(brew.source.drawMl), unit: 'mL' }];
}
