// What does the slurry bring along? Colour, bitterness and alcohol of the old beer in the new.
import { carryOver } from '../carry-over.ts';
import { figure, percent, plain, question } from './ask.ts';

const ebc = (label: string) =>
  ({ kind: 'number', label, says: 'EBC.', unit: 'EBC', min: 0, max: 500 }) as const;
const ibu = (label: string) =>
  ({ kind: 'number', label, says: 'IBU.', unit: 'IBU', min: 0, max: 300 }) as const;
const abv = (label: string) =>
  ({
    kind: 'number',
    label,
    says: 'Per cent by volume.',
    unit: '% by volume',
    min: 0,
    max: 25,
    fallback: 5,
  }) as const;

export const carryQuestion = question({
  id: 'carry',
  title: 'What does the slurry bring along?',
  fields: {
    drawMl: {
      kind: 'number',
      label: 'Slurry',
      says: 'What is pitched, settled.',
      unit: 'mL',
      min: 0,
      max: 10_000_000,
    },
    fromEbc: ebc('Colour of the old beer'),
    fromIbu: ibu('Bitterness of the old beer'),
    fromAbv: abv('Alcohol of the old beer'),
    batchL: {
      kind: 'number',
      label: 'Batch',
      says: 'What it goes into.',
      unit: 'L',
      min: 0.5,
      max: 100_000,
    },
    toEbc: ebc('Colour of the new beer'),
    toIbu: ibu('Bitterness of the new beer'),
    toAbv: abv('Alcohol of the new beer'),
  },
  formula: 'Beer carried = slurry × its beer share; the two beers then mix by volume.',
  range:
    'Settled slurry. Hop matter, roast and spice that cling to the cells are not in it: taste the slurry’s beer.',
  sources: [
    'Beer share 0.6 from 40 % wet solids: Quain; Boulton & Quain 2001, Fig. 7.9',
    'What is noticed: common practice, no source',
  ],
  contradictions: () => [],
  answer(input, s) {
    const c = carryOver(
      {
        ml: input.drawMl,
        from: { ebc: input.fromEbc, ibu: input.fromIbu, abvPercent: input.fromAbv },
      },
      {
        volumeL: input.batchL,
        beer: { ebc: input.toEbc, ibu: input.toIbu, abvPercent: input.toAbv },
      },
      s,
    );
    const signed = (x: number) => `${x > 0 ? '+' : ''}${plain(x)}`;
    return {
      says: [
        `${plain(c.volumeL)} L of the old beer, ${percent(c.volumeL / (input.batchL + c.volumeL))} of the batch.`,
        `Colour ${signed(c.ebcChange)} EBC: ${c.colourNoticed ? 'it will show' : 'it will not show'}.`,
        `Bitterness ${signed(c.ibuChange)} IBU: ${c.bitternessNoticed ? 'it will be tasted' : 'it will not be tasted'}.`,
      ],
      figures: [
        figure('beer carried', c.volumeL, 'L'),
        figure('colour', c.ebcChange, 'EBC'),
        figure('bitterness', c.ibuChange, 'IBU'),
        figure('alcohol', c.abvChange, '% by volume'),
      ],
      beyond: [],
    };
  },
});
