// Did they taste it? A triangle test read, and how many tasters one needs.
import {
  discriminatorShare,
  dPrimeOf,
  MOST_TASTERS,
  tastersNeeded,
  triangleNeeded,
  trianglePValue,
} from '../triangle.ts';
import { figure, percent, plain, predicted, question } from './ask.ts';
import { contradiction } from './field.ts';

const LEVEL = {
  kind: 'choice',
  label: 'Level',
  says: 'Chance of calling alike beers different, in per cent.',
  options: ['10', '5', '1', '0.1'],
  fallback: '5',
} as const;

const SOURCES = [
  'Triangle test: FAO Manual, Appendix A; ISO 4120:2021; exact binomial at one in three',
  'd′: Frijters, Kooistra & Vereijken, Perception & Psychophysics 27, 1980',
];

export const tasteQuestion = question({
  id: 'taste',
  title: 'Did they taste it?',
  fields: {
    tasters: {
      kind: 'number',
      label: 'Tasters',
      says: 'Each with three glasses, two of them alike.',
      unit: 'people',
      min: 3,
      max: MOST_TASTERS,
      whole: true,
    },
    right: {
      kind: 'number',
      label: 'Right answers',
      says: 'Who picked the odd glass.',
      unit: 'people',
      min: 0,
      max: MOST_TASTERS,
      whole: true,
    },
    level: LEVEL,
  },
  formula:
    'Chance that at least so many pick the odd glass by guessing at one in three. The beers differ if that is at most the level.',
  range: `3 to ${MOST_TASTERS} tasters who guess independently.`,
  sources: SOURCES,
  contradictions(input) {
    if (input.right <= input.tasters) return [];
    return [
      contradiction(
        'right',
        `More were right (${input.right}) than tasted (${input.tasters}).`,
        'Give how many of the tasters picked the odd glass.',
      ),
    ];
  },
  answer(input) {
    const level = Number(input.level) / 100;
    const p = trianglePValue(input.right, input.tasters);
    const needed = triangleNeeded(input.tasters, level);
    const share = discriminatorShare(input.right, input.tasters);
    return {
      says: [
        needed === null
          ? `So few tasters can prove nothing at ${input.level} %.`
          : p <= level
            ? `They tasted it: ${input.right} of ${input.tasters} were right and ${needed} were enough.`
            : `Not shown: ${input.right} of ${input.tasters} were right and ${needed} were needed. That does not prove the beers alike.`,
        `Guessing alone does as well in ${plain(p * 100)} % of such tests.`,
      ],
      figures: [
        figure('chance by guessing', p, 'share'),
        figure('right answers needed', needed, 'people'),
        predicted('tasters who tell them apart', share, 'share'),
        figure('d′', dPrimeOf(input.right / input.tasters), 'standard deviations'),
      ],
      beyond: [],
    };
  },
});

export const panelQuestion = question({
  id: 'panel',
  title: 'How many tasters do I need?',
  fields: {
    discriminators: {
      kind: 'share',
      label: 'Tasters who tell the beers apart',
      says: 'The smallest share that would matter to you.',
    },
    level: LEVEL,
    power: {
      kind: 'share',
      label: 'Power',
      says: 'Chance of noticing a difference of that size.',
      fallback: 0.8,
    },
  },
  formula:
    'The first number of tasters at which the exact binomial test at the level notices such a share with that chance.',
  range: `3 to ${MOST_TASTERS} tasters.`,
  sources: SOURCES,
  contradictions: () => [],
  answer(input) {
    const level = Number(input.level) / 100;
    const tasters = tastersNeeded(input.discriminators, level, input.power);
    if (tasters === null)
      return {
        says: [
          `More than ${MOST_TASTERS} tasters: a share of ${percent(input.discriminators)} cannot be found by tasting.`,
        ],
        figures: [],
        beyond: [],
      };
    const needed = triangleNeeded(tasters, level);
    return {
      says: [`${tasters} tasters, of whom ${needed ?? tasters} must pick the odd glass.`],
      figures: [
        figure('tasters', tasters, 'people'),
        figure('right answers needed', needed, 'people'),
      ],
      beyond: [],
    };
  },
});
