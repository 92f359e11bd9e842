// The code of an address against the fixed parts that ISO/IEC 18004 gives every code: its corners and its quiet border.
import { encode } from 'uqr';
import { expect, test } from 'vitest';
import { codePath } from '../../../app/pages/subscribe/scan-code.tsx';

const text = `webcal://brewhouse.example/feed/${'A'.repeat(43)}.ics`;

test('the corners are finder patterns, the border of four stays light, each dark module is one square', () => {
  const { data, size } = encode(text, { ecc: 'M', border: 4 });
  // 17 + 4 × version modules a side, and the border twice
  expect((size - 8 - 17) % 4).toBe(0);
  const finder = (y: number, x: number) => {
    const ring = Math.max(Math.abs(y - 3), Math.abs(x - 3));
    return ring === 3 || ring <= 1;
  };
  for (const [top, left] of [
    [4, 4],
    [4, size - 11],
    [size - 11, 4],
  ] as const) {
    for (let y = 0; y < 7; y += 1) {
      for (let x = 0; x < 7; x += 1) expect(data[top + y]?.[left + x]).toBe(finder(y, x));
    }
  }
  for (let at = 0; at < size; at += 1) {
    for (const edge of [0, 1, 2, 3, size - 1, size - 4]) {
      expect(data[edge]?.[at] || data[at]?.[edge]).toBe(false);
    }
  }
  const squares = [...codePath(data).matchAll(/M(\d+) (\d+)h1v1h-1z/g)].map(([, x, y]) => [x, y]);
  expect(squares).toHaveLength(data.flat().filter(Boolean).length);
  for (const [x, y] of squares) expect(data[Number(y)]?.[Number(x)]).toBe(true);
});
