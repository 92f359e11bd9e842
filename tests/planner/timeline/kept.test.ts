// What is kept of a starter: how much, from when, how alive, and what each rule makes of it.
// Expected: planning-model.md, 'a starter adds none' (generation), rule 4, 10, 11 and 13; that rules 5–8 speak of beer; its
// share alive is that of the slurry model with no day on beer, a guess (docs/science.md).
import { describe, expect, it } from 'vitest';
import { KEPT } from '../../../planner/timeline/kept.ts';
import {
  aBrew,
  aJar,
  aSeason,
  aYeast,
  type Laid,
  lay,
  TWELVE_P,
  UNDYING,
} from '../../builders/season.ts';

type Way = {
  first?: Partial<Parameters<typeof aBrew>[0]>;
  second?: Partial<Parameters<typeof aBrew>[0]>;
  house?: Parameters<typeof aSeason>[0];
  rules?: Record<string, number>;
  laid?: Partial<Laid>;
  taker?: Partial<Laid>;
  others?: Record<string, Laid>;
};

/**
 * First of 3 March: one pack of 200 in 2 L give 200 + 1.4 × 200 = 480 B, of which it needs 180; 300 are left, at 1.68 B/mL
 * 178.6 mL. Second of the 27th draws 240 B, 142.9 mL.
 */
function kept({ first, second, house, rules, laid, taker, others }: Way = {}) {
  return lay(
    aSeason({
      rules: { ...UNDYING, keptStarterJars: 1, ...rules },
      starterGear: { vessels: 1, maxLitres: 4, stirred: true },
      brews: [
        aBrew({ brew: 'First', og: TWELVE_P, ...first }),
        aBrew({ brew: 'Second', og: TWELVE_P, ...second }),
        aBrew({ brew: 'Third', og: TWELVE_P }),
      ],
      ...house,
    }),
    {
      First: { on: '2027-03-03', starter: 2, crop: KEPT, ...laid },
      Second: { on: '2027-03-27', tank: 'Keg B', from: { harvest: 'First' }, ...taker },
      ...others,
    },
  );
}

describe('a part kept of a starter', () => {
  it('is what the starter gives beyond the need, from brew day on, of the generation of the packs', () => {
    const { t, brew } = kept();
    const [first, second] = [brew('First'), brew('Second')];
    expect(t.pitchedB[first]).toBeCloseTo(180, 0);
    expect(t.cropMl[first]).toBeCloseTo(178.6, 0);
    expect(t.harvestDay[first]).toBe(t.day[first]);
    // settled a day, as the house reads its slurry
    expect(t.usableFrom[first]).toBe((t.day[first] ?? 0) + 1);
    expect([t.ageDays[second], t.generation[second]]).toEqual([24, 0]);
    expect(t.drawMl[second]).toBeCloseTo(142.9, 0);
  });

  it('is at most as many jars as the house keeps of one starter', () => {
    const small = { store: { tempC: 3, maxJars: 12, jarMl: 100, settleDays: 1 } };
    const { t, brew } = kept({ house: small });
    expect(t.cropMl[brew('First')]).toBeCloseTo(100, 6);
    expect(kept({ house: small, rules: { keptStarterJars: 2 } }).found('draw-limit')).toEqual([]);
  });

  it('feeds no more pitches than jars', () => {
    // a starter of 2 L needs 240 × 0.125 = 30 B each, so that both together are within what there is
    const starter = 2;
    const others: Way['others'] = {
      Third: { on: '2027-04-20', tank: 'Keg A', from: { harvest: 'First' }, starter },
    };
    const two = { taker: { starter }, others } as const;
    const [said] = kept(two).found('draw-limit');
    expect(said?.says).toBe(
      'yeast kept from the starter of First would fill 1 jar more than this house keeps of one starter.',
    );
    expect(kept({ ...two, rules: { keptStarterJars: 2 } }).found('draw-limit')).toEqual([]);
  });

  it.each([
    ['without a starter', { laid: { starter: 0 as const } }],
    ['of dry packs', { house: { yeasts: [aYeast({ form: 'dry' })] } }],
    [
      'of a starter out of slurry',
      {
        house: { jars: [aJar({ harvestedOn: '2027-02-20' })] },
        laid: { from: { jar: 'J1' } },
      },
    ],
    ['where the house keeps none', { rules: { keptStarterJars: 0 } }],
  ] satisfies [string, Way][])('is nothing %s', (_, way) => {
    expect(kept(way).found('draw-limit').length).toBeGreaterThan(0);
  });

  it('has been in no beer: no rule about the beer looks at it', () => {
    const first: Way['first'] = {
      og: 1.095,
      fg: 1.02,
      ebc: 90,
      ibu: 90,
      fermentC: 22,
      additions: ['smoke'],
      souring: 'kettle',
      dryHopDay: 3,
    };
    const second = { ebc: 6, ibu: 10, fermentC: 18 };
    const beer = kept({ first, second, laid: { crop: -1 } });
    const starter = kept({ first, second, laid: { starter: 4 } });
    for (const rule of [
      'gravity-ceiling',
      'kettle-soured',
      'dry-hopped',
      'additions',
      'strong-to-light',
      'dark-to-light',
      'hoppy-to-delicate',
      'warm-to-cold',
      'later-generation',
    ]) {
      expect(starter.found(rule), rule).toEqual([]);
      expect(beer.found(rule).length, rule).toBeGreaterThan(0);
    }
    expect(kept({ first: { souring: 'mixed' } }).found('mixed-culture')).toEqual([]);
  });

  it('dies in the cold as slurry that was in no strong beer does', () => {
    const share = (first: Way['first']) => {
      const { t, brew } = kept({ first, rules: { storageLossAt1C: 0.01, storageLossAt5C: 0.01 } });
      return t.viability[brew('Second')];
    };
    // one per cent a day for 24 days
    expect(share({})).toBeCloseTo(Math.exp(-0.24), 6);
    expect(share({ og: 1.09, fg: 1.01 })).toBe(share({}));
  });

  it('is stored, aged, checked and worked on like any jar, but is no harvest', () => {
    expect(kept().sum('harvest-work')).toBe(0);
    expect(kept({ laid: { crop: -1 } }).sum('harvest-work')).toBe(160);
    expect(kept().sum('jar-work')).toBe(40);
    expect(kept().sum('check-work')).toBe(80);
    expect(kept().sum('starter-wort')).toBe(180);
    // 24 days, 0.004 a week
    expect(kept().sum('old-slurry')).toBeCloseTo((0.004 * 24) / 7, 9);
    expect(kept({ rules: { maxStorageDays: 23 } }).sum('storage-limit')).toBe(1);
    expect(kept({ rules: { maxStorageDays: 24 } }).sum('storage-limit')).toBe(0);
    const shelf = (maxJars: number) => ({
      store: { tempC: 3, maxJars, jarMl: 500, settleDays: 1 },
    });
    expect(kept({ house: shelf(0) }).sum('shelf-space')).toBe(1);
    expect(kept({ house: shelf(1) }).sum('shelf-space')).toBe(0);
    // no reserve is kept of it, though the house keeps one of each harvest
    expect(kept({ rules: { reserve: 1 } }).sum('jar-work')).toBe(40);
  });

  it('is a first pitch still, where the wort is strong', () => {
    const [said] = kept({ second: { og: 1.09 }, laid: { starter: 4 } }).found('first-into-strong');
    expect(said?.says).toMatch(/^Second .* is the first beer of its yeast\.$/);
  });

  it('leaves all in the wort where nobody takes it', () => {
    const alone = (crop: number) =>
      kept({ laid: { crop, starter: 4 }, taker: { from: 'packs' } }).sum('over-pitch');
    // 200 + 1.4 × 400 = 760 B into 180: 4.22 times, 2.72 above one and a half
    expect(alone(-1)).toBe(272);
    expect(alone(KEPT)).toBe(alone(-1));
  });
});
