// Take the yeast out of the cold some hours before the pitch, so that it is near the temperature of the wort.
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
import { clock, MINUTES, TAKE_OUT_BEFORE_PITCH } from './effort.ts';
import { listed } from './words.ts';

export const takeOut: TaskMaker = {
  kind: 'take-out',
  make: (context) => context.plan.brews.flatMap((brew) => takeOutTask(brew, context)),
};

function takeOutTask(brew: PlannedBrew, context: TaskContext): TaskDraft[] {
  const source = brew.source;
  const packs = source.kind === 'fresh';
  // A starter took it out already; dry packs stay cold until they are opened; slurry of today was never cold.
  if (brew.starter !== null) return [];
  if (packs && context.yeast(brew.yeast)?.form === 'dry') return [];
  if (!packs && source.ageDays === 0) return [];
  const codes = jarCodesFor(brew, context);
  const what = packs
    ? saySource(brew)
    : `${codes.length > 1 ? 'jars' : 'jar'} ${codes.length > 0 ? listed(codes) : `out of ${saySource(brew)}`}`;
  return [
    {
      key: taskKey('take-out', brew.brew),
      day: brew.day,
      minutes: MINUTES.takeOut[context.house.kind],
      time: clock(context.pitchAt(brew.brew) - TAKE_OUT_BEFORE_PITCH),
      brew: brew.brew,
      title: `Take ${what} out of the cold for ${brew.brew}`,
      steps: packs
        ? [
            `Take ${what} out of the cold.`,
            'Read strain and date on each pack.',
            'Let them come up to room temperature, out of the sun.',
          ]
        : [
            `Loosen the lid of ${what}, then take it out of the cold.`,
            `Read the label: strain ${brew.yeast}, generation ${brew.generation} (a fresh pack is 0).`,
            'Smell it once more: bread and beer. If not, stop and use the fallback.',
            'Pour off the beer that stands on top and leave the yeast.',
            'Stand it in a tray, lid loose, away from the sun, until the pitch.',
          ],
      amounts: packs
        ? [{ what: brew.yeast, value: source.packs, unit: 'packs' }]
        : [{ what: 'Slurry to pitch', value: Math.round(source.drawMl), unit: 'mL' }],
      haveReady: packs ? ['Scissors, sanitised'] : ['A tray', 'A sanitised measuring jug'],
      goodLooksLike: packs
        ? 'Packs of the right strain, in date and not leaking.'
        : 'The lid hisses a little, no more; the slurry is cream-coloured and smells of bread and beer.',
      why: `${brew.brew} is pitched today; yeast that is near the temperature of the wort starts sooner.`,
      caution: cautionText(
        packs ? 'swollen-pack' : 'warming-jar',
        ...(packs ? [] : (['closed-jar'] as const)),
      ),
      happened: context.isBrewed(brew.brew),
    },
  ];
}
