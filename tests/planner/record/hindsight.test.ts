// What the plan expected stands with the entry, whatever the plan says later; and how often it was right is counted by strain.
import { describe, expect, it } from 'vitest';
import {
  foldRecord,
  hindsightOf,
  News,
  type RecordEntry,
  resolveNews,
} from '../../../planner/index.ts';
import { aHouse, aPlan } from '../../builders/plan.ts';

const TODAY = '2027-02-20';
const house = aHouse();
const plan = aPlan();

function told(...all: unknown[]): RecordEntry[] {
  let entries: RecordEntry[] = [];
  for (const news of all) {
    const answer = resolveNews(News.parse(news), foldRecord(entries), house, plan, TODAY);
    if (!('entry' in answer)) throw new Error(answer.problems.map((p) => p.message).join(' '));
    entries = [...entries, answer.entry];
  }
  return entries;
}

const brewed = { kind: 'brewed', brew: 'Millrace', day: '2027-01-09' };
const harvest = plan.harvests.find((one) => one.brew === 'Millrace');
const gave = (settledMl: number) => ({
  kind: 'harvested',
  brew: 'Millrace',
  day: '2027-01-23',
  settledMl,
});

describe('hindsight', () => {
  it('keeps the interval of the plan in force with a harvest, and says whether it held', () => {
    const { low = 0, likely = 0, high = 0 } = harvest?.settledMl ?? {};
    const inside = hindsightOf(told(brewed, gave(Math.round(likely))));
    expect(inside.outcomes).toMatchObject([
      { figure: 'settledMl', low, likely, high, happened: Math.round(likely), within: true },
    ]);
    const [row] = inside.strains;
    expect(row).toMatchObject({ figure: 'settledMl', told: 1, within: 1 });
    const outside = hindsightOf(told(brewed, gave(Math.ceil(high) + 1)));
    expect(outside.strains).toMatchObject([{ told: 1, within: 0 }]);
  });

  it('compares the last reading of the same jars with what was expected before the first', () => {
    const likely = Math.round(harvest?.settledMl.likely ?? 0);
    const entries = told(brewed, gave(likely + 500), gave(likely));
    const { outcomes } = hindsightOf(entries);
    expect(outcomes.at(0)).toMatchObject({ happened: likely, within: true });
  });

  it('compares a count with the share that the plan saw for that day', () => {
    const jar = house.jars.find((one) => plan.shelf.some((shelf) => shelf.jar === one.jar));
    if (!jar) throw new Error('the house has no jar on the shelf of its plan');
    const of = { kind: 'jar', jar: jar.jar };
    const entries = told({ kind: 'measured', of, day: TODAY, stained: 90, total: 100 });
    const [outcome] = hindsightOf(entries).outcomes;
    expect(outcome).toMatchObject({ figure: 'viability', yeast: jar.yeast });
    // 90 of 100 cells stained: a tenth alive, which no plan would count on
    expect(outcome?.happened).toBeCloseTo(0.1, 10);
    expect(outcome?.within).toBe(false);
  });

  it('a planned gravity is one figure and no interval', () => {
    const { outcomes, strains } = hindsightOf(
      told(brewed, { kind: 'gravity', brew: 'Millrace', og: 1.052, fg: 1.014 }),
    );
    const beer = house.brews.find((one) => one.brew === 'Millrace');
    expect(outcomes).toMatchObject([
      { figure: 'og', likely: beer?.og, happened: 1.052, within: null },
      { figure: 'fg', likely: beer?.fg, happened: 1.014, within: null },
    ]);
    expect(strains).toEqual([]);
  });

  it('foretells no lag: it stands beside what was pitched, and told again the last counts', () => {
    const lag = (hours: number) => ({ kind: 'lag', brew: 'Millrace', hours });
    const entries = told(brewed, lag(20), lag(14));
    const planned = plan.brews.find((one) => one.brew === 'Millrace');
    const { outcomes, lags } = hindsightOf(entries);
    expect(outcomes).toEqual([]);
    expect(lags).toEqual([
      {
        entry: 3,
        brew: 'Millrace',
        yeast: 'Mill Lane Ale',
        generation: 0,
        viability: planned?.viability.likely,
        hours: 14,
      },
    ]);
    const back = resolveNews({ kind: 'undone', entry: 3 }, foldRecord(entries), house, plan, TODAY);
    if (!('entry' in back)) throw new Error('it cannot be taken back');
    expect(hindsightOf([...entries, back.entry]).lags).toMatchObject([{ entry: 2, hours: 20 }]);
    expect({ ...foldRecord(entries), entries: [] }).toEqual({
      ...foldRecord(told(brewed)),
      entries: [],
    });
  });

  it('forgets what was taken back', () => {
    const entries = told(brewed, gave(100), { kind: 'undone', entry: 2 });
    expect(hindsightOf(entries).outcomes).toEqual([]);
  });
});
