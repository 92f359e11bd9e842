// The sentences about a brew that picture, table and reading line share.
import { expect, test } from 'vitest';
import { sourceWords } from '../../../app/parts/words.ts';
import { quill } from '../../builders/plan.ts';

const METRIC = { volume: 'metric', gravity: 'sg', colour: 'ebc' } as const;
/** A figure and its unit are kept together by a no-break space. */
const plain = (text: string) => text.replaceAll('\u00a0', ' ');

test('slurry is said to come out of a beer, or to be kept from its starter', () => {
  const { source } = quill();
  if (source.kind !== 'harvest') throw new TypeError('Quill is pitched from a harvest');
  expect(plain(sourceWords(quill(), METRIC))).toBe('184 mL of slurry out of Millrace');
  expect(plain(sourceWords(quill({ source: { ...source, ofStarter: true } }), METRIC))).toBe(
    '184 mL kept from the starter of Millrace',
  );
});
