// What is in this jar? Living cells in stored slurry, by what is known of it.
import { measuredViability } from '../counting.ts';
import { densityBPerMl, livingCellsB, yeastMl } from '../slurry.ts';
import {
  beerLossPerDay,
  beyondData,
  cropViability,
  generationAgeing,
  storageLossPerDay,
  strongAgeing,
  viabilityRange,
} from '../viability.ts';
import { percent, plain, predicted, question } from './ask.ts';
import { contradiction, flocculationField } from './field.ts';

export const jarQuestion = question({
  id: 'jar',
  title: 'What is in this jar?',
  fields: {
    sedimentMl: {
      kind: 'number',
      label: 'Sediment',
      says: 'What has settled, read or weighed.',
      unit: 'mL',
      min: 0.1,
      max: 10_000_000,
    },
    settleDays: {
      kind: 'number',
      label: 'Days of settling',
      says: 'When that was read; two or more is best.',
      unit: 'days',
      min: 0,
      max: 365,
      fallback: 2,
    },
    trubShare: {
      kind: 'share',
      label: 'Trub',
      says: 'Share of the sediment that is trub and hops; 0 if only the yeast layer was read.',
      fallback: 0,
    },
    flocculation: flocculationField('How well this yeast settles.'),
    countedBPerMl: {
      kind: 'number',
      label: 'Counted cells',
      says: 'Billion cells per mL if they were counted.',
      unit: 'billion per mL',
      min: 0.01,
      max: 6,
      fallback: null,
    },
    storeDays: {
      kind: 'number',
      label: 'Days in the cold',
      says: 'From the harvest, or from the count if the living share was measured.',
      unit: 'days',
      min: 0,
      max: 730,
    },
    storeC: {
      kind: 'number',
      label: 'Temperature of the cold store',
      says: 'Where the jar stands.',
      unit: '°C',
      min: -2,
      max: 30,
      fallback: 4,
    },
    beerDays: {
      kind: 'number',
      label: 'Days on the beer',
      says: 'From the end of fermentation to the harvest.',
      unit: 'days',
      min: 0,
      max: 365,
      fallback: 0,
    },
    beerC: {
      kind: 'number',
      label: 'Temperature of the beer',
      says: 'In those days.',
      unit: '°C',
      min: -2,
      max: 40,
      fallback: 18,
    },
    abvPercent: {
      kind: 'number',
      label: 'Alcohol of the beer it came from',
      says: 'Slurry from strong beer ages faster.',
      unit: '% by volume',
      min: 0,
      max: 25,
      fallback: 5,
    },
    generation: {
      kind: 'number',
      label: 'Generation',
      says: 'A fresh pack is 0, slurry out of its first beer is 1.',
      unit: 'generations',
      min: 0,
      max: 100,
      whole: true,
      fallback: 1,
    },
    measuredViability: {
      kind: 'share',
      label: 'Measured living share',
      says: 'If it was counted; the curve then starts at the count.',
      fallback: null,
    },
  },
  formula:
    'Living cells = millilitres of yeast × billion per mL × share alive. The share alive falls first-order with the days, at a rate by temperature, faster after strong beer.',
  range: '1–25 °C, to 30 days, beer to 8 % alcohol; two days of settling.',
  sources: [
    'Loss by temperature: McCaig & Bendiak, MBAA Technical Quarterly 1985; home, common practice, no source',
    'Cells per mL: home about 2 billion, common practice, no source; brewery 1.0–1.2, Escarpment Labs KB 90 and a supplier’s guide',
  ],
  contradictions(input) {
    if (input.measuredViability !== null && input.beerDays > 0)
      return [
        contradiction(
          'beerDays',
          'Days on the beer lie before the measured living share and are already in it.',
          'Leave the days on the beer at 0, or leave the measured share out.',
        ),
      ];
    return [];
  },
  answer(input, s) {
    const yeast = yeastMl(input.sedimentMl, input.trubShare);
    const density =
      input.countedBPerMl === null
        ? densityBPerMl(input.flocculation, input.settleDays, s)
        : { low: input.countedBPerMl, likely: input.countedBPerMl, high: input.countedBPerMl };
    const ageing = strongAgeing(input.abvPercent, s) * generationAgeing(input.generation, s);
    const alive = viabilityRange(
      {
        start:
          input.measuredViability === null
            ? cropViability(s)
            : measuredViability(input.measuredViability, s),
        beerLoss: input.beerDays * beerLossPerDay(input.beerC, s) * ageing,
        storeLoss: input.storeDays * storageLossPerDay(input.storeC, s) * ageing,
      },
      s,
    );
    const cells = livingCellsB(yeast, density, alive);
    const beyond = beyondData({
      tempC: input.storeC,
      days: input.storeDays,
      abvPercent: input.abvPercent,
    });
    return {
      says: [
        `About ${plain(cells.likely)} billion living cells, between ${plain(cells.low)} and ${plain(cells.high)}.`,
        `About ${percent(alive.likely)} are alive, between ${percent(alive.low)} and ${percent(alive.high)}.`,
        ...(alive.likely < s.viabilityFloor
          ? [
              `That is below the ${percent(s.viabilityFloor)} at which this house pitches without a starter.`,
            ]
          : []),
        ...(input.storeDays > s.maxStorageDays
          ? [`It is older than the ${s.maxStorageDays} days that this house keeps slurry.`]
          : []),
      ],
      figures: [
        predicted('living cells', cells, 'billion'),
        predicted('share alive', alive, 'share'),
        predicted('cells', density, 'billion per mL'),
      ],
      beyond,
      cautions: input.storeDays > s.maxStorageDays ? ['closed-jar', 'old-jar'] : ['closed-jar'],
    };
  },
});
