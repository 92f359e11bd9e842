// Nothing suspect, nothing that comes of it, nothing on watch (discard what smells or looks wrong: supplier guidance).
import { expect, test } from 'vitest';
import { aBrew, aJar, aSeason, lay } from '../../builders/season.ts';

type State = 'sound' | 'watch' | 'suspect';

const house = (state: State) =>
  aSeason({
    jars: [aJar({ state, harvestedOn: '2027-02-25' })],
    brews: ['A', 'B', 'C'].map((brew) => aBrew({ brew })),
  });

test.each([
  ['sound', 0],
  ['watch', 1],
  ['suspect', 1],
] as const)('a jar that is %s: %i', (state, count) => {
  const season = lay(house(state), { A: { on: '2027-03-01', from: { jar: 'J1' } } });
  expect(season.sum('suspect')).toBe(count);
});

/** A was brewed from the jar, B is to be pitched from A and C from B. */
const descended = (state: State, harvest: State | null = null) =>
  lay(
    house(state),
    {
      B: { on: '2027-03-20', tank: 'Keg B', from: { harvest: 'A' } },
      C: { on: '2027-04-10', tank: 'Cone', from: { harvest: 'B' } },
    },
    {
      today: '2027-03-16',
      facts: {
        brewed: [
          {
            brew: 'A',
            day: '2027-03-01',
            tank: 'Keg A',
            yeast: 'Mill Lane Ale',
            source: { kind: 'jar', jar: 'J1', drawMl: 120 },
            generation: 3,
            pitchedB: 200,
          },
        ],
        harvested:
          harvest === null
            ? []
            : [{ brew: 'A', day: '2027-03-15', settledMl: 300, state: harvest }],
      },
    },
  )
    .found('suspect')
    .map((f) => f.subject);

test('everything that comes of a suspect jar is barred, however many beers later', () => {
  expect(descended('suspect')).toEqual(['B', 'C']);
  expect(descended('sound')).toEqual([]);
});

test('a suspect harvest bars what is drawn from it and what comes of that', () => {
  expect(descended('sound', 'suspect')).toEqual(['B', 'C']);
  expect(descended('sound', 'sound')).toEqual([]);
});

test('regression: what is on watch is held back itself, and no longer bars what came of it', () => {
  expect(descended('watch')).toEqual([]);
  expect(descended('sound', 'watch')).toEqual(['B']);
});

test('the sentence names the brew and the source', () => {
  const [said] = lay(house('suspect'), { A: { on: '2027-03-01', from: { jar: 'J1' } } }).found(
    'suspect',
  );
  expect(said?.says).toBe(
    'A would get jar J1, which is suspect, on watch, or comes of a suspect jar.',
  );
  expect(said?.remedy).toContain('mark it sound again');
});
