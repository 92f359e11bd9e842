// Strains must be told apart: by letter always, by hue and pattern together for thirty of them.
import { describe, expect, it } from 'vitest';
import { strainLooks } from '../../../app/parts/strains.ts';
import { aHouse, aPlan, aYeast, heron } from '../../builders/plan.ts';

function looksOf(names: string[]) {
  const house = aHouse({ yeasts: names.map((yeast) => aYeast({ yeast })) });
  const plan = aPlan({ brews: [], harvests: [], shelf: [] });
  return [...strainLooks(plan, house).values()];
}

describe('looks', () => {
  it('takes the first free letter of a name', () => {
    expect(looksOf(['Mill Lane', 'Marsh', 'MM']).map((look) => look.letter)).toEqual([
      'M',
      'A',
      'M2',
    ]);
  });

  it('gives names without letters one all the same', () => {
    expect(looksOf(['–', '·']).map((look) => look.letter)).toEqual(['Y2', 'Y3']);
  });

  it('repeats no pair of hue and pattern within thirty strains', () => {
    const looks = looksOf(Array.from({ length: 30 }, (_, at) => `Strain ${at}`));
    const pairs = new Set(looks.map((look) => `${look.hue} ${look.weave}`));
    expect(pairs.size).toBe(30);
    expect(new Set(looks.map((look) => look.letter)).size).toBe(30);
  });

  it('do not change when a new plan uses the strains in another order', () => {
    const house = aHouse();
    const one = strainLooks(aPlan(), house);
    const other = strainLooks(aPlan({ brews: [heron()] }), house);
    expect(other).toEqual(one);
  });
});
