// Keeping one change of a draft away, and plans of before as they are listed.
import { describe, expect, it } from 'vitest';
import { earlierWords } from '../../../app/pages/tasks/earlier.ts';
import { holdNews } from '../../../app/pages/tasks/hold.ts';
import type { EarlierPlan } from '../../../app/queries/history.ts';
import { Change, News } from '../../../planner/index.ts';
import { aPlan } from '../../builders/plan.ts';

const plan = aPlan();
const aChange = (part: object) =>
  Change.parse({
    kind: 'moved',
    brew: 'Quill',
    before: null,
    after: null,
    day: '2027-02-01',
    says: 'Quill moves.',
    reason: 'It is cheaper.',
    ...part,
  });

describe('keeping what a draft would change', () => {
  const quill = plan.brews.find((one) => one.brew === 'Quill');

  it('holds the brew to what the plan in force says: its day, its tank or its yeast', () => {
    const held = (kind: string) => News.parse(holdNews(aChange({ kind }), plan));
    expect(held('moved')).toMatchObject({ kind: 'pinned', day: quill?.day, tank: null });
    expect(held('tank')).toMatchObject({ kind: 'pinned', day: null, tank: quill?.tank });
    // Quill draws from the harvest of Millrace (tests/builders/plan.ts).
    expect(held('source')).toMatchObject({ source: { kind: 'harvest', brew: 'Millrace' } });
  });

  it('offers nothing where there is nothing to hold: a new brew, an amount, a brew that is done', () => {
    expect(holdNews(aChange({ brew: 'Newcomer' }), plan)).toBeNull();
    expect(holdNews(aChange({ kind: 'amount' }), plan)).toBeNull();
    const done = { ...plan, brews: plan.brews.map((one) => ({ ...one, done: true })) };
    expect(holdNews(aChange({}), done)).toBeNull();
  });
});

describe('earlier plans', () => {
  it('say since when, what they cost and what was wrong with them', () => {
    const one: EarlierPlan = {
      id: 'c0a8e1a2-0000-4000-8000-000000000000',
      madeAt: '2027-01-04T08:00:00.000Z',
      inForceAt: '2027-01-04T08:00:00.000Z',
      inForce: false,
      today: '2027-01-04',
      recordNo: 0,
      houseRevision: 1,
      sameState: true,
      totals: { ...plan.totals, costMinor: 17_700, leftOut: 1, lateDays: 2 },
    };
    const words = earlierWords(one, { currency: 'EUR', minorPerMajor: 100 });
    expect(words).toContain('4 January 2027');
    expect(words).toContain('€177; 1 brew left out; 2 days late; nothing has happened since');
  });
});
