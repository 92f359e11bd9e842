// How much slurry is that by weight? A scale is steadier than a line read through foam and glass.
import { slurryGPerMl, slurryMlFromG } from '../counting.ts';
import { figure, plain, question } from './ask.ts';
import { contradiction } from './field.ts';

export const weighQuestion = question({
  id: 'weigh',
  title: 'How much slurry is that by weight?',
  fields: {
    fullG: {
      kind: 'number',
      label: 'Jar with slurry',
      says: 'The beer above it poured off.',
      unit: 'g',
      min: 0.1,
      max: 20_000_000,
    },
    emptyG: {
      kind: 'number',
      label: 'Empty jar',
      says: 'With its lid, if the lid was weighed too; 0 if the scale was set to nothing with it.',
      unit: 'g',
      min: 0,
      max: 20_000_000,
      fallback: 0,
    },
    fg: {
      kind: 'gravity',
      label: 'Gravity of the beer',
      says: 'The finished beer that the slurry lay under, like 1.010.',
      fallback: 1.01,
    },
  },
  formula:
    'Millilitres = grams ÷ (beer share × gravity of the beer + the rest × 1.11 g per mL of cells).',
  range: 'Settled slurry, without the beer above it. Foam and gas weigh nothing: no need to wait.',
  sources: [
    'Beer share 0.6 from 40 % wet solids: Quain; Boulton & Quain 2001, Fig. 7.9',
    'Cells of 1.08–1.13 g per mL (from memory)',
  ],
  contradictions(input) {
    if (input.emptyG < input.fullG) return [];
    return [
      contradiction(
        'emptyG',
        `The empty jar (${input.emptyG} g) weighs as much as the jar with slurry (${input.fullG} g) or more.`,
        'Swap the two, or weigh again.',
      ),
    ];
  },
  answer(input, s) {
    const grams = input.fullG - input.emptyG;
    const ml = slurryMlFromG(grams, input.fg, s);
    return {
      says: [`${plain(grams)} g of slurry are ${plain(ml)} mL.`],
      figures: [
        figure('slurry', ml, 'mL'),
        figure('weight of a millilitre', slurryGPerMl(input.fg, s), 'g per mL'),
      ],
      beyond: [],
      cautions: ['closed-jar'],
    };
  },
});
