// Ranges of beer styles for generated seasons: original and final gravity, bitterness and colour.
// Source: BJCP Style Guidelines 2021, from memory; colours from SRM × 1.97. Days and temperatures: common practice, no source.

export type Style = {
  style: string;
  og: readonly [number, number];
  fg: readonly [number, number];
  ibu: readonly [number, number];
  ebc: readonly [number, number];
  fermentC: readonly [number, number];
  tankDays: readonly [number, number];
  conditionDays: readonly [number, number];
  strain: 'ale' | 'lager' | 'wheat' | 'saison' | 'belgian' | 'kveik';
  dryHop?: true;
  additions?: readonly string[];
};

const ALE = { fermentC: [17, 20], tankDays: [10, 14], conditionDays: [7, 16] } as const;
const LAGER = { fermentC: [9, 13], tankDays: [18, 28], conditionDays: [14, 35] } as const;

export const STYLES: readonly Style[] = [
  {
    style: 'Best Bitter',
    og: [1.04, 1.048],
    fg: [1.008, 1.012],
    ibu: [25, 40],
    ebc: [16, 32],
    strain: 'ale',
    ...ALE,
  },
  {
    style: 'Dark Mild',
    og: [1.03, 1.038],
    fg: [1.008, 1.013],
    ibu: [10, 25],
    ebc: [28, 49],
    strain: 'ale',
    ...ALE,
  },
  {
    style: 'Pale Ale',
    og: [1.045, 1.06],
    fg: [1.01, 1.015],
    ibu: [30, 50],
    ebc: [10, 20],
    strain: 'ale',
    dryHop: true,
    ...ALE,
  },
  {
    style: 'IPA',
    og: [1.056, 1.07],
    fg: [1.008, 1.014],
    ibu: [40, 70],
    ebc: [12, 28],
    strain: 'ale',
    dryHop: true,
    ...ALE,
  },
  {
    style: 'Porter',
    og: [1.04, 1.052],
    fg: [1.008, 1.014],
    ibu: [18, 35],
    ebc: [39, 59],
    strain: 'ale',
    ...ALE,
  },
  {
    style: 'Imperial Stout',
    og: [1.075, 1.1],
    fg: [1.018, 1.03],
    ibu: [50, 90],
    ebc: [59, 79],
    strain: 'ale',
    ...ALE,
  },
  {
    style: 'Fruit Ale',
    og: [1.04, 1.055],
    fg: [1.008, 1.014],
    ibu: [10, 25],
    ebc: [8, 20],
    strain: 'ale',
    additions: ['fruit'],
    ...ALE,
  },
  {
    style: 'Helles',
    og: [1.044, 1.048],
    fg: [1.006, 1.012],
    ibu: [16, 22],
    ebc: [6, 10],
    strain: 'lager',
    ...LAGER,
  },
  {
    style: 'Pils',
    og: [1.044, 1.05],
    fg: [1.008, 1.013],
    ibu: [22, 40],
    ebc: [4, 8],
    strain: 'lager',
    ...LAGER,
  },
  {
    style: 'Dunkel',
    og: [1.048, 1.056],
    fg: [1.01, 1.016],
    ibu: [18, 28],
    ebc: [33, 55],
    strain: 'lager',
    ...LAGER,
  },
  {
    style: 'Bock',
    og: [1.064, 1.072],
    fg: [1.013, 1.019],
    ibu: [20, 27],
    ebc: [28, 43],
    strain: 'lager',
    ...LAGER,
  },
  {
    style: 'Weissbier',
    og: [1.044, 1.053],
    fg: [1.008, 1.014],
    ibu: [8, 15],
    ebc: [4, 12],
    strain: 'wheat',
    ...ALE,
  },
  {
    style: 'Dunkles Weissbier',
    og: [1.044, 1.057],
    fg: [1.008, 1.014],
    ibu: [10, 18],
    ebc: [28, 45],
    strain: 'wheat',
    ...ALE,
  },
  {
    style: 'Saison',
    og: [1.048, 1.065],
    fg: [1.002, 1.008],
    ibu: [20, 35],
    ebc: [10, 28],
    strain: 'saison',
    ...ALE,
  },
  {
    style: 'Dubbel',
    og: [1.062, 1.075],
    fg: [1.008, 1.018],
    ibu: [15, 25],
    ebc: [20, 33],
    strain: 'belgian',
    ...ALE,
  },
  {
    style: 'Belgian Blond',
    og: [1.062, 1.075],
    fg: [1.008, 1.018],
    ibu: [15, 30],
    ebc: [8, 12],
    strain: 'belgian',
    ...ALE,
  },
  {
    style: 'Farmhouse Ale',
    og: [1.042, 1.058],
    fg: [1.006, 1.012],
    ibu: [10, 25],
    ebc: [8, 25],
    strain: 'kveik',
    ...ALE,
  },
];
