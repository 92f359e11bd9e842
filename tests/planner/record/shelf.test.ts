// The shelf by hand: what stands in the cold before a harvest, after it, and once a brew has drawn from it.
import { describe, expect, it } from 'vitest';
import { Facts, shelfOf } from '../../../planner/index.ts';
import { aHouse, aPlan } from '../../builders/plan.ts';

const brewedMillrace = {
  brew: 'Millrace',
  day: '2027-01-09',
  tank: 'Keg A',
  yeast: 'Mill Lane Ale',
  source: { kind: 'fresh', packs: 1, packsFromHand: 1 },
  generation: 0,
  pitchedB: 186,
};
const brewedQuill = {
  ...brewedMillrace,
  brew: 'Quill',
  day: '2027-01-30',
  tank: 'Cone',
  source: { kind: 'harvest', brew: 'Millrace', drawMl: 184 },
  generation: 1,
};
const shelf = (today: string, facts: object = {}) =>
  shelfOf({ house: aHouse(), plan: aPlan(), facts: Facts.parse(facts), today });
const harvestedMl = (settledMl: number, state = 'sound') => ({
  brewed: [brewedMillrace],
  harvested: [{ brew: 'Millrace', day: '2027-01-23', settledMl, state }],
});

describe('before the harvest', () => {
  it('shows the listed jar, the pack in the house, and the jars to come with their codes', () => {
    const now = shelf('2027-01-04');
    expect(now.jars).toHaveLength(1);
    expect(now.jars[0]).toMatchObject({
      code: 'J1',
      generation: 3,
      ml: 220,
      alive: { on: '2027-01-04', share: { likely: 0.74 } },
      for: null,
      useBy: '2027-01-24',
      inPlan: true,
    });
    expect(now.toCome.map(({ code, ml, for: brew, kept }) => [code, ml, brew, kept])).toEqual([
      ['JEK2', 184, 'Quill', false],
      ['JEKY', 104, null, true],
    ]);
    expect(now.toCome[0]).toMatchObject({ alive: null, aliveThen: { likely: 0.86 } });
    // 483 B in 288 mL: 308.6 B in 184 mL
    expect(now.toCome[0]?.cellsB).toBeCloseTo(308.6, 1);
    const pack = now.packs.find(({ yeast }) => yeast === 'Mill Lane Ale');
    expect(pack).toMatchObject({ packs: 1, hereFrom: null, for: ['Millrace'] });
    // made on 1 December, 34 days ago: exp(-0.0018 × 34) = 0.9406, of 200 B 188.1
    expect(pack?.alive.likely).toBeCloseTo(0.9406, 4);
    expect(pack?.cellsB).toBeCloseTo(188.1, 1);
  });

  it('says of the past the last that the plan knew, with its day', () => {
    // J1 is drawn for no beer: the plan knows its share of 4 January alone
    expect(shelf('2027-01-10').jars[0]?.alive?.on).toBe('2027-01-04');
  });
});

describe('after the harvest', () => {
  it('reckons the share alive between harvest and pitch along first-order loss', () => {
    const now = shelf('2027-01-26', harvestedMl(288));
    const jar = now.jars.find(({ code }) => code === 'JEK2');
    // 0.97 on the 23rd, 0.86 on the 30th: 0.97 × (0.86 / 0.97)^(3/7) = 0.9212 on the 26th
    expect(jar?.alive?.on).toBe('2027-01-26');
    expect(jar?.alive?.share.likely).toBeCloseTo(0.9212, 4);
    expect(now.toCome).toEqual([]);
    expect(now.packs.some(({ yeast }) => yeast === 'Mill Lane Ale')).toBe(false);
  });

  it('shows what came beyond the jars of the plan by the letters of its beer', () => {
    const more = shelf('2027-01-26', harvestedMl(400));
    // 400 - 184 - 104
    expect(more.jars.find(({ code }) => code === 'JEK')).toMatchObject({ ml: 112, inPlan: false });
    const drawn = { ...harvestedMl(400), brewed: [brewedMillrace, brewedQuill] };
    const left = shelf('2027-01-31', drawn).jars.map(({ code, ml }) => [code, ml]);
    expect(left).toEqual([
      ['J1', 220],
      ['JEKY', 104],
      ['JEK', 112],
    ]);
  });

  it('shows a suspect harvest and all that comes of it, and which beers to taste', () => {
    const facts = { ...harvestedMl(288, 'suspect') };
    const now = shelf('2027-01-31', { ...facts, brewed: [brewedMillrace, brewedQuill] });
    const states = new Map(
      now.cultures.map(({ of, state }) => [
        `${of.kind} ${of.kind === 'jar' ? of.jar : of.brew}`,
        state,
      ]),
    );
    expect(states.get('harvest Millrace')).toBe('suspect');
    expect(states.get('beer Quill')).toBe('suspect');
    expect(states.get('beer Heron')).toBe('sound');
    expect(now.taste).toEqual(['Quill']);
    expect(now.says).toBe('Taste Quill (in Cone).');
  });
});
