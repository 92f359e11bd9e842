// The part of the statistics package that the checks call; it brings no types of its own.
declare module 'jstat' {
  export const jStat: {
    binomial: {
      cdf(k: number, n: number, p: number): number;
      pdf(k: number, n: number, p: number): number;
    };
    normal: {
      cdf(x: number, mean: number, sd: number): number;
      inv(p: number, mean: number, sd: number): number;
    };
    studentt: { inv(p: number, freedom: number): number };
    beta: { inv(p: number, a: number, b: number): number };
  };
}
