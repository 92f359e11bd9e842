// The only randomness in the planner: a small generator that gives the same numbers for the same seed everywhere.

/** Mulberry32: 32 bits of state, whole numbers only, so every machine agrees. */
export class Random {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** In [0, 1). */
  next(): number {
    this.state = (this.state + 0x6d2b79f5) | 0;
    let x = this.state;
    x = Math.imul(x ^ (x >>> 15), x | 1);
    x ^= x + Math.imul(x ^ (x >>> 7), x | 61);
    return ((x ^ (x >>> 14)) >>> 0) / 4_294_967_296;
  }

  /** A whole number from 0 up to, not including, `n`; 0 for n ≤ 1. */
  below(n: number): number {
    return n <= 1 ? 0 : Math.floor(this.next() * n);
  }
}
