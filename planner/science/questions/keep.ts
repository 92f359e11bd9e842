// How large a starter, so that a part of it can be kept? Built larger on purpose, divided, one part into a jar.
import { boilingCaution } from '../../tasks/cautions.ts';
import { densityBPerMl } from '../slurry.ts';
import {
  buildAndKeep,
  starterDecanted,
  starterLeadDays,
  starterSettleDays,
} from '../starter-plan.ts';
import { type Found, figure, inDays, percent, plain, predicted, question } from './ask.ts';
import { flocculationField } from './field.ts';

const cells = (label: string, says: string) =>
  ({ kind: 'number', label, says, unit: 'billion', min: 0.01, max: 1_000_000 }) as const;

/** Days in the cold after which the kept part is read as settled. */
const READ_AFTER_DAYS = 2;

export const keepQuestion = question({
  id: 'keep',
  title: 'How large a starter, to keep some of it?',
  fields: {
    haveB: cells('Living cells at hand', 'In the pack or packs that begin it.'),
    pitchB: cells('Living cells to pitch', 'What the brew needs.'),
    keepB: cells('Living cells to keep', 'What goes into the jar for a later brew.'),
    batchL: {
      kind: 'number',
      label: 'Batch',
      says: 'A starter that is large against it is decanted.',
      unit: 'L',
      min: 0.5,
      max: 100_000,
    },
    maxLitres: {
      kind: 'number',
      label: 'Largest starter',
      says: 'What the vessel holds.',
      unit: 'L',
      min: 0.05,
      max: 100_000,
      fallback: 3,
    },
    stirred: { kind: 'yesNo', label: 'Stirred', says: 'On a stir plate or shaken all along.' },
    flocculation: flocculationField(
      'How well this yeast settles: it says how long it stands cold, and how much of the jar it fills.',
    ),
  },
  formula:
    'The starter is made for both parts: cells to pitch + cells to keep. New cells = grams of extract × billion per gram, as in any starter, in one step of at most eightfold. The part to keep = cells to keep ÷ both, poured off while all is stirred up. Its settled millilitres = cells to keep ÷ billion per mL.',
  range:
    'One step from packs in starter wort of about 10 °P. From slurry the kept part is of the slurry’s own generation, not 0.',
  sources: [
    'Stirred: Troester, braukaiser.com (from memory)',
    'Still: White & Zainasheff, Yeast, Brewers Publications 2010',
    'Keeping a part, and days of settling: common practice, no source',
  ],
  contradictions: () => [],
  answer(input, s): Found {
    const both = input.pitchB + input.keepB;
    const share = input.keepB / both;
    const density = densityBPerMl(input.flocculation, READ_AFTER_DAYS, s);
    const jarMl = {
      low: input.keepB / density.high,
      likely: input.keepB / density.likely,
      high: input.keepB / density.low,
    };
    if (input.haveB >= both)
      return {
        says: [
          `No starter: ${plain(input.haveB)} billion are enough for ${plain(both)}. Pitch ${plain(input.pitchB)} of them and keep the rest.`,
        ],
        figures: [figure('starter', 0, 'L')],
        beyond: [],
        cautions: ['closed-jar'],
      };
    const gear = { maxLitres: input.maxLitres, stirred: input.stirred };
    const kept = buildAndKeep(input.haveB, input.pitchB, input.keepB, gear, s);
    if (kept === null)
      return {
        says: [
          `${plain(input.haveB)} billion cannot become ${plain(both)} billion in one step in ${plain(input.maxLitres)} L: keep less, begin with more yeast, or take a larger vessel.`,
        ],
        figures: [],
        beyond: [],
      };
    // The jar's part is poured off first: only the rest meets the brew, or is settled for it.
    const pitchedL = kept.litres * (1 - kept.keepShare);
    const days = starterLeadDays(
      [{ ...kept, litres: pitchedL }],
      input.batchL,
      s,
      input.flocculation,
    );
    const settles = starterSettleDays(input.flocculation, s);
    const rest = starterDecanted(pitchedL, input.batchL, s)
      ? `stands ${inDays(settles)} in the cold, is decanted and pitched`
      : 'is pitched whole';
    return {
      says: [
        `${plain(kept.litres)} L with ${plain(kept.extractG)} g of dry extract grow ${plain(kept.startB)} to ${plain(kept.endB)} billion in ${inDays(kept.growDays)}.`,
        `Stir it up, pour ${plain(kept.litres * kept.keepShare)} L of it (${percent(share)}) into a jar; the rest ${rest}.`,
        `Begin ${inDays(days)} before pitching. Label the jar with strain, day and generation ${kept.generation}: begun from packs, it is still their own yeast.`,
      ],
      figures: [
        predicted('settled in the jar', jarMl, 'mL'),
        figure('starter', kept.litres, 'L'),
        figure('dry extract', kept.extractG, 'g'),
        figure('poured into the jar', kept.litres * kept.keepShare, 'L'),
        figure('days before pitching', days, 'days'),
      ],
      beyond: [],
      cautions: [boilingCaution(kept.litres), 'hot-glass', 'starter-vent', 'closed-jar'],
    };
  },
});
