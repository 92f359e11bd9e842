// Check the jar: does the slurry smell right and did its beer turn out well, while the fallback still saves the day.
import type { PlannedBrew } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import {
  jarCodesFor,
  saySource,
  type TaskContext,
  type TaskDraft,
  type TaskMaker,
  taskKey,
} from './context.ts';
import { placeOn, sayDay } from './days.ts';
import { clock } from './effort.ts';
import { asSentence, listed, saySg } from './words.ts';

export const checkJar: TaskMaker = {
  kind: 'check-jar',
  make: (context) =>
    context.plan.brews.flatMap((brew) =>
      brew.checkOn === null || brew.source.kind === 'fresh'
        ? []
        : [checkTask(brew, brew.checkOn, context)],
    ),
};

function checkTask(brew: PlannedBrew, checkOn: string, context: TaskContext): TaskDraft {
  const placed = placeOn(checkOn, {
    allowed: context.hands.short,
    from: firstDay(brew, context),
    to: checkOn,
  });
  const source = brew.source;
  // what was kept of a starter has been in no beer that could be tasted
  const ofBeer = source.kind === 'harvest' && source.ofStarter !== true;
  const beer = ofBeer ? context.brew(source.brew) : undefined;
  const inTank = ofBeer && placed.day < source.harvestedOn;
  const codes = jarCodesFor(brew, context);
  const jars =
    codes.length > 0 ? `${codes.length > 1 ? 'jars' : 'jar'} ${listed(codes)}` : 'the jar';
  const title =
    ofBeer && inTank
      ? `Check ${source.brew} in its tank: its yeast is for ${brew.brew}`
      : `Check ${jars} for ${brew.brew}`;
  const decide = brew.fallback.decideBy;
  const steps: string[] = [];
  if (ofBeer) {
    steps.push(
      beer === undefined
        ? `Read the gravity of ${source.brew}: did it finish where it should?`
        : `Read the gravity of ${source.brew}: it should finish within 0.003 of ${saySg(beer.fg)}.`,
      `Taste ${source.brew}: clean, not sour, not like glue, no clove or smoke unless this yeast is known for it.`,
    );
  }
  if (!inTank) {
    if (source.kind === 'harvest' && placed.day === source.harvestedOn) {
      steps.push(
        ofBeer
          ? 'The jar is filled today: check it after the harvest.'
          : 'The jar is filled today: check it when it has been filled.',
      );
    }
    steps.push(
      `Let the gas out of ${jars}, then smell the slurry: bread and beer, not meat, rubber, vinegar or cheese.`,
      'Look at it: one cream-coloured layer, no skin, no fur, no pink or dark streaks.',
      `Read how many mL have settled: ${saySource(brew)} is wanted.`,
    );
  }
  steps.push(
    `If anything is wrong, do not pitch it. ${asSentence(brew.fallback.says)}${
      decide === null || brew.fallback.kind === 'none' || decide === placed.day
        ? ''
        : ` Decide by ${sayDay(decide)}.`
    }`,
  );
  return {
    key: taskKey('check-jar', brew.brew),
    day: placed.day,
    minutes: context.settings.checkMinutes,
    // On brew day it is checked before the kettle is lit.
    time: placed.day === brew.day ? clock(context.kettleAt(brew.brew) - 60) : null,
    brew: brew.brew,
    title,
    steps,
    amounts: [
      {
        what: 'Slurry wanted',
        value: Math.round(source.kind === 'fresh' ? 0 : source.drawMl),
        unit: 'mL',
      },
      ...(beer === undefined
        ? []
        : [{ what: `Final gravity of ${beer.brew}`, value: beer.fg, unit: 'SG' }]),
    ],
    haveReady: inTank
      ? ['Hydrometer and sample jar', 'A tasting glass']
      : ['A clean spoon or pipette', 'Hydrometer and sample jar', 'The label of the jar'],
    goodLooksLike: `${ofBeer || source.kind === 'jar' ? 'The beer finished where it should and tastes clean; the' : 'The'} slurry smells of bread and beer; there is enough of it.`,
    why: [
      `${brew.brew} is pitched from it on ${sayDay(brew.day)}.`,
      brew.fallback.kind === 'none'
        ? 'Nothing else would be there in time, so it is well to know early.'
        : 'Checked now, the fallback still saves that day.',
      placed.why,
    ]
      .filter(Boolean)
      .join(' '),
    caution: inTank ? cautionText('pressure', 'co2') : cautionText('closed-jar'),
    happened: context.isBrewed(brew.brew),
  };
}

/** A jar filled from a starter is there from its brew day on; a beer can be tasted in its tank before that. */
function firstDay({ source }: PlannedBrew, context: TaskContext): string {
  const { today } = context.plan;
  if (source.kind !== 'harvest' || !source.ofStarter) return today;
  return source.harvestedOn > today ? source.harvestedOn : today;
}
