// The forms of news: made from the schema of every kind, read back into news that it takes, refused beside the field.
import { describe, expect, it } from 'vitest';
import { fieldsOf, newsFrom, rowStart, written } from '../../../app/pages/tasks/tell/news-form.ts';
import {
  choicesOf,
  happenedBy,
  type Offer,
  offersFor,
  type Subject,
  startOf,
} from '../../../app/pages/tasks/tell/offers.ts';
import type { Units } from '../../../app/parts/units.ts';
import { News, type Plan } from '../../../planner/index.ts';
import { aHouse, aPlan } from '../../builders/plan.ts';

const TODAY = '2027-01-09';
const METRIC: Units = { volume: 'metric', gravity: 'sg', colour: 'ebc' };
const US: Units = { volume: 'us', gravity: 'plato', colour: 'srm' };
const KINDS = News.options.map((option) => option.shape.kind.value);
/** The first of these is brewed, so that beers and harvests can be named. */
const plan: Plan = {
  ...aPlan(),
  brews: aPlan().brews.map((brew, at) => (at === 0 ? { ...brew, done: true } : brew)),
};
const house = aHouse();
const happened = happenedBy(plan, []);

/** A form as it opens, with the first of every list chosen and a figure where one is asked for. */
function filledForm(offer: Offer, units: Units): Record<string, string> {
  const row = rowStart(offer.kind, house.yeasts[0]?.yeast ?? '', TODAY);
  return Object.fromEntries(
    fieldsOf(offer.kind).map((field) => {
      const own = field.path.startsWith('row.')
        ? row[field.spec.field]
        : startOf(field.path, offer, plan, house, TODAY);
      const start = written(field, Array.isArray(own) ? own[0] : own, units);
      if (start !== '' || !field.required) return [field.path, start];
      const choice = choicesOf(field, offer.kind, plan, house, happened)[0]?.value;
      const figure = field.spec.kind === 'number' ? written(field, 1.05, units) : 'Newcomer';
      return [field.path, choice ?? figure];
    }),
  );
}

const offersOf = (subject: Subject) =>
  offersFor(subject, plan, happened).flatMap(({ offers }) => offers);

describe('the forms', () => {
  it('offer everything that can be told but a tick and a taking back, which have places of their own', () => {
    const offered = new Set(offersOf('house').map(({ kind }) => kind));
    expect(KINDS.filter((kind) => !offered.has(kind))).toEqual(['task-done', 'undone']);
  });

  it.each(KINDS.filter((kind) => kind !== 'task-done' && kind !== 'undone'))(
    '%s: filled in, it is news of that kind, in any units',
    (kind) => {
      for (const units of [METRIC, US]) {
        const offer = { kind, fixed: {} };
        const read = newsFrom(kind, filledForm(offer, units), {}, units);
        expect(read).toHaveProperty('news.kind', kind);
      }
    },
  );

  it('ask for every field of the schema that a row has no default for', () => {
    for (const option of News.options) {
      const kind = option.shape.kind.value;
      if (kind === 'brew-added' || kind === 'jar-found') continue;
      const fields = Object.keys(option.shape).filter((name) => name !== 'kind');
      expect(fieldsOf(kind).map(({ path }) => path)).toEqual(fields);
    }
  });

  it('read gravities, litres and shares in the units they are shown in', () => {
    const gravity = { brew: 'Millrace', og: '12', fg: '' };
    // 12 °P is 1.048 (the ASBC table, as the gravity formulas are tested against).
    const read = newsFrom('gravity', gravity, {}, US);
    expect('news' in read && read.news.kind === 'gravity' && read.news.og).toBeCloseTo(1.048, 3);
    const of = JSON.stringify({ kind: 'jar', jar: 'S1' });
    const share = newsFrom('measured', { of, day: TODAY, viability: '85' }, {}, METRIC);
    expect(share).toHaveProperty('news.viability', 0.85);
    const litres = newsFrom('resized', { brew: 'Quill', volumeL: '5' }, {}, US);
    // 1 US gallon is 3.785411784 L exactly (NIST Handbook 44).
    expect('news' in litres && litres.news.kind === 'resized' && litres.news.volumeL).toBeCloseTo(
      18.927,
      3,
    );
  });

  it('say beside each field what is wrong with it, all at once', () => {
    const read = newsFrom('gravity', { brew: '', og: '1048', fg: 'thin' }, {}, METRIC);
    expect('wrong' in read && read.wrong.map(({ path }) => path)).toEqual(['brew', 'og', 'fg']);
    const share = newsFrom('measured', { of: '', day: '', viability: '101' }, {}, METRIC);
    expect('wrong' in share && share.wrong).toEqual([
      { path: 'of', says: 'What is missing.' },
      { path: 'day', says: 'Day is missing.' },
      { path: 'viability', says: '101 is too much: up to 100 %.' },
    ]);
    const packs = newsFrom('packs-bought', { yeast: 'x', packs: '1.5', arrivesOn: TODAY }, {}, US);
    expect(packs).toEqual({ wrong: [{ path: 'packs', says: 'It has to be a whole number.' }] });
  });
});

describe('what fits', () => {
  it('a beer in its tank: what beers and their yeast do, nothing of a brew to come', () => {
    const [done] = plan.brews;
    const kinds = offersOf({ brew: done?.brew ?? '' }).map(({ kind }) => kind);
    expect(kinds).toEqual(expect.arrayContaining(['slow', 'gravity', 'hopped', 'suspect']));
    expect(kinds).not.toContain('slipped');
  });

  it('a brew to come: what brews do, and the jar it waits for', () => {
    const open = plan.brews.find((brew) => !brew.done && brew.source.kind === 'jar');
    const named = plan.brews.find((brew) => !brew.done)?.brew ?? '';
    const kinds = offersOf({ brew: named }).map(({ kind }) => kind);
    expect(kinds).toEqual(expect.arrayContaining(['slipped', 'not-yet', 'resized']));
    expect(kinds).not.toContain('slow');
    if (open) expect(offersOf({ brew: open.brew }).map(({ kind }) => kind)).toContain('jar-gone');
  });

  it('a beer that was told brewed while its draft still waits is a beer', () => {
    const open = plan.brews.find((brew) => !brew.done)?.brew ?? '';
    const news = News.parse({ kind: 'task-done', task: `brew-pitch:${open}`, day: TODAY });
    const told = [{ no: 1, at: `${TODAY}T08:00:00Z`, news, says: '' }];
    const offers = offersFor({ brew: open }, plan, happenedBy(plan, told)).flatMap(
      (group) => group.offers,
    );
    expect(offers.map(({ kind }) => kind)).toContain('gravity');
    const back = News.parse({ kind: 'undone', entry: 1 });
    const undone = [...told, { no: 2, at: `${TODAY}T08:01:00Z`, news: back, says: '' }];
    expect(happenedBy(plan, undone).brewed.has(open)).toBe(false);
  });
});
