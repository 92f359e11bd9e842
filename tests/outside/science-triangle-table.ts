// Fewest right answers in a triangle test: FAO Manual, Appendix A (V7180E), as printed.

export const FAO_LEVELS = [0.1, 0.05, 0.01, 0.001] as const;

type Row = readonly [
  tasters: number,
  at10: number | null,
  at5: number | null,
  at1: number | null,
  at01: number | null,
];

/** Tasters, then right answers at 10, 5, 1 and 0.1 %. */
export const FAO_TRIANGLE: readonly Row[] = [
  [6, 5, 5, 6, null],
  [7, 5, 5, 6, 7],
  [8, 5, 6, 7, 8],
  [9, 6, 6, 7, 8],
  [10, 6, 7, 8, 9],
  [11, 7, 7, 8, 10],
  [12, 7, 8, 9, 10],
  [13, 8, 8, 9, 11],
  [14, 8, 9, 10, 11],
  [15, 8, 9, 10, 12],
  [16, 9, 9, 11, 12],
  [17, 9, 10, 11, 13],
  [18, 10, 10, 12, 13],
  [19, 10, 11, 12, 14],
  [20, 10, 11, 13, 14],
  [21, 11, 12, 13, 15],
  [22, 11, 12, 14, 15],
  [23, 12, 12, 14, 16],
  [24, 12, 13, 15, 16],
  [25, 12, 13, 15, 17],
  [26, 13, 14, 15, 17],
  [27, 13, 14, 16, 18],
  [28, 14, 15, 16, 18],
  [29, 14, 15, 17, 19],
  [30, 14, 15, 17, 19],
  [31, 15, 16, 18, 20],
  [32, 15, 16, 18, 20],
  [33, 15, 17, 18, 21],
  [34, 16, 17, 19, 21],
  [35, 16, 17, 19, 22],
  [36, 17, 18, 20, 22],
];

/** 37 to 40 tasters, which the FAO's table leaves out: exact binomial, worked elsewhere. */
export const BEYOND_FAO: readonly Row[] = [
  [37, 17, 18, 20, 22],
  [38, 17, 19, 21, 23],
  [39, 18, 19, 21, 23],
  [40, 18, 19, 21, 24],
];
