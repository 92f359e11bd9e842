// How strong is it? What two gravities say about extract, alcohol and attenuation.
import {
  abvPercent,
  abwPercent,
  apparentAttenuation,
  apparentExtract,
  platoFromSg,
  realAttenuation,
  realExtract,
} from '../gravity.ts';
import { figure, plain, question } from './ask.ts';
import { contradiction, noWort } from './field.ts';

export const beerQuestion = question({
  id: 'beer',
  title: 'How strong is it?',
  fields: {
    og: { kind: 'gravity', label: 'Original gravity', says: 'Before fermentation, like 1.048.' },
    fg: { kind: 'gravity', label: 'Final gravity', says: 'After fermentation, like 1.010.' },
  },
  formula:
    'Real extract = 0.1808 × original + 0.8192 × apparent extract. Alcohol by weight = (original − real) ÷ (2.0665 − 0.010665 × original). By volume = by weight × final gravity ÷ 0.7907.',
  range: '1.000–1.150 at 20 °C.',
  sources: [
    'Extract: NBS Circular 440 (1942), cubic fit',
    'Alcohol: Balling’s relation; ASBC Beer-4 (from memory)',
  ],
  contradictions(input) {
    const problems = noWort(input.og);
    if (input.fg > input.og)
      problems.push(
        contradiction(
          'fg',
          `The final gravity (${input.fg}) is above the original (${input.og}).`,
          'Swap the two, or read them again at the same temperature.',
        ),
      );
    return problems;
  },
  answer({ og, fg }) {
    const abv = abvPercent(og, fg);
    return {
      says: [
        `${plain(platoFromSg(og))} °P, fermented to ${plain(apparentExtract(fg))} °P: ${plain(abv)} % alcohol by volume.`,
      ],
      figures: [
        figure('original extract', platoFromSg(og), '°P'),
        figure('apparent extract', apparentExtract(fg), '°P'),
        figure('real extract', realExtract(og, fg), '°P'),
        figure('alcohol by volume', abv, '%'),
        figure('alcohol by weight', abwPercent(og, fg), '%'),
        figure('apparent attenuation', apparentAttenuation(og, fg), 'share'),
        figure('real attenuation', realAttenuation(og, fg), 'share'),
      ],
      beyond: og > 1.15 ? ['Above 1.150 no table of gravities has been compared.'] : [],
    };
  },
});
