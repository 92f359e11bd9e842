// Codes on lids: short, without look-alikes, one for each jar, and the same whatever the plan makes of the season.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jarCoder, LETTERS, looksLikeCode } from '../../../planner/tasks/jar-codes.ts';
import { aBrew, aJar } from '../../builders/plan.ts';

const brewsNamed = (names: readonly string[]) => names.map((brew) => ({ ...aBrew(), brew }));
const names = fc.uniqueArray(fc.string({ minLength: 1, maxLength: 30 }), { maxLength: 250 });

describe('the code of a jar', () => {
  it('has four signs, none of which looks like another one', () => {
    const code = jarCoder({ brews: brewsNamed(['Millrace']), jars: [] }).jar('Millrace', 0, false);
    expect(code).toMatch(/^[A-Z]{3}[0-9]$/);
    // pairs that are mistaken for one another, upside down included: common practice, no source
    const pairs = ['0O', 'OQ', 'OD', '1I', '1L', 'IL', '2Z', '3E', '49', '5S', '6G', '69', '8B'];
    const signs = `${LETTERS}245678`;
    for (const pair of [...pairs, 'MW', 'UV', 'AV']) {
      expect([...pair].filter((sign) => signs.includes(sign)).length).toBeLessThan(2);
    }
  });

  it('is that of no other jar of the house, for any names and any number of jars', () => {
    fc.assert(
      fc.property(names, fc.integer({ min: 1, max: 40 }), (all, jars) => {
        const coder = jarCoder({ brews: brewsNamed(all), jars: [] });
        const codes = all.flatMap((brew) => [
          coder.beer(brew),
          ...Array.from({ length: jars }, (_, at) => coder.jar(brew, at, false)),
          ...Array.from({ length: jars }, (_, at) => coder.jar(brew, at, true)),
        ]);
        expect(new Set(codes).size).toBe(codes.length);
        expect(codes.every(looksLikeCode)).toBe(true);
      }),
      { numRuns: 30 },
    );
  });

  it('has four signs for ten jars that are drawn and ten spare ones', () => {
    const coder = jarCoder({ brews: brewsNamed(['Millrace']), jars: [] });
    for (const spare of [false, true]) {
      expect(coder.jar('Millrace', 9, spare)).toHaveLength(4);
      expect(coder.jar('Millrace', 10, spare)).toHaveLength(5);
    }
  });

  it('stays when beers are added behind, and with the fullest house there is', () => {
    const all = Array.from({ length: 2000 }, (_, at) => `Brew ${at}`);
    const before = jarCoder({ brews: brewsNamed(all.slice(0, 60)), jars: [] });
    const after = jarCoder({ brews: brewsNamed(all), jars: [] });
    for (const brew of all.slice(0, 60)) expect(after.beer(brew)).toBe(before.beer(brew));
    expect(new Set(all.map(after.beer)).size).toBe(2000);
  });

  it('is not given again while a jar of the list wears it', () => {
    const brews = brewsNamed(['Millrace']);
    const old = jarCoder({ brews, jars: [] }).jar('Millrace', 0, false);
    const next = jarCoder({ brews, jars: [aJar({ jar: old.toLowerCase() })] });
    expect(next.beer('Millrace')).not.toBe(old.slice(0, 3));
    expect(looksLikeCode('J1')).toBe(false);
  });
});
