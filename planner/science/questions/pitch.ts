// How much do I pitch? Cells for a brew, and the slurry or the packs that bring them.
import { platoFromSg } from '../gravity.ts';
import { needB, pitchRate } from '../need.ts';
import { figure, plain, question } from './ask.ts';
import { noWort } from './field.ts';

/** With fewer alive than one in a thousand an amount would be a joke. */
const LEAST_ALIVE = 0.001;

export const pitchQuestion = question({
  id: 'pitch',
  title: 'How much do I pitch?',
  fields: {
    volumeL: {
      kind: 'number',
      label: 'Wort',
      says: 'What goes into the tank.',
      unit: 'L',
      min: 0.5,
      max: 100_000,
    },
    og: { kind: 'gravity', label: 'Original gravity', says: 'As written on the recipe: 1.048.' },
    fermentC: {
      kind: 'number',
      label: 'Fermentation temperature',
      says: 'The rate follows it, not the name of the yeast.',
      unit: '°C',
      min: -2,
      max: 50,
    },
    yeast: {
      kind: 'choice',
      label: 'Yeast',
      says: 'Slurry out of a fermentation, or fresh packs.',
      options: ['harvested', 'fresh'],
    },
    souring: {
      kind: 'choice',
      label: 'Souring',
      says: 'Whether the wort was soured in the kettle.',
      options: ['none', 'kettle', 'mixed'],
      fallback: 'none',
    },
    viability: {
      kind: 'share',
      label: 'Living share',
      says: 'Of the slurry or of the packs on the day, if known.',
      fallback: null,
    },
    billionPerMl: {
      kind: 'number',
      label: 'Cells in the slurry',
      says: 'Billion per mL, if slurry is pitched; otherwise the house’s density.',
      unit: 'billion per mL',
      min: 0.01,
      max: 6,
      fallback: null,
    },
    packCellsB: {
      kind: 'number',
      label: 'Cells in a pack',
      says: 'Billion when it was made, if packs are pitched.',
      unit: 'billion',
      min: 0.1,
      max: 1_000_000,
      fallback: null,
    },
  },
  formula:
    'Cells needed = million cells per mL per °P × litres × °P. Slurry = cells needed ÷ (billion per mL × share alive).',
  range: '1.000–1.150, fermentations from 0 to 40 °C.',
  sources: [
    'G. Fix, quoted by Terrill 2010 (lager 1.5); Madison Beer Review 2012 (between, 1.25); Crooks via Fahrendorf (ale 1.0)',
    'More for strong wort: Casey & Ingledew, J. ASBC 41, 1983; amount common practice, no source',
  ],
  contradictions: (input) => noWort(input.og),
  answer(input, s) {
    const wort = {
      fermentC: input.fermentC,
      ogP: platoFromSg(input.og),
      souring: input.souring === 'none' ? null : input.souring,
      harvested: input.yeast === 'harvested',
    };
    const need = needB({ ...wort, volumeL: input.volumeL }, s);
    const says = [`It needs ${plain(need)} billion living cells.`];
    const figures = [
      figure('living cells needed', need, 'billion'),
      figure('rate', pitchRate(wort, s), 'million per mL per °P'),
      figure('extract', wort.ogP, '°P'),
    ];
    const alive = input.viability ?? (wort.harvested ? s.cropViability : 1);
    if (alive < LEAST_ALIVE)
      says.push('Next to nothing of that yeast is alive: no amount of it is enough.');
    else if (wort.harvested) {
      const ml = need / ((input.billionPerMl ?? s.densityMedium) * alive);
      says.push(`That is ${plain(ml)} mL of settled slurry.`);
      figures.push(figure('settled slurry', ml, 'mL'));
    } else if (input.packCellsB !== null) {
      const packs = Math.ceil(need / (input.packCellsB * alive) - 1e-9);
      says.push(`That is ${packs} ${packs === 1 ? 'pack' : 'packs'} without a starter.`);
      figures.push(figure('packs', packs, 'packs'));
    }
    const beyond = input.og > 1.15 ? ['Above 1.150 no table of gravities has been compared.'] : [];
    return { says, figures, beyond };
  },
});
