// Brew and pitch: into which tank, how much wort, how much of which yeast, and what to write down.
import type { PlannedBrew } from '../model/index.ts';
import { type CautionId, cautionText } from './cautions.ts';
import {
  jarCodesFor,
  saySource,
  type TaskContext,
  type TaskDraft,
  type TaskMaker,
  taskKey,
} from './context.ts';
import { sayDay } from './days.ts';
import { clock, MINUTES } from './effort.ts';
import { partsOf, sayWortPart } from './keep-part.ts';
import { counted, listed, sayCells, sayL, sayMl, saySg, sayShare } from './words.ts';

export const brewPitch: TaskMaker = {
  kind: 'brew-pitch',
  make: (context) =>
    context.plan.brews.flatMap((brew) => [
      pitchTask(brew, context),
      ...furtherTurns(brew, context),
    ]),
};

function pitchTask(brew: PlannedBrew, context: TaskContext): TaskDraft {
  const wanted = context.brew(brew.brew);
  const litres = wanted === undefined ? '' : ` ${sayL(wanted.volumeL)}`;
  const turns = brew.kettle.reduce((sum, turn) => sum + turn.turns, 0);
  const today = brew.kettle.find((turn) => turn.day === brew.day)?.turns ?? 1;
  const { house, settings } = context;
  const cautions: CautionId[] = ['hot-wort', 'burner'];
  if (brew.source.kind !== 'fresh') cautions.push('closed-jar');
  const harvest = context.harvestOf(brew.brew);
  const kept = harvest !== undefined && harvest.jars.length > 0 && !harvest.ofStarter;
  const steps = [
    `Brew ${brew.brew}${brew.style === '' ? '' : ` (${brew.style})`}${
      wanted === undefined ? '' : `:${litres} at ${saySg(wanted.og)}`
    }.`,
    turns > 1
      ? `It takes ${counted(turns, 'turn')} of the kettle; all the yeast goes in with the first.`
      : `Run the wort into ${brew.tank}${wanted === undefined ? '' : ` at ${wanted.fermentC} °C`}.`,
    ...pitchSteps(brew, context),
    `Read the gravity and write it down${
      kept
        ? `: at ${saySg(settings.gravityCeiling)} or more its yeast is not pitched again, so say so at once`
        : ''
    }.`,
    `Write down day, tank and ${brew.source.kind === 'fresh' ? 'packs' : 'mL'}, then mark it brewed.`,
  ];
  return {
    key: taskKey('brew-pitch', brew.brew),
    day: brew.day,
    minutes: MINUTES.brew[house.kind] + (today - 1) * MINUTES.furtherTurn[house.kind],
    time: clock(context.kettleAt(brew.brew)),
    brew: brew.brew,
    title: `Brew ${brew.brew}:${litres} into ${brew.tank}, pitch ${pitched(brew)}`,
    steps,
    amounts: [
      ...(wanted === undefined
        ? []
        : [
            { what: 'Wort', value: wanted.volumeL, unit: 'L' },
            { what: 'Original gravity', value: wanted.og, unit: 'SG' },
            { what: 'Pitch at', value: wanted.fermentC, unit: '°C' },
          ]),
      brew.source.kind === 'fresh'
        ? { what: brew.yeast, value: brew.source.packs, unit: 'packs' }
        : { what: `Slurry of ${brew.yeast}`, value: Math.round(brew.source.drawMl), unit: 'mL' },
      { what: 'Living cells wanted', value: Math.round(brew.needB), unit: 'billion' },
    ],
    haveReady: [
      `${brew.tank}, clean and sanitised`,
      `The yeast: ${pitched(brew)}`,
      ...(brew.source.kind === 'fresh' ? [] : ['A sanitised measuring jug']),
      'Hydrometer and sample jar',
    ],
    goodLooksLike: `Foam within a day (cold lagers within two). The yeast should be ${sayShare(brew.viability.likely)} alive (${sayShare(brew.viability.low)}–${sayShare(brew.viability.high)}).`,
    why: [
      `Why this day and this yeast: see ${brew.brew} on the page.`,
      `Ready on ${sayDay(brew.readyOn)}${
        brew.daysLate > 0 ? `, ${counted(brew.daysLate, 'day')} later than wanted` : ''
      }.`,
    ].join(' '),
    caution: cautionText(...cautions),
    happened: context.isBrewed(brew.brew),
  };
}

function pitched(brew: PlannedBrew): string {
  return brew.starter === null
    ? saySource(brew)
    : `the starter of ${sayL(brew.starter.litres)} from ${saySource(brew)}`;
}

function pitchSteps(brew: PlannedBrew, context: TaskContext): string[] {
  const source = brew.source;
  const parts = partsOf(brew, context);
  if (parts !== null) {
    return [
      `Pour in what is for the wort: ${sayWortPart(parts)}. The rest is kept: see "Keep a part of the starter".`,
      'Air the wort well.',
    ];
  }
  if (brew.starter !== null) {
    return [
      brew.starter.chillOn === null
        ? `Pour in the whole starter, ${sayL(brew.starter.litres)}.`
        : 'Swirl the yeast of the starter up in what beer is left on it and pour all of it in.',
      'Air the wort well.',
    ];
  }
  if (source.kind === 'fresh') {
    return context.yeast(brew.yeast)?.form === 'dry'
      ? [`Sprinkle ${saySource(brew)} on the wort, or soak it first as the pack says.`]
      : [`Open ${saySource(brew)} and pour it in.`, 'Air the wort well.'];
  }
  const codes = jarCodesFor(brew, context);
  const from =
    codes.length > 0 ? ` from ${codes.length > 1 ? 'jars' : 'jar'} ${listed(codes)}` : '';
  return [
    source.ageDays === 0
      ? `Harvest ${source.kind === 'harvest' ? source.brew : ''} first; then swirl the slurry even and measure ${sayMl(source.drawMl)}${from}. It has not settled, so the amount is a guess: rather more than less.`
      : `Swirl the slurry even and measure ${sayMl(source.drawMl)}${from}: about ${sayCells(brew.pitchedB)} living cells.`,
    'Pour it in and air the wort well.',
    'Throw away what remains in an opened jar, and wash the jar.',
  ];
}

/** Later days of a brew that takes more turns of the kettle than one day has. */
function furtherTurns(brew: PlannedBrew, context: TaskContext): TaskDraft[] {
  const later = brew.kettle.filter((turn) => turn.day !== brew.day);
  return later.map((turn, at) => ({
    key: taskKey('brew-pitch', brew.brew, at + 2),
    day: turn.day,
    minutes: turn.turns * MINUTES.furtherTurn[context.house.kind],
    time: clock(context.kettleAt(brew.brew)),
    brew: brew.brew,
    title: `Brew on for ${brew.brew}: ${counted(turn.turns, 'more turn')} into ${brew.tank}`,
    steps: [
      `Brew ${counted(turn.turns, 'more turn')} of ${brew.brew}.`,
      `Run the wort into ${brew.tank} at the temperature of the beer that is in it. No more yeast: the first turn took all of it.`,
      'Read the gravity of the whole tank and write it down.',
    ],
    amounts: [{ what: 'Turns of the kettle', value: turn.turns, unit: 'turns' }],
    haveReady: [`Room in ${brew.tank}`, 'Hydrometer and sample jar'],
    goodLooksLike: 'The foam falls for an hour or two and is back the same day.',
    why: `${brew.brew} fills more than one day of the kettle.`,
    caution: cautionText('hot-wort', 'burner'),
    happened: false,
  }));
}
