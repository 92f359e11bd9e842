// Seasons of any shape for the picture's properties: tanks, beers one after the other in each, and yeast between them.
import fc from 'fast-check';
import type { Bar, Strand, Weave } from '../../../app/pages/season/weave.ts';
import { aPlannedBrew } from '../../builders/plan.ts';

const FIRST_DAY = 20_000;

type Shape = { tank: number; start: number; length: number; feeds: number; waits: number };

/** A season of up to 5 tanks and 20 beers; a beer may feed beers that begin after it is emptied. */
export function aWovenSeason(): fc.Arbitrary<Weave> {
  const shape: fc.Arbitrary<Shape> = fc.record({
    tank: fc.integer({ min: 0, max: 4 }),
    start: fc.integer({ min: 0, max: 150 }),
    length: fc.integer({ min: 1, max: 40 }),
    feeds: fc.integer({ min: 0, max: 3 }),
    waits: fc.integer({ min: 0, max: 35 }),
  });
  return fc.array(shape, { minLength: 1, maxLength: 20 }).map(seasonOf);
}

function seasonOf(shapes: Shape[]): Weave {
  const bars = shapes.map((shape, at): Bar => {
    const day = FIRST_DAY + 3 + shape.start;
    return {
      brew: `Beer ${at}`,
      tank: `Tank ${shape.tank}`,
      yeast: 'Yeast',
      day,
      emptied: day + shape.length,
      dryHop: null,
      crash: null,
      ready: day + shape.length + 10,
      readyBy: null,
      notBefore: null,
      fixed: false,
      broken: [],
      planned: aPlannedBrew({ brew: `Beer ${at}` }),
    };
  });
  const fed = new Set<string>();
  const strands = bars.flatMap((bar, at): Strand[] => {
    const shape = shapes[at];
    const targets = bars
      .filter((other) => other.day >= bar.emptied && !fed.has(other.brew))
      .slice(0, shape?.feeds ?? 0);
    for (const target of targets) fed.add(target.brew);
    const drawn = targets.map((target) => strandOf(bar, target.brew, target.day));
    const kept = (shape?.waits ?? 0) > 20 ? [strandOf(bar, null, bar.emptied + 20)] : [];
    return [...drawn, ...kept];
  });
  return {
    firstDay: FIRST_DAY,
    lastDay: Math.max(...bars.map((bar) => bar.emptied)) + 30,
    today: FIRST_DAY + 3,
    tanks: [...new Set(bars.map((bar) => bar.tank))],
    bars,
    strands,
    purchases: [],
    ends: [],
  };
}

function strandOf(bar: Bar, to: string | null, end: number): Strand {
  return {
    id: `${bar.brew}→${to ?? ''}`,
    yeast: bar.yeast,
    from: { kind: 'brew', name: bar.brew },
    to,
    start: bar.emptied,
    end,
    startShare: 0.97,
    endShare: 0.7,
    ml: 100,
    jars: 1,
    ofStarter: false,
  };
}
