// From a zod error to plain sentences: whatever a schema refuses, nobody reads the parser's own words.
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { OPERATIONS } from '../../../api/routes/contract.ts';
import { problemsOf } from '../../../api/routes/problems.ts';
import { News, parseHouse } from '../../../planner/index.ts';
import { aHouse } from '../../builders/plan.ts';

/** Words of zod 4's English messages (zod/v4/locales/en). */
const JARGON =
  /Invalid (input|discriminator|string|key|option|element|UUID)|Too (small|big)|Unrecognized key|expected \w+ to have|received/i;

function said(schema: z.ZodType, value: unknown): string[] {
  const { error } = schema.safeParse(value);
  if (!error) throw new Error('the schema takes it');
  return problemsOf(error, value).map(({ message }) => message);
}

describe('a refused value is said', () => {
  it.each<[string, z.ZodType, unknown, string]>([
    [
      'too small',
      z.strictObject({ a: z.number().min(3) }),
      { a: 1 },
      'a is 1: it must be at least 3.',
    ],
    [
      'not above',
      z.strictObject({ a: z.number().gt(0) }),
      { a: 0 },
      'a is 0: it must be more than 0.',
    ],
    [
      'too short',
      z.strictObject({ a: z.string().min(2) }),
      { a: 'x' },
      'a is x: it must be at least 2 characters.',
    ],
    [
      'an empty list',
      z.strictObject({ a: z.array(z.number()).min(1) }),
      { a: [] },
      'a is []: it must be at least 1 entry.',
    ],
    [
      'no whole number',
      z.strictObject({ a: z.number().int() }),
      { a: 1.5 },
      'a is 1.5: it must be a whole number.',
    ],
    ['another type', z.strictObject({ a: z.number() }), { a: 'x' }, 'a is x: it must be a number.'],
    [
      'no id',
      z.strictObject({ a: z.uuid() }),
      { a: 'x' },
      'a is x: it must be an id as the server gave it.',
    ],
    ['not the one', z.strictObject({ a: z.literal(true) }), { a: 1 }, 'a is 1: it must be true.'],
    [
      'own words',
      z.strictObject({ a: z.number().min(3, 'is too few') }),
      { a: 1 },
      'a is 1: is too few.',
    ],
  ])('%s', (_name, schema, value, sentence) => {
    expect(said(schema, value)).toEqual([sentence]);
  });

  it('with the kinds that there are', () => {
    expect(said(News, { kind: 'told' }).join()).toMatch(
      /^kind is told: it must be one of brewed, /,
    );
  });
});

describe('no route answers in the words of the parser', () => {
  const wrong = [
    [],
    'x',
    7,
    null,
    { kind: 7 },
    { kinds: [] },
    { files: [] },
    { seed: -1, steps: 0.5 },
  ];
  const bodies = OPERATIONS.flatMap(({ body, path }) => (body ? [[path, body] as const] : []));
  it.each(bodies)('%s', (_path, schema) => {
    for (const value of wrong) {
      const { error } = schema.safeParse(value);
      if (error)
        expect(
          problemsOf(error, value)
            .map((p) => p.message)
            .join('\n'),
        ).not.toMatch(JARGON);
    }
  });

  it('nor does a house, field by field', () => {
    const house = aHouse();
    const [brew] = house.brews;
    for (const value of [null, 'x', -1e9, 1e9, 0.5, [], {}, true]) {
      for (const key of Object.keys(house)) {
        const { problems } = parseHouse({ ...house, [key]: value });
        expect(problems.map((p) => p.message).join('\n')).not.toMatch(JARGON);
      }
      for (const key of Object.keys(brew ?? {})) {
        const { problems } = parseHouse({ ...house, brews: [{ ...brew, [key]: value }] });
        expect(problems.map((p) => p.message).join('\n')).not.toMatch(JARGON);
      }
    }
  });
});
