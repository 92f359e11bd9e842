// From a JSON Schema to values that fit it, as far as its words go: what the API says of itself is what is sent to it.
import fc from 'fast-check';

type Schema = {
  $ref?: string;
  $defs?: Record<string, Schema>;
  type?: string | string[];
  enum?: unknown[];
  const?: unknown;
  anyOf?: Schema[];
  oneOf?: Schema[];
  allOf?: Schema[];
  properties?: Record<string, Schema>;
  required?: string[];
  additionalProperties?: boolean | Schema;
  items?: Schema;
  minItems?: number;
  maxItems?: number;
  minLength?: number;
  maxLength?: number;
  minimum?: number;
  maximum?: number;
  exclusiveMinimum?: number;
  exclusiveMaximum?: number;
  pattern?: string;
  format?: string;
};

const MOST_ITEMS = 3;
const MOST_DEPTH = 8;

/** Texts that mean something to the app: names, ids, days. They are looked up when a value is made, so that one set of makers does for many apps. */
export type Known = { texts: readonly string[] };

/** One of the texts that are known at the moment. */
export const knownText = (known: Known): fc.Arbitrary<string> =>
  fc.nat(10_000).map((at) => known.texts[at % known.texts.length] ?? '');

/** Values that fit a schema. */
export function fitting(whole: Schema, known: Known): fc.Arbitrary<unknown> {
  const defs = whole.$defs ?? {};
  const texts = knownText(known);

  const text = (schema: Schema): fc.Arbitrary<unknown> => {
    if (schema.format === 'uuid') return fc.oneof(fc.uuid(), texts);
    const least = schema.minLength ?? 0;
    const most = Math.min(schema.maxLength ?? 40, least + 40);
    const plain = fc.string({ unit: 'grapheme', minLength: least, maxLength: most });
    const patterned = schema.pattern === undefined ? plain : matching(schema.pattern, plain);
    return fc.oneof({ weight: 3, arbitrary: texts }, { weight: 1, arbitrary: patterned });
  };

  const number = (schema: Schema, integer: boolean): fc.Arbitrary<unknown> => {
    const min = schema.minimum ?? schema.exclusiveMinimum ?? -1000;
    const max = Math.max(min, schema.maximum ?? schema.exclusiveMaximum ?? min + 2000);
    if (integer)
      return fc.integer({ min: Math.ceil(min), max: Math.floor(Math.min(max, 2 ** 31)) });
    return fc.double({ min, max, noNaN: true });
  };

  const object = (schema: Schema, depth: number): fc.Arbitrary<unknown> => {
    const { properties = {}, required = [], additionalProperties } = schema;
    const fields = Object.fromEntries(
      Object.entries(properties).map(([name, inner]) => [name, value(inner, depth + 1)]),
    );
    const record = fc.record(fields, { requiredKeys: required.filter((name) => name in fields) });
    if (typeof additionalProperties !== 'object') return record;
    const more = fc.dictionary(texts, value(additionalProperties, depth + 1), { maxKeys: 3 });
    return fc.tuple(more, record).map(([some, own]) => ({ ...some, ...(own as object) }));
  };

  const value = (schema: Schema, depth: number): fc.Arbitrary<unknown> => {
    if (schema.$ref !== undefined) {
      const found = defs[schema.$ref.split('/').at(-1) ?? ''];
      return found === undefined || depth > MOST_DEPTH
        ? fc.constant(null)
        : value(found, depth + 1);
    }
    if (schema.enum !== undefined) return fc.constantFrom(...schema.enum);
    if ('const' in schema) return fc.constant(schema.const);
    const choices = schema.anyOf ?? schema.oneOf;
    if (choices !== undefined) return fc.oneof(...choices.map((one) => value(one, depth + 1)));
    const [type] = [schema.type].flat();
    if (type === 'string') return text(schema);
    if (type === 'number' || type === 'integer') return number(schema, type === 'integer');
    if (type === 'boolean') return fc.boolean();
    if (type === 'null') return fc.constant(null);
    if (type === 'array') {
      const minLength = schema.minItems ?? 0;
      const maxLength = Math.max(minLength, Math.min(schema.maxItems ?? MOST_ITEMS, MOST_ITEMS));
      return fc.array(value(schema.items ?? {}, depth + 1), { minLength, maxLength });
    }
    if (type === 'object' || schema.properties !== undefined) return object(schema, depth);
    return fc.jsonValue({ maxDepth: 2 });
  };

  return value(whole, 0);
}

function matching(pattern: string, otherwise: fc.Arbitrary<string>): fc.Arbitrary<string> {
  try {
    return fc.stringMatching(new RegExp(pattern));
  } catch {
    // A few patterns (look-behind, classes of Unicode) cannot be turned around.
    return otherwise;
  }
}
