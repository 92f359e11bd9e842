// Keep a part of a starter: how it is divided on brew day, what goes into the jar and on its label, and for whom.
import type { PlannedBrew, PlannedHarvest } from '../model/index.ts';
import { cautionText } from './cautions.ts';
import { type TaskContext, type TaskDraft, taskKey } from './context.ts';
import { sayDay } from './days.ts';
import { clock } from './effort.ts';
import { jarFor, label } from './jar-label.ts';
import { counted, listed, sayCells, sayL, sayMl, sayShare } from './words.ts';

/** Minutes between the dividing and the pitch. Common practice, no source. */
const BEFORE_PITCH = 30;

export type Parts = {
  /** Shares of the whole starter: into the wort, into the jars. */
  wort: number;
  jars: number;
  /** Its litres, and whether its spent wort was poured off before it is divided. */
  litres: number;
  decanted: boolean;
};

/** How the starter of a brew is divided; null where nothing of it is kept, or it is no longer known. */
export function partsOf(brew: PlannedBrew, context: TaskContext): Parts | null {
  const { starter } = brew;
  const kept = context.harvestOf(brew.brew);
  if (!kept?.ofStarter || starter === null || starter.finalB <= 0 || kept.jars.length === 0)
    return null;
  const ml = kept.jars.reduce((sum, jar) => sum + jar.ml, 0);
  const livingB = (ml / Math.max(kept.settledMl.likely, 1e-9)) * kept.cellsB;
  return {
    wort: brew.pitchedB / starter.finalB,
    jars: (livingB * kept.cropViability.likely) / starter.finalB,
    litres: starter.litres,
    decanted: starter.chillOn !== null,
  };
}

/** What goes into the wort, as a step of the brew day says it. */
export const sayWortPart = (parts: Parts): string =>
  parts.decanted
    ? `${sayShare(parts.wort)} of the starter's yeast`
    : `${sayL(parts.litres * parts.wort)} of the starter (${sayShare(parts.wort)})`;

/** Said as a harvest is, since the jar is told, read, drawn and thrown away as one. */
export function keepPartTask(one: PlannedHarvest, context: TaskContext): TaskDraft {
  const { settings, house } = context;
  const jars = context.jarsOf(one);
  const keptMl = jars.reduce((sum, jar) => sum + jar.ml, 0);
  const planned = context.planned(one.brew);
  const parts = planned === undefined ? null : partsOf(planned, context);
  const forWhom = [...new Set(jars.flatMap((jar) => (jar.for === null ? [] : [jar.for])))];
  const into = counted(jars.length, 'jar');
  const largestMl = Math.max(...jars.map((jar) => jar.ml));
  const rest = parts === null ? 0 : 1 - parts.wort - parts.jars;
  return {
    key: taskKey('harvest', one.brew),
    day: one.day,
    minutes: jars.length * settings.jarMinutes,
    time: clock(context.pitchAt(one.brew) - BEFORE_PITCH),
    brew: one.brew,
    title: `Keep a part of the starter for ${one.brew}: ${sayMl(keptMl)} into ${into}${
      forWhom.length > 0 ? ` for ${listed(forWhom)}` : ''
    }`,
    steps: [
      'Smell and taste it first: bread and beer. If it is sour or smells of solvent, keep nothing of it and pitch nothing of it.',
      ...(parts === null
        ? []
        : [
            parts.decanted
              ? `With the spent wort poured off, swirl the yeast up until it is even all through: ${sayShare(parts.jars)} of it goes into ${into}, ${sayShare(parts.wort)} into ${one.brew}.`
              : `Swirl the starter up until it is even all through: ${sayL(parts.litres * parts.jars)} of it (${sayShare(parts.jars)}) go into ${into}, ${sayL(parts.litres * parts.wort)} (${sayShare(parts.wort)}) into ${one.brew}.`,
          ]),
      `Fill ${into}, sanitised, never more than three quarters full: about ${sayMl(keptMl)} of yeast settle in the cold.`,
      ...jars.map((jar) => `Label: ${label(jar, one)}.`),
      `Put the ${jars.length === 1 ? 'jar' : 'jars'} into the cold at ${house.store.tempC} °C, lids loose.`,
      ...(rest > 0.02
        ? [`About ${sayShare(rest)} is left over: it is not wanted, pour it away.`]
        : []),
      'If there is less than said here, the wort comes first. Say how many mL are in the jar: the plan is made anew from that.',
    ],
    amounts: [
      ...jars.map((jar) => ({ what: jarFor(jar), value: Math.round(jar.ml), unit: 'mL' })),
      ...(planned?.starter
        ? [{ what: 'The whole starter', value: planned.starter.litres, unit: 'L' }]
        : []),
    ],
    haveReady: [
      `${into} with lids, sanitised, each of ${sayMl(largestMl / 0.75)} or more so that a quarter stays empty`,
      'A sanitised measuring jug',
      'Labels and a waterproof pen',
      `Room for ${into} in the cold`,
    ],
    goodLooksLike:
      planned?.starter === undefined || planned.starter === null
        ? 'Pale and even, smelling of bread and beer.'
        : `Pale and even, smelling of bread and beer; about ${sayCells(planned.starter.finalB)} living cells in all.`,
    why: [
      `The starter was made larger on purpose, so that ${forWhom.length > 0 ? listed(forWhom.map((name) => dayOf(name, context))) : 'a later brew'} needs no pack.`,
      `It has been in no beer and stays generation ${one.generation}. How long a starter keeps in a jar is a guess: check it before it is pitched.`,
    ].join(' '),
    caution: cautionText('starter-vent', 'closed-jar'),
    happened: context.isHarvested(one.brew),
  };
}

function dayOf(name: string, context: TaskContext): string {
  const brew = context.planned(name);
  return brew === undefined ? name : `${name} on ${sayDay(brew.day)}`;
}
