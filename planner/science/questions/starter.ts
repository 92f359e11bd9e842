// Do I need a starter? How large, in how many steps, and when to begin.
import { boilingCaution } from '../../tasks/cautions.ts';
import { extractG } from '../starter.ts';
import { starterDecanted, starterLeadDays, starterSettleDays, stepUps } from '../starter-plan.ts';
import { figure, inDays, plain, question } from './ask.ts';
import { flocculationField } from './field.ts';

export const starterQuestion = question({
  id: 'starter',
  title: 'Do I need a starter?',
  fields: {
    haveB: {
      kind: 'number',
      label: 'Living cells at hand',
      says: 'In the pack or the slurry.',
      unit: 'billion',
      min: 0.01,
      max: 1_000_000,
    },
    needB: {
      kind: 'number',
      label: 'Living cells needed',
      says: 'For the brew.',
      unit: 'billion',
      min: 0.01,
      max: 1_000_000,
    },
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
      'How well this yeast settles: a starter of one that settles badly stands longer before it is decanted.',
    ),
  },
  formula:
    'New cells = grams of extract × billion per gram. Stirred about 1.4 billion a gram, less when begun thickly; still by a measured table. One step multiplies at most eightfold. A step grows a day, two if it more than half fills the vessel; then it settles, longer for a low flocculator, where it is decanted.',
  range: 'Starter wort of about 10 °P; up to four steps.',
  sources: [
    'Stirred: Troester, braukaiser.com (from memory)',
    'Still: White & Zainasheff, Yeast, Brewers Publications 2010',
    'Days of settling: common practice, no source',
  ],
  contradictions: () => [],
  answer(input, s) {
    const gear = { maxLitres: input.maxLitres, stirred: input.stirred };
    const steps = stepUps(input.haveB, input.needB, gear, s);
    if (steps === null)
      return {
        says: [
          `${plain(input.haveB)} billion cannot become ${plain(input.needB)} billion in ${plain(input.maxLitres)} L: use more yeast or a larger vessel.`,
        ],
        figures: [],
        beyond: [],
      };
    if (steps.length === 0)
      return {
        says: ['No starter: the yeast at hand is enough.'],
        figures: [figure('starter', 0, 'L')],
        beyond: [],
      };
    const days = starterLeadDays(steps, input.batchL, s, input.flocculation);
    const settles = starterSettleDays(input.flocculation, s);
    const largest = Math.max(...steps.map(({ litres }) => litres));
    return {
      says: steps
        .map((step, i) => {
          const which = steps.length > 1 ? `Step ${i + 1}: ` : '';
          const grown = `${plain(step.litres)} L with ${plain(step.extractG)} g of dry extract grows ${plain(step.startB)} to ${plain(step.endB)} billion in ${inDays(step.growDays)}`;
          const poured = i < steps.length - 1 || starterDecanted(step.litres, input.batchL, s);
          return `${which}${grown}${poured ? `, then ${inDays(settles)} in the cold to settle and decant` : ''}.`;
        })
        .concat(`Begin ${inDays(days)} before pitching.`),
      figures: [
        ...steps.map((step, i) => figure(`starter ${i + 1}`, step.litres, 'L')),
        figure(
          'dry extract',
          steps.reduce((sum, step) => sum + extractG(step.litres, s), 0),
          'g',
        ),
        figure('days before pitching', days, 'days'),
      ],
      beyond: [],
      cautions: [boilingCaution(largest), 'hot-glass', 'starter-vent'],
    };
  },
});
