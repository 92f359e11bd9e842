// Thousands of requests for every route: each is answered as promised or refused in the one shape, and a refusal changes no row.
//
// FUZZ_REQUESTS and FUZZ_SEED choose how many and which; `npm run fuzz` sends ten times as many, each time others.
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createClient } from '@libsql/client';
import { hash } from '@node-rs/argon2';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OPERATIONS } from '../../api/routes/contract.ts';
import { isMethodOf } from '../../api/routes/places.ts';
import { addPlan } from '../../api/store/plans.ts';
import { ErrorBody } from '../../planner/index.ts';
import { type OpenApp, type OpenOptions, openApp } from '../builders/app.ts';
import { aPlan } from '../builders/plan.ts';
import type { Known } from './from-schema.ts';
import { requests, type Sent } from './requests.ts';

const REQUESTS = Number(process.env.FUZZ_REQUESTS ?? 2000);
const SEED = Number(process.env.FUZZ_SEED ?? 20_270_104);
// A fresh app now and then: what was accepted leads away from the state in which most can be accepted.
const PER_APP = 250;

/** What stands in every table, as one sum; told from a connection of its own, which sees whether anybody wrote. */
function rowsOf(open: OpenApp) {
  const client = createClient({ url: pathToFileURL(join(open.folder, 'barmline.db')).href });
  let kept = { version: -1, sum: '' };
  const sumUp = async () => {
    const tables = await client.execute(
      "SELECT name FROM sqlite_master WHERE type = 'table' ORDER BY name",
    );
    const sum = createHash('sha256');
    for (const { name } of tables.rows) {
      const { rows } = await client.execute(`SELECT * FROM "${String(name)}"`);
      sum.update(`${String(name)} ${JSON.stringify(rows)}`);
    }
    return sum.digest('hex');
  };
  return {
    digest: async () => {
      const { rows } = await client.execute('PRAGMA data_version');
      const version = Number(rows[0]?.data_version);
      if (version !== kept.version) kept = { version, sum: await sumUp() };
      return kept.sum;
    },
    close: () => client.close(),
  };
}

const pool: Known = { texts: [''] };
const sendable = requests(pool);

type Outcome = { status: number; type: string; text: string };

async function ask(open: OpenApp, sent: Sent, more: Record<string, string>): Promise<Outcome> {
  const answer = await open.app.request(sent.path, {
    method: sent.method,
    headers: { ...sent.headers, ...more },
    ...(sent.body === null ? {} : { body: sent.body as BodyInit }),
  });
  const type = answer.headers.get('Content-Type') ?? '';
  // A stream of events goes on as long as the run does: it is left again.
  if (type.startsWith('text/event-stream')) {
    await answer.body?.cancel();
    return { status: answer.status, type, text: '' };
  }
  return { status: answer.status, type, text: await answer.text() };
}

const LEAK =
  /node_modules|\.tsx?:\d|\.m?js:\d|\bat \w[\w.]* \(|SQLITE|Failed query|insert into|\[object |libsql/;

function judge(sent: Sent, { status, type, text }: Outcome, changed: boolean): void {
  const what = `${sent.method} ${sent.path}: ${status} ${text.slice(0, 300)}`;
  expect(status, what).toBeLessThan(500);
  if (status >= 400) {
    expect(changed, `a refusal changed a row: ${what}`).toBe(false);
    expect(type, what).toMatch(/^application\/json/);
    if (sent.method !== 'HEAD') {
      const { error } = ErrorBody.parse(JSON.parse(text));
      // What was sent may be said back, in quotes; the sentence itself shows nothing of the inside.
      const own = error.problems.map(({ code, path, bound, remedy }) => [
        code,
        path,
        bound,
        remedy,
      ]);
      expect(JSON.stringify([error.code, own]), what).not.toMatch(/NaN|undefined/);
      expect(error.message.length, what).toBeGreaterThan(10);
      if (!LEAK.test(JSON.stringify([sent.path, String(sent.body)])))
        expect(text, what).not.toMatch(LEAK);
    }
    return;
  }
  if (sent.method === 'GET' || sent.method === 'HEAD')
    expect(changed, `reading changed a row: ${what}`).toBe(false);
  const promised = OPERATIONS.filter((one) => isMethodOf(one, sent.method)).flatMap((one) =>
    Object.keys(one.answers),
  );
  expect([...promised, '304'], what).toContain(String(status));
}

const PASSWORD = 'four unrelated words';
const STATES: readonly { name: string; options: OpenOptions; signIn: boolean }[] = [
  { name: 'a plan in force and a draft', options: {}, signIn: false },
  { name: 'an empty database', options: { house: null }, signIn: false },
  { name: 'a house without a plan', options: { plan: null }, signIn: false },
  { name: 'shut, nobody signed in', options: { doors: { reachable: true } }, signIn: false },
  { name: 'shut, signed in', options: { doors: { reachable: true } }, signIn: true },
];

/** Opens an app in a state and gathers the texts that mean something in it. */
async function openState({ options, signIn }: (typeof STATES)[number]) {
  const stored = signIn ? await hash(PASSWORD, { memoryCost: 64, timeCost: 1 }) : null;
  const open = await openApp({
    ...options,
    workerUrl: new URL('./quiet-worker.mjs', import.meta.url),
    stopGraceMs: 1,
    doors: { ...options.doors, password: () => stored },
  });
  const known = [
    '2027-01-04',
    '2027-02-06',
    '2026-12-31',
    'house.json',
    'brews.csv',
    'A'.repeat(43),
    'jar',
  ];
  const draft = crypto.randomUUID();
  if (options.house !== null && options.plan !== null) {
    const plan = aPlan();
    await open.parts.store.write((tx) =>
      addPlan(
        tx,
        {
          id: draft,
          season: 1,
          madeAt: '2027-01-04T08:00:00.000Z',
          houseRevision: 1,
          recordNo: 0,
          plan,
          changes: null,
        },
        'draft',
      ),
    );
    known.push(draft, ...plan.brews.flatMap(({ brew, tank, yeast }) => [brew, tank, yeast]));
  }
  let headers: Record<string, string> = {};
  if (signIn) {
    const answer = await open.ask('POST', '/api/doors/sign-in', { password: PASSWORD });
    headers = { Cookie: answer.headers.get('Set-Cookie')?.split(';')[0] ?? '' };
  }
  const { json } = await open.ask(
    'POST',
    '/api/feeds',
    {},
    { ...headers, Origin: 'http://localhost' },
  );
  const made = (json as { made?: { id: string; address: string } }).made;
  if (made !== undefined) known.push(made.id, /\/feed\/(.*)\.ics$/.exec(made.address)?.[1] ?? '');
  return { open, known, headers };
}

const share = Math.ceil(REQUESTS / STATES.length);
describe.each(STATES.map((state, at) => [state.name, state, at] as const))(
  '%s',
  (_name, state, at) => {
    test(`${share} requests: an answer that is promised or a refusal of the one shape that changes nothing`, async () => {
      const seen = new Map<number, number>();
      for (let from = 0; from < share; from += PER_APP) {
        const { open, known, headers } = await openState(state);
        pool.texts = known;
        const rows = rowsOf(open);
        try {
          let before = await rows.digest();
          await fc.assert(
            fc.asyncProperty(sendable, async (sent) => {
              const outcome = await ask(open, sent, headers);
              const after = await rows.digest();
              const changed = after !== before;
              before = after;
              seen.set(outcome.status, (seen.get(outcome.status) ?? 0) + 1);
              judge(sent, outcome, changed);
              expect(open.reported).toEqual([]);
            }),
            {
              numRuns: Math.min(PER_APP, share - from),
              seed: SEED + 1000 * at + from,
              endOnFailure: true,
            },
          );
        } finally {
          rows.close();
          await open.close();
        }
      }
      // No test that cannot fail: both kinds of answer have to have come.
      const refusals = [...seen]
        .filter(([status]) => status >= 400)
        .reduce((sum, [, many]) => sum + many, 0);
      const counted = [...seen]
        .sort(([a], [b]) => a - b)
        .map(([status, many]) => `${status}: ${many}`);
      console.log(`${state.name}: ${counted.join(', ')}`);
      expect(refusals).toBeGreaterThan(share / 4);
      if (state.name !== 'shut, nobody signed in') expect(refusals).toBeLessThan(share);
    }, 3_600_000);
  },
);
