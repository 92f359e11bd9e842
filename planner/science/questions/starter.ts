// Do I need a starter? How large, in how many steps, and when to begin.

import type { Settings } from '../../model/settings.ts';
import { extractG } from '../starter.ts';
import { starterDecanted, starterLeadDays, stepUps } from '../starter-plan.ts';
import { figure, plain, question } from './ask.ts';

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
  },
  formula:
    'New cells = grams of extract × billion per gram. Stirred about 1.4 billion a gram, less when begun thickly; still by a measured table. One step multiplies at most eightfold.',
  range: 'Starter wort of about 10 °P; up to four steps.',
  sources: [
    'Stirred: Troester, braukaiser.com (from memory)',
    'Still: White & Zainasheff, Yeast, Brewers Publications 2010',
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
    const days = starterLeadDays(steps, input.batchL, s);
    return {
      says: steps
        .map((step, i) => {
          const which = steps.length > 1 ? `Step ${i + 1}: ` : '';
          const grown = `${plain(step.litres)} L with ${plain(step.extractG)} g of dry extract grows ${plain(step.startB)} to ${plain(step.endB)} billion in ${step.growDays === 1 ? 'one day' : 'two days'}`;
          const poured = i < steps.length - 1 || starterDecanted(step.litres, input.batchL, s);
          return `${which}${grown}${poured ? settling(s) : ''}.`;
        })
        .concat(`Begin ${days} ${days === 1 ? 'day' : 'days'} before pitching.`),
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
    };
  },
});

/** How long it then stands before it is poured off. */
function settling(s: Settings): string {
  const days = (n: number) => (n === 1 ? 'a day' : `${n} days`);
  return `, then ${days(s.starterSettleDays)} in the cold to settle and decant (low flocculators ${days(s.starterSettleDaysLow)})`;
}
