// The family tree by hand: columns by generation, a line straight on, branches below it, and where the arrow keys lead.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COLUMN, ROW, stepFrom, treesOf } from '../../../app/pages/shelf/tree.ts';
import type { Culture } from '../../../planner/index.ts';
import { shelfOf } from '../../../planner/index.ts';
import { NO_FACTS } from '../../../planner/model/facts.ts';
import { aHouse, aPlan, quill } from '../../builders/plan.ts';

const second = quill({ brew: 'Rook', day: '2027-02-06' });
const plan = aPlan();
const two = aPlan({ brews: [...plan.brews, second] });
const cultures = shelfOf({
  house: aHouse(),
  plan: two,
  facts: NO_FACTS,
  today: '2027-01-04',
}).cultures;

describe('treesOf', () => {
  it('draws a strain a tree: Millrace, its harvest, and the two beers that it feeds', () => {
    const [ale, lager] = treesOf(cultures);
    expect([ale?.yeast, lager?.yeast]).toEqual(['Mill Lane Ale', 'Harbour Lager']);
    const at = new Map(ale?.knots.map((knot) => [knot.key, knot]));
    // generations 0 and 1 are a column apart; the jar of Millrace lies 0.44 of a column before 1
    const x = (key: string) => at.get(key)?.x ?? Number.NaN;
    expect(x('beer Quill') - x('beer Millrace')).toBeCloseTo(COLUMN);
    expect(x('beer Quill') - x('harvest Millrace')).toBeCloseTo(0.44 * COLUMN);
    const y = (key: string) => at.get(key)?.y ?? Number.NaN;
    expect(y('beer Quill')).toBe(y('beer Millrace'));
    expect(y('beer Rook')).toBe(y('beer Millrace') + ROW);
    expect(at.has('jar J1')).toBe(true);
  });

  it('leads along the yeast by arrows', () => {
    const [ale] = treesOf(cultures);
    if (ale === undefined) throw new Error('no tree');
    expect(stepFrom(ale, 'beer Millrace', 'ArrowRight')).toBe('harvest Millrace');
    expect(stepFrom(ale, 'harvest Millrace', 'ArrowRight')).toBe('beer Quill');
    expect(stepFrom(ale, 'beer Rook', 'ArrowLeft')).toBe('harvest Millrace');
    expect(stepFrom(ale, 'beer Quill', 'ArrowDown')).toBe('beer Rook');
    expect(stepFrom(ale, 'beer Quill', 'ArrowRight')).toBeNull();
    expect(stepFrom(ale, 'beer Quill', 'x')).toBeNull();
  });

  it('lays no two knots of one kind on each other, whatever descends from what', () => {
    const forest = fc.array(fc.nat({ max: 40 }), { minLength: 1, maxLength: 60 });
    fc.assert(
      fc.property(forest, (parents) => {
        const made: Culture[] = [];
        parents.forEach((parent, at) => {
          const from = parent < at && parent % 3 !== 0 ? made[parent] : undefined;
          made.push({
            of: { kind: 'beer', brew: `B${at}` },
            state: 'sound',
            place: 'planned',
            where: null,
            parent: from?.of ?? null,
            says: '',
            yeast: 'Y',
            generation: from === undefined ? 0 : from.generation + 1,
            day: '2027-01-01',
          });
        });
        const [tree] = treesOf(made);
        expect(tree?.knots).toHaveLength(made.length);
        const places = tree?.knots.map(({ x, y }) => `${x} ${y}`) ?? [];
        expect(new Set(places).size).toBe(made.length);
        for (const knot of tree?.knots ?? []) {
          expect(knot.x).toBeLessThan(tree?.width ?? 0);
          expect(knot.y).toBeLessThan(tree?.height ?? 0);
        }
      }),
      { numRuns: 60 },
    );
  });
});
