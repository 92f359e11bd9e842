// Harvest and jar: how many mL into how many jars, what goes on each label, and for whom.
import type { PlannedHarvest } from '../model/index.ts';
import { type CautionId, cautionText } from './cautions.ts';
import {
  type CodedJar,
  type TaskContext,
  type TaskDraft,
  type TaskMaker,
  taskKey,
} from './context.ts';
import { sayDay } from './days.ts';
import { clock } from './effort.ts';
import { jarFor, label } from './jar-label.ts';
import { keepPartTask } from './keep-part.ts';
import { counted, listed, sayMl, saySg } from './words.ts';

export const harvest: TaskMaker = {
  kind: 'harvest',
  make: (context) =>
    // A harvest of which nothing is kept is no work.
    context.plan.harvests.flatMap((one) =>
      one.jars.length === 0
        ? []
        : [one.ofStarter ? keepPartTask(one, context) : harvestTask(one, context)],
    ),
};

function harvestTask(one: PlannedHarvest, context: TaskContext): TaskDraft {
  const { settings, house } = context;
  const jars = context.jarsOf(one);
  const keptMl = jars.reduce((sum, jar) => sum + jar.ml, 0);
  const planned = context.planned(one.brew);
  const staysInTank = planned !== undefined && one.day < planned.emptiedOn;
  const beer = context.brew(one.brew);
  const forWhom = [...new Set(jars.flatMap((jar) => (jar.for === null ? [] : [jar.for])))];
  const largestMl = Math.max(...jars.map((jar) => jar.ml));
  const cautions: CautionId[] = ['pressure', 'co2', 'no-entry', 'closed-jar'];
  return {
    key: taskKey('harvest', one.brew),
    day: one.day,
    minutes: settings.harvestMinutes + jars.length * settings.jarMinutes,
    time: harvestClock(one, jars, context),
    brew: one.brew,
    title: `Harvest ${one.brew}: ${sayMl(keptMl)} into ${counted(jars.length, 'jar')}${
      forWhom.length > 0 ? ` for ${listed(forWhom)}` : ''
    }`,
    steps: [
      `Taste ${one.brew} and read its gravity${
        beer === undefined ? '' : ` (${saySg(beer.fg)} expected)`
      }: harvest only from beer that finished and is clean.`,
      staysInTank
        ? `Draw off the bottom of ${planned.tank} slowly: throw away the first dark part, keep the pale cream, stop when it runs thin.`
        : 'Package the beer first, but for a little to swirl the yeast up with. Pour off the top, keep the pale cream, leave the dark dregs.',
      `Fill ${counted(jars.length, 'jar')}, never more than three quarters full; the yeast settles, so take a little more than the mL that are wanted.`,
      ...jars.map((jar) => `Label: ${label(jar, one)}.`),
      `Put the jars into the cold at ${house.store.tempC} °C, lids loose.`,
      ...(one.settledMl.likely > keptMl * 1.05
        ? [
            `About ${sayMl(one.settledMl.likely - keptMl)} more may come: it is not wanted, throw it away.`,
          ]
        : []),
      'If less comes than said here, say how many mL there are: the plan is made anew from that.',
    ],
    amounts: [
      ...jars.map((jar) => ({ what: jarFor(jar), value: Math.round(jar.ml), unit: 'mL' })),
      { what: 'Expected in all', value: Math.round(one.settledMl.likely), unit: 'mL' },
      { what: 'At least, most times', value: Math.round(one.settledMl.low), unit: 'mL' },
    ],
    haveReady: [
      `${counted(jars.length, 'jar')} with lids, sanitised, each of ${sayMl(largestMl / 0.75)} or more so that a quarter stays empty`,
      'Labels and a waterproof pen',
      `Room for ${counted(jars.length, 'jar')} in the cold`,
      'Hydrometer and sample jar',
    ],
    goodLooksLike: `Thick pale cream that smells of bread and beer; most times ${sayMl(one.settledMl.low)} to ${sayMl(one.settledMl.high)} settle.`,
    why: whyHarvest(jars, forWhom, context),
    caution: cautionText(...cautions),
    happened: context.isHarvested(one.brew),
  };
}

/** Pitched on the day of the harvest, it has to be in hand before the pitch; else any time of the day will do. */
function harvestClock(
  one: PlannedHarvest,
  jars: readonly CodedJar[],
  context: TaskContext,
): string | null {
  const sameDay = jars.flatMap((jar) =>
    jar.for !== null && jar.leavesOn === one.day ? [context.kettleAt(jar.for)] : [],
  );
  return sameDay.length === 0 ? null : clock(Math.min(...sameDay));
}

function whyHarvest(
  jars: readonly CodedJar[],
  forWhom: readonly string[],
  context: TaskContext,
): string {
  const parts = forWhom.map((name) => {
    const brew = context.planned(name);
    return brew === undefined ? name : `${name} on ${sayDay(brew.day)}`;
  });
  const spare = jars.filter((jar) => jar.spare && jar.untilPassed === undefined).length;
  const reserve = jars.find((jar) => jar.untilPassed !== undefined);
  const sentences = [
    parts.length > 0 ? `It pitches ${listed(parts)}.` : '',
    spare > 0 ? `${counted(spare, 'jar')} kept in reserve.` : '',
    reserve === undefined
      ? ''
      : `Jar ${reserve.code} is one jar more: it is kept until ${reserve.untilPassed} is tasted and passed, so that the yeast can be gone back one generation if ${reserve.untilPassed} turns out bad.`,
  ];
  return sentences.filter((text) => text !== '').join(' ');
}
