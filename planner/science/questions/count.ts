// What did I count? Squares of a counting chamber and stained cells, to cells per mL and a share alive.
import { countCells, countViability, NEUBAUER_ML, type NeubauerSquare } from '../counting.ts';
import { figure, percent, plain, predicted, question } from './ask.ts';
import { contradiction } from './field.ts';

const SQUARES = Object.keys(NEUBAUER_ML) as NeubauerSquare[];

export const countQuestion = question({
  id: 'count',
  title: 'What did I count?',
  fields: {
    perSquare: {
      kind: 'counts',
      label: 'Cells in each square',
      says: 'One number for each square, stained cells included.',
      most: 400,
    },
    square: {
      kind: 'choice',
      label: 'Square',
      says: 'Of an improved Neubauer chamber: large 1 mm, corner 0.25 mm, central 0.2 mm, small 0.05 mm.',
      options: SQUARES,
    },
    dilution: {
      kind: 'number',
      label: 'Dilution',
      says: 'Total, the stain included: 1 in 100 and then 1:1 with stain is 200.',
      unit: 'times',
      min: 1,
      max: 1_000_000,
    },
    stained: {
      kind: 'number',
      label: 'Stained cells',
      says: 'Dead ones among those looked at, if a stain was used.',
      unit: 'cells',
      min: 0,
      max: 1_000_000,
      whole: true,
      fallback: null,
    },
    stainedOf: {
      kind: 'number',
      label: 'Cells looked at for the stain',
      says: 'Living and dead; left out: all that were counted in the squares.',
      unit: 'cells',
      min: 1,
      max: 1_000_000,
      whole: true,
      fallback: null,
    },
  },
  formula:
    'Cells per mL = mean per square ÷ volume over a square × dilution. Share alive = (all − stained) ÷ all, with Wilson’s interval.',
  range:
    'An improved Neubauer chamber, 0.1 mm deep. Methylene blue is unreliable below 95 % alive.',
  sources: [
    'Chamber: meaderylab.com article 29; error between squares: MBAA community reply, May 2022',
    'E. B. Wilson, J. Am. Stat. Assoc. 22, 1927; Mochaba, O’Connor-Cox & Axcell, J. ASBC 56(1), 1998',
  ],
  contradictions(input) {
    if (input.stained === null) return [];
    const all = input.stainedOf ?? input.perSquare.reduce((sum, n) => sum + n, 0);
    if (input.stained <= all) return [];
    return [
      contradiction(
        'stained',
        `More cells are stained (${input.stained}) than were looked at (${all}).`,
        'Count stained cells among all cells looked at, and give both numbers.',
      ),
    ];
  },
  answer(input, s) {
    const squareMl = NEUBAUER_ML[SQUARES.find((name) => name === input.square) ?? 'central'];
    const count = countCells(input.perSquare, squareMl, input.dilution);
    const { low, likely, high } = count.millionPerMl;
    const says = [
      `${plain(likely)} million cells per mL, between ${plain(low)} and ${plain(high)}.`,
      count.quality === 'one square only'
        ? 'One square tells nothing of the spread: count more.'
        : `The squares differ as ${count.quality === 'count again' ? 'they should not: count again' : `a ${count.quality} count does`}.`,
    ];
    const figures = [
      predicted('cells', count.millionPerMl, 'million per mL'),
      figure('error of the mean', count.errorShare, 'share'),
    ];
    const beyond: string[] = [];
    const all = input.stainedOf ?? count.cells;
    if (input.stained !== null && all > 0) {
      const alive = countViability(input.stained, all);
      says.push(
        `${percent(alive.likely)} alive, between ${percent(alive.low)} and ${percent(alive.high)}.`,
      );
      figures.push(predicted('share alive', alive, 'share'));
      if (alive.likely < 0.95)
        beyond.push(
          'Below 95 % alive methylene blue is unreliable: another stain or a test pitch tells more.',
        );
      if (all < s.countedCells)
        beyond.push(
          `Fewer than ${s.countedCells} cells were looked at: count on for a narrower answer.`,
        );
    }
    return { says, figures, beyond };
  },
});
