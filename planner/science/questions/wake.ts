// How do I wake slurry before pitching? A vitality start: fresh wort some hours before, in which no growth is counted.
import { boilingCaution } from '../../tasks/cautions.ts';
import { vitalityStart } from '../starter-plan.ts';
import { figure, plain, question } from './ask.ts';
import { contradiction } from './field.ts';

/** Hours before pitching that brewers name: common practice, no source. */
const USUAL_HOURS = { from: 3, to: 6 };

const cells = (label: string, says: string) =>
  ({
    kind: 'number',
    label,
    says,
    unit: 'billion',
    min: 0.01,
    max: 10_000_000,
    fallback: null,
  }) as const;

export const wakeQuestion = question({
  id: 'wake',
  title: 'How do I wake slurry before pitching?',
  fields: {
    batchL: {
      kind: 'number',
      label: 'Batch',
      says: 'What the slurry is to ferment.',
      unit: 'L',
      min: 0.5,
      max: 100_000,
    },
    haveB: cells('Living cells at hand', 'In the slurry, to see whether waking it is enough.'),
    needB: cells('Living cells needed', 'For the brew, to see the same.'),
  },
  formula:
    'Fresh wort = batch × a share of it, a litre for 20 L, at the strength of starter wort. It is poured on the slurry some hours before pitching, and all of it is pitched. No growth is counted: as many cells come out as went in.',
  range: `Slurry with enough living cells that has stood in the cold. ${USUAL_HOURS.from} to ${USUAL_HOURS.to} hours are usual; left for a day it is a starter.`,
  sources: ['About four hours in about a litre: common practice, no source'],
  contradictions(input) {
    if ((input.haveB === null) === (input.needB === null)) return [];
    const missing = input.haveB === null ? 'haveB' : 'needB';
    return [
      contradiction(
        missing,
        `Living cells ${missing === 'haveB' ? 'needed are given, but not those at hand' : 'at hand are given, but not those needed'}.`,
        'Give both, so that they can be compared, or neither.',
      ),
    ];
  },
  answer({ batchL, haveB, needB }, s) {
    const start = vitalityStart(batchL, s);
    const hours = start.hoursBefore === 1 ? '1 hour' : `${plain(start.hoursBefore)} hours`;
    const says = [
      `${hours} before pitching, pour ${plain(start.litres)} L of fresh wort (${plain(start.extractG)} g of extract), cooled to the temperature of the brew, on the slurry; then pitch all of it.`,
    ];
    const figures = [
      figure('before pitching', start.hoursBefore, 'h'),
      figure('fresh wort', start.litres, 'L'),
      figure('extract in it', start.extractG, 'g'),
    ];
    if (haveB !== null && needB !== null) {
      says.push(
        haveB < needB
          ? `That does not make it enough: no growth is counted, ${plain(haveB)} billion stay ${plain(haveB)}, and ${plain(needB)} are needed. Take more slurry, or make a starter.`
          : `The ${plain(haveB)} billion at hand are enough for the ${plain(needB)} needed; none are counted on top.`,
      );
      figures.push(figure('living cells pitched', haveB, 'billion'));
    }
    const usual = start.hoursBefore >= USUAL_HOURS.from && start.hoursBefore <= USUAL_HOURS.to;
    return {
      says,
      figures,
      beyond: usual
        ? []
        : [
            `This house wakes slurry ${hours} before; ${USUAL_HOURS.from} to ${USUAL_HOURS.to} are usual.`,
          ],
      cautions: [boilingCaution(start.litres), 'starter-vent', 'warming-jar'],
    };
  },
});
