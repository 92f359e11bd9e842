// Published ranges of beer styles, as hints beside a brew: never a limit.
// Source: Beer Judge Certification Program, 2021 Beer Style Guidelines ("vital statistics"), from memory. Styles
// of which the guidelines give no figures of their own (specialties that name a base beer) are not listed.

export const GUIDELINE = 'BJCP 2021 Beer Style Guidelines, from memory';

export type StyleRange = {
  style: string;
  /** Original gravity, SG. */
  og: readonly [number, number];
  ibu: readonly [number, number];
  /** Colour, SRM, as it is published. */
  srm: readonly [number, number];
};

type Line = readonly [
  style: string,
  ogLow: number,
  ogHigh: number,
  ibuLow: number,
  ibuHigh: number,
  srmLow: number,
  srmHigh: number,
];

// Gravities in points: 28 is 1.028.
const LINES: readonly Line[] = [
  ['American light lager', 28, 40, 8, 12, 2, 3],
  ['American lager', 40, 50, 8, 18, 2, 3.5],
  ['Cream ale', 42, 55, 8, 20, 2, 5],
  ['American wheat beer', 40, 55, 15, 30, 3, 6],
  ['International pale lager', 42, 50, 18, 25, 2, 6],
  ['International amber lager', 42, 55, 8, 25, 6, 14],
  ['International dark lager', 44, 56, 8, 20, 14, 30],
  ['Czech pale lager', 28, 44, 20, 35, 3, 6],
  ['Czech premium pale lager', 44, 60, 30, 45, 3.5, 6],
  ['Czech amber lager', 44, 60, 20, 35, 10, 16],
  ['Czech dark lager', 44, 60, 18, 34, 17, 35],
  ['Munich helles', 44, 48, 16, 22, 3, 5],
  ['Festbier', 54, 57, 18, 25, 4, 6],
  ['Helles bock', 64, 72, 23, 35, 6, 9],
  ['German leichtbier', 26, 34, 15, 28, 1.5, 4],
  ['Kölsch', 44, 50, 18, 30, 3.5, 5],
  ['German Helles exportbier', 50, 58, 20, 30, 4, 6],
  ['German pils', 44, 50, 22, 40, 2, 4],
  ['Märzen', 54, 60, 18, 24, 8, 17],
  ['Rauchbier', 50, 57, 20, 30, 12, 22],
  ['Dunkles bock', 64, 72, 20, 27, 14, 22],
  ['Vienna lager', 48, 55, 18, 30, 9, 15],
  ['Altbier', 44, 52, 25, 50, 9, 17],
  ['Munich dunkel', 48, 56, 18, 28, 17, 28],
  ['Schwarzbier', 46, 52, 20, 35, 19, 30],
  ['Doppelbock', 72, 112, 16, 26, 6, 25],
  ['Eisbock', 78, 120, 25, 35, 17, 30],
  ['Baltic porter', 60, 90, 20, 40, 17, 30],
  ['Weissbier', 44, 53, 8, 15, 2, 6],
  ['Dunkles weissbier', 44, 57, 10, 18, 14, 23],
  ['Weizenbock', 64, 90, 15, 30, 6, 25],
  ['Ordinary bitter', 30, 39, 25, 35, 8, 14],
  ['Best bitter', 40, 48, 25, 40, 8, 16],
  ['Strong bitter', 48, 60, 30, 50, 8, 18],
  ['British golden ale', 38, 53, 20, 45, 2, 5],
  ['Australian sparkling ale', 38, 50, 20, 35, 4, 7],
  ['English IPA', 50, 70, 40, 60, 6, 14],
  ['Dark mild', 30, 38, 10, 25, 14, 25],
  ['British brown ale', 40, 52, 20, 30, 12, 22],
  ['English porter', 40, 52, 18, 35, 20, 30],
  ['Scottish light', 30, 35, 10, 20, 17, 25],
  ['Scottish heavy', 35, 40, 10, 20, 12, 20],
  ['Scottish export', 40, 60, 15, 30, 12, 20],
  ['Irish red ale', 36, 46, 18, 28, 9, 14],
  ['Irish stout', 36, 44, 25, 45, 25, 40],
  ['Irish extra stout', 52, 62, 35, 50, 30, 40],
  ['Sweet stout', 44, 60, 20, 40, 30, 40],
  ['Oatmeal stout', 45, 65, 25, 40, 22, 40],
  ['Tropical stout', 56, 75, 30, 50, 30, 40],
  ['Foreign extra stout', 56, 75, 50, 70, 30, 40],
  ['British strong ale', 55, 80, 30, 60, 8, 22],
  ['Old ale', 55, 88, 30, 60, 10, 22],
  ['Wee heavy', 70, 130, 17, 35, 14, 25],
  ['English barley wine', 80, 120, 35, 70, 8, 22],
  ['Blonde ale', 38, 54, 15, 28, 3, 6],
  ['American pale ale', 45, 60, 30, 50, 5, 10],
  ['American amber ale', 45, 60, 25, 40, 10, 17],
  ['California common', 48, 54, 30, 45, 9, 14],
  ['American brown ale', 45, 60, 20, 30, 18, 35],
  ['American porter', 50, 70, 25, 50, 22, 40],
  ['American stout', 50, 75, 35, 75, 30, 40],
  ['Imperial stout', 75, 115, 50, 90, 30, 40],
  ['American IPA', 56, 70, 40, 70, 6, 14],
  ['Belgian IPA', 58, 80, 50, 100, 5, 8],
  ['Black IPA', 50, 85, 50, 90, 25, 40],
  ['Brown IPA', 56, 70, 40, 70, 18, 35],
  ['Red IPA', 56, 70, 40, 70, 11, 17],
  ['Rye IPA', 56, 75, 50, 75, 6, 14],
  ['White IPA', 56, 65, 40, 70, 5, 6],
  ['Brut IPA', 46, 57, 20, 30, 2, 4],
  ['Hazy IPA', 60, 85, 25, 60, 3, 7],
  ['Double IPA', 65, 85, 60, 100, 6, 14],
  ['American strong ale', 62, 90, 50, 100, 7, 18],
  ['American barleywine', 80, 120, 50, 100, 9, 18],
  ['Wheatwine', 80, 120, 30, 60, 6, 14],
  ['Berliner weisse', 28, 32, 3, 8, 2, 3],
  ['Flanders red ale', 48, 57, 10, 25, 10, 17],
  ['Oud bruin', 40, 74, 20, 25, 17, 22],
  ['Lambic', 40, 54, 0, 10, 3, 6],
  ['Gueuze', 40, 54, 0, 10, 5, 6],
  ['Fruit lambic', 40, 60, 0, 10, 3, 7],
  ['Gose', 36, 56, 5, 12, 3, 4],
  ['Witbier', 44, 52, 8, 20, 2, 4],
  ['Belgian pale ale', 48, 54, 20, 30, 8, 14],
  ['Bière de garde', 60, 80, 18, 28, 6, 19],
  ['Belgian blond ale', 62, 75, 15, 30, 4, 6],
  ['Saison', 48, 65, 20, 35, 5, 14],
  ['Belgian golden strong ale', 70, 95, 22, 35, 3, 6],
  ['Belgian single', 44, 54, 25, 45, 3, 5],
  ['Belgian dubbel', 62, 75, 15, 25, 10, 17],
  ['Belgian tripel', 75, 85, 20, 40, 4.5, 7],
  ['Belgian dark strong ale', 75, 110, 20, 35, 12, 22],
];

export const STYLE_RANGES: readonly StyleRange[] = LINES.map(
  ([style, ogLow, ogHigh, ibuLow, ibuHigh, srmLow, srmHigh]) => ({
    style,
    og: [1 + ogLow / 1000, 1 + ogHigh / 1000],
    ibu: [ibuLow, ibuHigh],
    srm: [srmLow, srmHigh],
  }),
);
