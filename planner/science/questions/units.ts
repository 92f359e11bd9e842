// What is that in other units? Volumes, temperatures, gravities and colours, both ways.
import type { Problem } from '../../model/problem-report.ts';
import { platoFromSg, sgFromPlato } from '../gravity.ts';
import {
  celsiusFromFahrenheit,
  ebcFromSrm,
  fahrenheitFromCelsius,
  hlFromLitres,
  litresFromHl,
  litresFromUsGal,
  srmFromEbc,
  usGalFromLitres,
} from '../units.ts';
import { figure, plain, question } from './ask.ts';
import { contradiction, gravityRemedy } from './field.ts';

const UNITS = ['L', 'hL', 'US gal', '°C', '°F', 'SG', '°P', 'EBC', 'SRM'] as const;
type Unit = (typeof UNITS)[number];

/** What may be meant in each unit: beyond it something else was. */
const BOUNDS: Readonly<Record<Unit, readonly [number, number]>> = {
  L: [0, 10_000_000],
  hL: [0, 100_000],
  'US gal': [0, 2_500_000],
  '°C': [-30, 150],
  '°F': [-22, 302],
  SG: [0.98, 1.2],
  '°P': [0, 45],
  EBC: [0, 1000],
  SRM: [0, 500],
};

/** The value in every unit of its kind. */
function others(value: number, unit: Unit): [Unit, number][] {
  const volume = (litres: number): [Unit, number][] => [
    ['L', litres],
    ['hL', hlFromLitres(litres)],
    ['US gal', usGalFromLitres(litres)],
  ];
  switch (unit) {
    case 'L':
      return volume(value);
    case 'hL':
      return volume(litresFromHl(value));
    case 'US gal':
      return volume(litresFromUsGal(value));
    case '°C':
      return [['°F', fahrenheitFromCelsius(value)]];
    case '°F':
      return [['°C', celsiusFromFahrenheit(value)]];
    case 'SG':
      return [['°P', platoFromSg(value)]];
    case '°P':
      return [['SG', sgFromPlato(value)]];
    case 'EBC':
      return [['SRM', srmFromEbc(value)]];
    case 'SRM':
      return [['EBC', ebcFromSrm(value)]];
  }
}

/** °P are read to a tenth or a twentieth: three decimals just above 1 are a specific gravity. */
function likeSg(value: number): Problem[] {
  const decimals = String(value).split('.')[1]?.length ?? 0;
  if (value < 0.98 || value > 1.2 || decimals < 3) return [];
  return [
    contradiction(
      'value',
      `${value} °P is written like a specific gravity: which of the two is meant?`,
      `If it is a specific gravity, choose SG; if it is °P, write ${value.toFixed(2)}.`,
    ),
  ];
}

const written = (value: number, unit: Unit): string =>
  unit === 'SG' ? value.toFixed(4) : `${plain(value)} ${unit}`;

export const unitsQuestion = question({
  id: 'units',
  title: 'What is that in other units?',
  fields: {
    value: {
      kind: 'number',
      label: 'Value',
      says: 'As it was read.',
      unit: '',
      min: -30,
      max: 10_000_000,
    },
    unit: { kind: 'choice', label: 'Unit', says: 'In which it was read.', options: UNITS },
  },
  formula:
    'A US gallon is 3.785411784 L; °F = °C × 1.8 + 32; SRM is 12.7 and EBC 25 times the absorbance at 430 nm; °P is a cubic in the specific gravity.',
  range: 'Gravities 1.000–1.150 at 20 °C; colours of clear beer.',
  sources: [
    'Gallon: NIST Handbook 44; gravity: NBS Circular 440 (1942), cubic fit',
    'Colour: Oxford Companion to Beer, “SRM”',
  ],
  contradictions({ value, unit }) {
    const [low, high] = BOUNDS[unit];
    if (value >= low && value <= high) return unit === '°P' ? likeSg(value) : [];
    return [
      contradiction(
        'value',
        `${value} is not a value in ${unit} that is met in a brewery (${low} to ${high}).`,
        unit === 'SG' ? gravityRemedy(value) : 'Read it again, or choose the unit that it is in.',
      ),
    ];
  },
  answer({ value, unit }) {
    const found = others(value, unit).filter(([name]) => name !== unit);
    return {
      says: [
        `${written(value, unit)} ${unit === 'SG' ? 'is' : 'are'} ${found.map(([name, n]) => written(n, name)).join(' or ')}.`,
      ],
      figures: found.map(([name, n]) => figure(`in ${name}`, n, name)),
      beyond:
        unit === 'SG' && value > 1.15
          ? ['Above 1.150 no table of gravities has been compared.']
          : [],
    };
  },
});
