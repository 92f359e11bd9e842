// Folding against its definition in RFC 5545 §3.1: at most 75 octets a line, whole characters, nothing lost.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { foldLines } from '../../../api/feed/fold.ts';

const unfold = (text: string) => text.replaceAll('\r\n ', '');

test.each([
  ['74 octets', 'a'.repeat(74), ['a'.repeat(74)]],
  ['75 octets', 'a'.repeat(75), ['a'.repeat(75)]],
  ['76 octets', 'a'.repeat(76), ['a'.repeat(75), ' a']],
  // the blank counts: 75 + 74 = 149 letters fill two lines
  ['149 octets', 'a'.repeat(149), ['a'.repeat(75), ` ${'a'.repeat(74)}`]],
  ['150 octets', 'a'.repeat(150), ['a'.repeat(75), ` ${'a'.repeat(74)}`, ' a']],
  // two octets each: 37 fit into 75
  ['two-octet letters', 'ü'.repeat(38), ['ü'.repeat(37), ' ü']],
  // four octets each: 18 fit into 75
  ['four-octet characters', '🍺'.repeat(19), ['🍺'.repeat(18), ' 🍺']],
])('%s', (_what, line, folded) => {
  expect(foldLines(line).split('\r\n')).toEqual(folded);
});

test('any text: no line too long, no character broken, and unfolding gives it back', () => {
  const line = fc
    .string({ unit: 'grapheme', maxLength: 400 })
    .map((text) => text.replaceAll(/[\r\n]/g, ''))
    .filter((text) => !text.startsWith(' '));
  fc.assert(
    fc.property(fc.array(line, { maxLength: 5 }), (lines) => {
      const text = lines.join('\r\n');
      const folded = foldLines(text);
      expect(unfold(folded)).toBe(text);
      for (const one of folded.split('\r\n')) {
        expect(Buffer.byteLength(one)).toBeLessThanOrEqual(75);
        expect(one).not.toMatch(/\p{Cs}/u);
      }
    }),
  );
});
