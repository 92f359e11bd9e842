// The real app on a real database file in a folder of its own; a test states only what matters to it.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { createApp, type Parts } from '../../api/app.ts';
import { KEPT } from '../../api/backup/copies.ts';
import { createBackups } from '../../api/backup/index.ts';
import { readFeedKey } from '../../api/feed/token.ts';
import { createRuns } from '../../api/runs/index.ts';
import { syncCalendar } from '../../api/runs/planning.ts';
import { createSurveys } from '../../api/runs/surveys.ts';
import { createWhatIfs } from '../../api/runs/what-if.ts';
import { saveHouse } from '../../api/store/house.ts';
import { openStore } from '../../api/store/index.ts';
import { addPlan } from '../../api/store/plans.ts';
import type { House, Plan } from '../../planner/index.ts';
import { aHouse, aPlan } from './plan.ts';

export type Answer = { status: number; headers: Headers; text: string; json: unknown };

export type OpenApp = {
  app: ReturnType<typeof createApp>;
  parts: Parts;
  folder: string;
  /** What the server would have written to the terminal. */
  reported: string[];
  ask: (
    method: string,
    path: string,
    body?: unknown,
    headers?: Record<string, string>,
  ) => Promise<Answer>;
  /** Puts a plan in force as if it had come out of a run. */
  putInForce: (plan: Plan, id?: string) => Promise<void>;
  setNow: (iso: string) => void;
  setToday: (day: string) => void;
  close: () => Promise<void>;
};

export type OpenOptions = {
  /** null: an empty database. */
  house?: House | null;
  /** null: no plan in force. */
  plan?: Plan | null;
  today?: string;
  base?: string;
  /** By default no password is set. */
  doors?: Partial<Parts['doors']>;
  workerUrl?: URL;
  stopGraceMs?: number;
  /** Plans judged by each run that does not say; null: the planner's own default. */
  steps?: number | null;
};

/** Opens an app; by default the small house of the builders with its plan in force, on 4 January 2027. */
export async function openApp(options: OpenOptions = {}): Promise<OpenApp> {
  const folder = mkdtempSync(join(tmpdir(), 'barmline-test-'));
  let now = new Date('2027-01-04T08:00:00Z');
  let today = options.today ?? '2027-01-04';
  const reported: string[] = [];
  const report = (line: string) => reported.push(line);
  const store = await openStore({
    url: pathToFileURL(join(folder, 'barmline.db')).href,
    now: () => now,
  });
  const runsOptions = {
    now: () => now,
    report,
    ...(options.workerUrl === undefined ? {} : { workerUrl: options.workerUrl }),
    ...(options.stopGraceMs === undefined ? {} : { stopGraceMs: options.stopGraceMs }),
  };
  const parts: Parts = {
    store,
    runs: createRuns(runsOptions),
    whatIfs: createWhatIfs(runsOptions),
    surveys: createSurveys(runsOptions),
    backups: createBackups({ store, folder: join(folder, 'backups'), kept: KEPT, report }),
    steps: options.steps === undefined ? 300 : options.steps,
    today: () => today,
    feedKey: readFeedKey(folder),
    base: options.base ?? 'http://127.0.0.1:8642',
    hosts: ['localhost', '127.0.0.1', '[::1]'],
    doors: { password: () => null, reachable: false, proxies: [], ...options.doors },
    pageFolder: null,
    version: '0.0.0-test',
    report,
  };
  const app = createApp(parts);
  const { house = aHouse(), plan = aPlan() } = options;

  const putInForce = (made: Plan, id: string = crypto.randomUUID()) =>
    store.write(async (tx) => {
      await addPlan(
        tx,
        {
          id,
          season: 1,
          madeAt: now.toISOString(),
          houseRevision: 1,
          recordNo: 0,
          plan: made,
          changes: null,
        },
        'in-force',
      );
      await syncCalendar(tx, now);
    });

  if (house !== null) {
    await store.write((tx) => saveHouse(tx, { house, demo: false, at: now, startOver: false }));
    if (plan !== null) await putInForce(plan);
  }

  return {
    app,
    parts,
    folder,
    reported,
    ask: async (method, path, body, headers = {}) => {
      const isText = typeof body === 'string' || body instanceof FormData;
      const response = await app.request(path, {
        method,
        headers: {
          ...(body === undefined || body instanceof FormData
            ? {}
            : { 'Content-Type': 'application/json' }),
          ...headers,
        },
        ...(body === undefined ? {} : { body: isText ? body : JSON.stringify(body) }),
      });
      const text = await response.text();
      return { status: response.status, headers: response.headers, text, json: jsonOf(text) };
    },
    putInForce,
    setNow: (iso) => {
      now = new Date(iso);
    },
    setToday: (day) => {
      today = day;
    },
    close: async () => {
      await Promise.all([parts.runs.close(), parts.whatIfs.close(), parts.surveys.close()]);
      store.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
