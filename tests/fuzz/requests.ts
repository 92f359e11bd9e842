// Requests for every operation of the contract: as described, nearly so, and not at all.
import fc from 'fast-check';
import { z } from 'zod';
import { OPERATIONS, type Operation } from '../../api/routes/contract.ts';
import { HOSTILE_NAMES, HOSTILE_VALUES } from '../builders/hostile.ts';
import { fitting, type Known, knownText } from './from-schema.ts';

export type Sent = {
  method: string;
  path: string;
  headers: Record<string, string>;
  body: string | Uint8Array | FormData | null;
};

const hostile = fc.constantFrom(...HOSTILE_VALUES);

/** One change at one place of a value: something left out, added, doubled or put in its place. */
type Change = { at: number; how: 'drop' | 'put' | 'add' | 'double' | 'wrap'; with: unknown };
const change: fc.Arbitrary<Change> = fc.record({
  at: fc.nat(200),
  how: fc.constantFrom('drop', 'put', 'put', 'add', 'double', 'wrap'),
  with: fc.oneof(hostile, fc.jsonValue({ maxDepth: 1 })),
});

function changed(whole: unknown, { at, how, with: other }: Change): unknown {
  const places: { put: (value: unknown) => void; drop: () => void; now: unknown }[] = [];
  const copy = { whole: structuredClone(whole) };
  const walk = (value: unknown, holder: object, key: string) => {
    places.push({
      now: value,
      put: (made) => {
        Object.defineProperty(holder, key, {
          value: made,
          enumerable: true,
          configurable: true,
          writable: true,
        });
      },
      drop: () => {
        if (Array.isArray(holder)) holder.splice(Number(key), 1);
        else Reflect.deleteProperty(holder, key);
      },
    });
    if (typeof value !== 'object' || value === null) return;
    for (const [inner, held] of Object.entries(value)) walk(held, value, inner);
  };
  walk(copy.whole, copy, 'whole');
  const place = places[at % places.length];
  if (place === undefined) return whole;
  if (how === 'drop' && places.length > 1) place.drop();
  else if (how === 'add' && typeof place.now === 'object' && place.now !== null) {
    place.put(Array.isArray(place.now) ? [...place.now, other] : { ...place.now, surprise: other });
  } else if (how === 'double') place.put([place.now, place.now]);
  else if (how === 'wrap') place.put({ value: place.now });
  else place.put(other);
  return copy.whole;
}

/** Texts that are not what JSON.stringify makes. */
const broken = (json: string) =>
  fc.oneof(
    fc.nat(Math.max(1, json.length)).map((end) => json.slice(0, end)),
    fc.constantFrom(
      '',
      ' ',
      'null',
      '[]',
      '"x"',
      '1e999',
      `\uFEFF${json}`,
      `${json}${json}`,
      `{"__proto__":${json}}`,
      json.replace('{', '{"constructor":{"prototype":{"x":1}},'),
      json.replaceAll(/\d+/g, '1e999'),
      '['.repeat(5000),
      `${'{"a":'.repeat(33)}1${'}'.repeat(33)}`,
    ),
    fc.uint8Array({ maxLength: 60 }),
  );

function bodyOf(operation: Operation, known: Known): fc.Arbitrary<string | Uint8Array | null> {
  const { body } = operation;
  if (body === undefined) {
    return fc.oneof(
      { weight: 4, arbitrary: fc.constant(null) },
      { weight: 1, arbitrary: fc.json({ maxDepth: 2 }) },
    );
  }
  const fits = fitting(
    z.toJSONSchema(body, { io: 'input', unrepresentable: 'any' }) as object,
    known,
  );
  const near = fc
    .tuple(fits, fc.array(change, { minLength: 1, maxLength: 3 }))
    .map(([value, changes]) => changes.reduce(changed, value));
  const text = (value: unknown) => JSON.stringify(value) ?? 'null';
  return fc.oneof(
    { weight: 4, arbitrary: fits.map(text) },
    { weight: 5, arbitrary: near.map(text) },
    { weight: 1, arbitrary: fc.jsonValue({ maxDepth: 3 }).map(text) },
    { weight: 2, arbitrary: fits.chain((value) => broken(text(value))) },
  );
}

/** What may stand in a path or a query: encoded as a browser would, or broken. */
const pathText = (known: Known) =>
  fc.oneof(
    { weight: 4, arbitrary: knownText(known).map(encodeURIComponent) },
    { weight: 1, arbitrary: fc.uuid() },
    { weight: 1, arbitrary: fc.constantFrom(...HOSTILE_NAMES).map(encodeURIComponent) },
    {
      weight: 1,
      arbitrary: fc.constantFrom(
        '..',
        '%00',
        '%E0%A4%A',
        '%2e%2e%2f',
        'a'.repeat(3000),
        '.',
        '%2F',
      ),
    },
  );

function pathOf(operation: Operation, known: Known): fc.Arbitrary<string> {
  const parts = operation.path.split('/').map((part) => {
    if (!part.startsWith(':')) return fc.constant(part);
    const end = /^:[a-z]+(.*)$/i.exec(part)?.[1] ?? '';
    return pathText(known).map((text) => `${text}${end}`);
  });
  const names = Object.keys(operation.query?.shape ?? {});
  const pair = fc.tuple(
    fc.constantFrom(...names, 'surprise'),
    fc.oneof(pathText(known), fc.constantFrom('true', 'false', '2027-01-04')),
  );
  const query = fc
    .array(pair, { maxLength: names.length > 0 ? 3 : 1 })
    .map((pairs) => pairs.map(([name, value]) => `${name}=${value}`).join('&'));
  return fc.tuple(fc.tuple(...parts), query).map(([path, asked]) => {
    const place = path.join('/');
    return asked === '' ? place : `${place}?${asked}`;
  });
}

const sometimes = (name: string, ...values: string[]) =>
  fc.oneof(
    { weight: 6, arbitrary: fc.constant({}) },
    { weight: 1, arbitrary: fc.constantFrom(...values).map((value) => ({ [name]: value })) },
  );

/** A body mostly says that it is JSON, and the page's own browser mostly asks. */
const headers: fc.Arbitrary<Record<string, string>> = fc
  .tuple(
    sometimes(
      'Content-Type',
      'application/json; charset=utf-8',
      'APPLICATION/JSON',
      'text/plain',
      'application/x-www-form-urlencoded',
      'multipart/form-data',
      'multipart/form-data; boundary=x',
    ),
    fc.constantFrom('1', '1', '"1"', '0', 'W/"1"', '2', '-1', '1e9', '*', '""', 'x'.repeat(4000)),
    sometimes('If-None-Match', '*', '"x"', 'W/"'),
    sometimes('Accept', 'text/html', '*/*;q=2', 'x'),
    sometimes('Range', 'bytes=0-0', 'bytes=9-1,-'),
    sometimes('X-Forwarded-Host', 'evil.example'),
    sometimes('Cookie', 'barmline=x', '__Host-barmline=%', 'a=b; a=c;;;='),
    sometimes('Sec-Fetch-Site', 'cross-site', 'none', 'x'),
    sometimes('Origin', 'http://localhost', 'https://evil.example', 'null', ''),
  )
  .map(([type, tag, ...others]) =>
    Object.assign(
      { 'Content-Type': 'application/json', 'Sec-Fetch-Site': 'same-origin' },
      type,
      { 'If-Match': tag },
      ...others,
    ),
  );

/** A form with files of any name, for the one place that takes forms. */
const form = fc
  .array(
    fc.tuple(
      fc.constantFrom(
        'house.json',
        'brews.csv',
        'Tanks.CSV',
        'a/../jars.csv',
        '',
        ...HOSTILE_NAMES,
      ),
      fc.string({ unit: 'binary', maxLength: 200 }),
    ),
    { maxLength: 6 },
  )
  .map((files) => {
    const data = new FormData();
    for (const [name, text] of files) data.append('files', new File([text], name));
    return data;
  });

/** Requests for every operation in equal parts, and some for places that are none. */
export function requests(known: Known): fc.Arbitrary<Sent> {
  const one = (operation: Operation): fc.Arbitrary<Sent> =>
    fc
      .tuple(
        pathOf(operation, known),
        bodyOf(operation, known),
        headers,
        fc.oneof(
          { weight: 11, arbitrary: fc.constant(null) },
          {
            weight: 1,
            arbitrary: fc.constantFrom('HEAD', 'OPTIONS', 'PATCH', 'PUT', 'DELETE', 'GET', 'POST'),
          },
        ),
      )
      .map(([path, body, sent, other]) => {
        const method = other ?? operation.method.toUpperCase();
        return {
          path,
          method,
          headers: sent,
          body: method === 'GET' || method === 'HEAD' ? null : body,
        };
      });
  const formed = OPERATIONS.filter(({ path }) => path === '/api/house/import').map((operation) =>
    form.map(
      (body): Sent => ({
        path: operation.path,
        method: 'POST',
        headers: { 'If-Match': '1' },
        body,
      }),
    ),
  );
  const nowhere = fc
    .tuple(fc.array(pathText(known), { maxLength: 4 }), fc.constantFrom('GET', 'POST', 'DELETE'))
    .map(
      ([parts, method]): Sent => ({
        method,
        path: `/${['api', ...parts].join('/')}`,
        headers: {},
        body: null,
      }),
    );
  return fc.oneof(...OPERATIONS.map(one), ...formed, nowhere);
}
