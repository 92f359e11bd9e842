// What will the harvest bring? Cells grown, what of them reaches the jars, how many jars, and from which day.
import { platoFromSg } from '../gravity.ts';
import { earliestCropDay, expectedHarvest, grownCellsB } from '../harvest.ts';
import { figure, inDays, plain, predicted, question } from './ask.ts';
import { flocculationField, noWort } from './field.ts';

export const cropQuestion = question({
  id: 'crop',
  title: 'What will the harvest bring?',
  fields: {
    pitchedB: {
      kind: 'number',
      label: 'Living cells pitched',
      says: 'At the start of the fermentation.',
      unit: 'billion',
      min: 0.01,
      max: 10_000_000,
    },
    volumeL: {
      kind: 'number',
      label: 'Beer',
      says: 'In the tank.',
      unit: 'L',
      min: 0.5,
      max: 100_000,
    },
    og: { kind: 'gravity', label: 'Original gravity', says: 'Strong beer is cropped later.' },
    kind: {
      kind: 'choice',
      label: 'Fermentation',
      says: 'A lager takes longer.',
      options: ['ale', 'lager'],
    },
    flocculation: flocculationField('How well this yeast settles.'),
    crashed: { kind: 'yesNo', label: 'Chilled', says: 'Before the harvest, so that more settles.' },
    bottomOutlet: {
      kind: 'yesNo',
      label: 'Bottom outlet',
      says: 'Yeast can be taken while the beer stays in the tank.',
    },
    settleDays: {
      kind: 'number',
      label: 'Days of settling',
      says: 'When the jars are read; two or more is best.',
      unit: 'days',
      min: 0,
      max: 365,
      fallback: 2,
    },
    jarMl: {
      kind: 'number',
      label: 'Jar',
      says: 'Slurry that one holds.',
      unit: 'mL',
      min: 1,
      max: 10_000_000,
      fallback: 500,
    },
  },
  formula:
    'Cells grown = the smaller of growth × living cells pitched and the beer’s ceiling × litres. In the jars = cells grown × the share that is recovered, by flocculation; a low flocculator that was not chilled gives less. Millilitres = cells in the jars ÷ billion per mL.',
  range:
    'Ordinary pitches, to about 20 million per mL; above, the ceiling decides. Yeast alone: trub comes on top.',
  sources: [
    'Growth 3–5 times, 40–80 million per mL at the end: Briggs et al. 2004; Boulton & Quain 2001 (from memory)',
    'What is recovered, and the earliest day: common practice, no source',
  ],
  contradictions: (input) => noWort(input.og),
  answer(input, s) {
    const { pitchedB, volumeL, flocculation, crashed, settleDays, jarMl } = input;
    const crop = expectedHarvest(
      { pitchedViableB: pitchedB, volumeL, flocculation, crashed, settleDays, jarMl },
      s,
    );
    const grown = grownCellsB(pitchedB, volumeL, s);
    const day = earliestCropDay(
      { lager: input.kind === 'lager', ogP: platoFromSg(input.og), flocculation },
      s,
    );
    const { low, likely, high } = crop.settledMl;
    const when = input.bottomOutlet
      ? `It can be drawn from the bottom from ${inDays(day)} after the pitch, before the tank is emptied.`
      : `It comes when the tank is emptied, ${inDays(day)} after the pitch at the earliest.`;
    return {
      says: [
        `About ${plain(likely)} mL, between ${plain(low)} and ${plain(high)} mL: ${plain(crop.jars)} ${crop.jars === 1 ? 'jar' : 'jars'}, ${plain(crop.cellsB)} billion cells.`,
        when,
        ...(crop.atCeiling
          ? ['The beer’s ceiling decides: more pitched would bring no more.']
          : []),
        ...(input.og >= s.gravityCeiling
          ? ['Yeast out of beer this strong is not pitched again in this house.']
          : []),
      ],
      figures: [
        predicted('settled slurry', crop.settledMl, 'mL'),
        figure('cells grown', grown, 'billion'),
        figure('cells in the jars', crop.cellsB, 'billion'),
        figure('recovered', grown > 0 ? crop.cellsB / grown : null, 'share'),
        figure('jars', crop.jars, 'jars'),
        figure('earliest crop, after the pitch', day, 'days'),
      ],
      beyond:
        grown < pitchedB
          ? [
              `More was pitched (${plain(pitchedB)} billion) than such a beer is taken to hold at its end (${plain(grown)} billion): this is outside any model here.`,
            ]
          : [],
      cautions: ['pressure', 'co2', 'no-entry', 'closed-jar'],
    };
  },
});
