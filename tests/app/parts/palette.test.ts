// The palette against WCAG 2.2: text and strain hues on paper, in both schemes, at 4.5 : 1 or more.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../../app/styles/tokens.css', import.meta.url), 'utf8');
const [light = '', dark = ''] = css.split('@media (prefers-color-scheme: dark)');

function colours(part: string): Map<string, string> {
  const found = part.split('@media print')[0]?.matchAll(/--([a-z0-9-]+): (#[0-9a-f]{6});/g) ?? [];
  return new Map([...found].map((match) => [match[1] ?? '', match[2] ?? '']));
}

/** Relative luminance (WCAG 2.2, definition). */
function luminance(hex: string): number {
  const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].toSorted((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

const TEXT = ['ink', 'ink-soft', 'red', 'good'];
const STRAINS = [1, 2, 3, 4, 5, 6].map((n) => `strain-${n}`);

describe.each([
  ['light', colours(light)],
  ['dark', colours(dark)],
])('%s', (_scheme, palette) => {
  it.each([...TEXT, ...STRAINS])('--%s reads on every paper', (name) => {
    for (const paper of ['paper', 'paper-deep', 'paper-lift']) {
      const ratio = contrast(palette.get(name) ?? '#000000', palette.get(paper) ?? '#000000');
      expect(ratio, `${name} on ${paper}`).toBeGreaterThanOrEqual(4.5);
    }
  });

  it('keeps the outline of the focus and of controls visible (3 : 1)', () => {
    for (const name of ['focus', 'rule-strong']) {
      expect(contrast(palette.get(name) ?? '', palette.get('paper') ?? '')).toBeGreaterThanOrEqual(
        3,
      );
    }
  });

  it('is complete', () => {
    expect(palette.size).toBeGreaterThanOrEqual(TEXT.length + STRAINS.length + 6);
  });
});
