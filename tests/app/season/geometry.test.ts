// The picture's geometry: worked small cases first, then what must hold for every season.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dayUnder,
  layOut,
  type Sizes,
  threadInk,
  threadWidth,
  VERTICAL_GAP,
  xOfDay,
} from '../../../app/pages/season/geometry.ts';
import { weave } from '../../../app/pages/season/weave.ts';
import { dayNumber } from '../../../app/parts/days.ts';
import { aHouse, aPlan } from '../../builders/plan.ts';
import { aWovenSeason } from './woven.ts';

const SIZES: Sizes = {
  pxPerDay: 10,
  axis: 50,
  barHeight: 30,
  outerGutter: 20,
  innerGutter: 10,
  lane: 10,
  storePadding: 10,
};

function smallPicture() {
  return layOut(weave(aPlan(), aHouse()), SIZES);
}

describe('the small season', () => {
  it('puts the tanks on both banks of the store, the larger half above', () => {
    const picture = smallPicture();
    expect(picture.rows.map((row) => [row.tank, row.bank])).toEqual([
      ['Keg A', 'upper'],
      ['Keg B', 'upper'],
      ['Cone', 'lower'],
    ]);
    // axis 50, then two rows of 20 + 30 + 10 = 60 each
    expect(picture.store.top).toBe(170);
    expect(picture.rows[2]?.top).toBe(picture.store.bottom);
  });

  it('draws a bar from the middle of the brew day to the middle of the day it is emptied', () => {
    const picture = smallPicture();
    const millrace = picture.bars.find((bar) => bar.bar.brew === 'Millrace');
    // 9 January to 23 January: 14 days of 10 px; the picture begins 3 days before the plan's 4 January
    expect(millrace?.width).toBe(140);
    expect(picture.firstDay).toBe(dayNumber('2027-01-01'));
    expect(millrace?.x).toBe(8 * 10 + 5);
  });

  it('lets a thread leave under its beer, run through the store and enter under the next', () => {
    const picture = smallPicture();
    const thread = picture.threads.find((one) => one.strand.to === 'Quill');
    const quill = picture.bars.find((bar) => bar.bar.brew === 'Quill');
    const millrace = picture.bars.find((bar) => bar.bar.brew === 'Millrace');
    // Millrace lies above the store: its yeast leaves by the lower edge, at its right end.
    expect(thread?.leaves?.y).toBe((millrace?.y ?? 0) + 30);
    expect(thread?.leaves?.x).toBeLessThanOrEqual((millrace?.x ?? 0) + 140);
    // Quill lies below it: the yeast comes in by the upper edge, at its left end.
    expect(thread?.enters?.y).toBe(quill?.y);
    expect(thread?.enters?.x).toBeGreaterThanOrEqual(quill?.x ?? Number.NaN);
    expect(thread?.y).toBeGreaterThan(picture.store.top);
    expect(thread?.y).toBeLessThan(picture.store.bottom);
  });

  it('thins and pales a thread as its yeast dies', () => {
    const thread = smallPicture().threads.find((one) => one.strand.to === 'Quill');
    // 97 % at the harvest, 86 % a week later
    expect(thread?.startWidth).toBe(threadWidth(0.97));
    expect(thread?.endWidth).toBe(threadWidth(0.86));
    expect(thread?.endWidth).toBeLessThan(thread?.startWidth ?? 0);
    expect(thread?.endInk).toBeLessThan(thread?.startInk ?? 0);
  });

  it('splits a harvest that feeds two: both threads leave at one point', () => {
    const picture = smallPicture();
    const [first, second] = picture.threads.filter((one) => one.strand.from.name === 'Millrace');
    expect(first?.leaves).toEqual(second?.leaves);
    expect(first?.y).not.toBe(second?.y);
  });

  it('brings bought packs in on the side away from the store', () => {
    const picture = smallPicture();
    const packs = picture.purchases.find((one) => one.purchase.brew === 'Heron');
    expect(packs?.purchase).toMatchObject({ packs: 1, starter: true });
    const heron = picture.bars.find((bar) => bar.bar.brew === 'Heron');
    expect(packs?.y).toBe(heron?.y);
  });

  it('marks every end of a line at the right end of its last beer', () => {
    const picture = smallPicture();
    expect(picture.ends.map((end) => end.end.brew)).toEqual(['Quill', 'Heron']);
    const quill = picture.bars.find((bar) => bar.bar.brew === 'Quill');
    expect(picture.ends[0]?.x).toBe((quill?.x ?? 0) + (quill?.width ?? 0));
  });
});

describe('an empty season', () => {
  it('is a calendar over empty tanks, not a crash', () => {
    const plan = aPlan({ brews: [], harvests: [], shelf: [], orders: [], chains: [] });
    const picture = layOut(weave(plan, aHouse()), SIZES);
    expect(picture.bars).toEqual([]);
    expect(picture.rows).toHaveLength(3);
    expect(picture.height).toBeGreaterThan(0);
    expect(Number.isFinite(picture.width)).toBe(true);
  });
});

describe('the scales', () => {
  it.each([
    [1, 5.2],
    [0.75, 3.2],
    [0.5, 1.2],
    [0.2, 1.2],
  ])('draws a thread of which the share %d is alive %d px thick', (share, px) => {
    expect(threadWidth(share)).toBeCloseTo(px, 10);
  });

  it('never lets a thread pale away', () => {
    expect(threadInk(0)).toBeGreaterThan(0.3);
  });

  it('finds the day under a pixel again', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 15_000, max: 30_000 }),
        fc.double({ min: 2, max: 200, noNaN: true }),
        fc.integer({ min: 0, max: 400 }),
        (firstDay, pxPerDay, after) => {
          const picture = { firstDay, pxPerDay };
          const middle = xOfDay(firstDay + after, picture) + pxPerDay / 2;
          expect(Math.floor(dayUnder(middle, picture))).toBe(firstDay + after);
        },
      ),
    );
  });
});

describe('every season', () => {
  it('keeps bars, threads and knots inside the picture', () => {
    fc.assert(
      fc.property(aWovenSeason(), (woven) => {
        const picture = layOut(woven, SIZES);
        for (const bar of picture.bars) {
          expect(bar.x).toBeGreaterThanOrEqual(0);
          expect(bar.x + bar.width).toBeLessThanOrEqual(picture.width);
          expect(bar.y + bar.height).toBeLessThanOrEqual(picture.height);
        }
        for (const thread of picture.threads) {
          expect(thread.y).toBeGreaterThan(picture.store.top);
          expect(thread.y).toBeLessThan(picture.store.bottom);
          expect(thread.endX).toBeGreaterThanOrEqual(thread.startX);
          expect(`${thread.body}${thread.core}`).not.toContain('NaN');
        }
      }),
    );
  });

  it('gives every vertical an x of its own, so that no two threads lie on each other', () => {
    fc.assert(
      fc.property(aWovenSeason(), (woven) => {
        const picture = layOut(woven, SIZES);
        const leaving = new Map(
          picture.threads.flatMap((t) => (t.leaves ? [[t.strand.from.name, t.leaves.x]] : [])),
        );
        const entering = new Map(
          picture.threads.flatMap((t) => (t.enters ? [[t.strand.to ?? '', t.enters.x]] : [])),
        );
        const xs = [...leaving.values(), ...entering.values()].map(Number);
        const sorted = xs.toSorted((a, b) => a - b);
        for (let at = 1; at < sorted.length; at += 1) {
          const gap = (sorted[at] ?? 0) - (sorted[at - 1] ?? 0);
          expect(gap).toBeGreaterThanOrEqual(VERTICAL_GAP - 1e-6);
        }
      }),
    );
  });
});
