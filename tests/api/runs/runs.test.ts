// Runs end, whatever becomes of the thread: with real threads that break off, leave or never listen.
import { readdirSync, readFileSync } from 'node:fs';
import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Run } from '../../../api/routes/shapes.ts';
import { createRuns, type Runs } from '../../../api/runs/index.ts';
import type { PlanJob } from '../../../api/runs/messages.ts';
import { type Plan, PlanRequest } from '../../../planner/index.ts';
import { aHouse } from '../../builders/plan.ts';

const job: PlanJob = {
  kind: 'plan',
  request: PlanRequest.parse({ house: aHouse(), today: '2027-01-04', steps: 200 }),
  against: null,
};
const kept = { plan: '3f0f7d5e-9d0a-4a44-9a53-111111111111', became: 'draft' } as const;
const keep = () => Promise.resolve(kept);
const thread = (name: string) => new URL(`./threads/${name}.mjs`, import.meta.url);

let runs: Runs;
let reported: string[] = [];
function desk(workerUrl?: URL): Runs {
  reported = [];
  runs = createRuns({
    now: () => new Date('2027-01-04T08:00:00Z'),
    report: (line) => reported.push(line),
    stopGraceMs: 200,
    ...(workerUrl === undefined ? {} : { workerUrl }),
  });
  return runs;
}
afterEach(() => runs.close());

function started(options?: { replace?: boolean }): Run {
  const run = runs.start(job, keep, options);
  if (run === null) throw new Error('not started');
  return run;
}

/** How nice each thread of this process is, as Linux tells it: field 19 of proc_pid_stat(5). */
function niceness(): number[] {
  return readdirSync('/proc/self/task').map((thread) => {
    const stat = readFileSync(`/proc/self/task/${thread}/stat`, 'utf8');
    // the name of a thread stands in brackets and may hold blanks; after it comes field 3
    return Number(stat.slice(stat.lastIndexOf(')') + 2).split(' ')[16]);
  });
}

test.runIf(process.platform === 'linux')(
  'the thread that plans stands back behind the one that answers',
  async () => {
    desk();
    const before = niceness();
    const own = Math.min(...before);
    const run = runs.start({ ...job, request: { ...job.request, steps: 1_000_000 } }, keep);
    let most = own;
    const end = Date.now() + 30_000;
    while (most === own && Date.now() < end) {
      await new Promise((resolve) => setTimeout(resolve, 20));
      most = Math.max(...niceness());
    }
    expect(most).toBeGreaterThan(own);
    // and the answering one was left as it was
    expect(Math.min(...niceness())).toBe(own);
    expect(niceness().filter((nice) => nice === own).length).toBeGreaterThanOrEqual(1);
    if (run !== null) runs.stop(run.id);
  },
  40_000,
);

describe('a thread that', () => {
  test.each([
    ['throws', /broke off/, /out of wort/],
    ['leaves', /ended without a plan/, /code 3/],
  ])('%s: the run has failed, and the terminal says why', async (name, says, why) => {
    desk(thread(name));
    const ended = await runs.ended(started().id);
    expect(ended).toMatchObject({ state: 'failed', plan: null, became: null });
    expect(ended?.endedAt).not.toBeNull();
    expect(ended?.error?.message).toMatch(says);
    expect(reported.join('\n')).toMatch(why);
    // and the next one may start
    expect(runs.start(job, keep)).not.toBeNull();
  });

  test('does not listen to a stop is ended after its grace', async () => {
    desk(thread('hangs'));
    const { id } = started();
    expect(runs.stop(id)?.state).toBe('running');
    expect(await runs.ended(id)).toMatchObject({ state: 'stopped', became: 'nothing' });
  });

  test('is replaced hears no more, and its run says so', async () => {
    desk(thread('hangs'));
    const first = started();
    expect(runs.start(job, keep)).toBeNull();
    const second = started({ replace: true });
    expect(runs.get(first.id)).toMatchObject({ state: 'stopped', became: 'nothing' });
    expect(runs.current()?.id).toBe(second.id);
  });
});

test('a plan that cannot be stored is a failed run, not a lost one', async () => {
  desk();
  const run = runs.start(job, () => Promise.reject(new Error('disk full')));
  const ended = await runs.ended(run?.id ?? '');
  expect(ended).toMatchObject({ state: 'failed', plan: null });
  expect(ended?.error?.message).toMatch(/could not be stored/);
  expect(reported.join('\n')).toContain('disk full');
});

test('the real thread plans; whoever watches sees progress and then the end, once', async () => {
  desk();
  const got: Plan[] = [];
  const run = runs.start(job, (result) => {
    got.push(result.plan);
    return keep();
  });
  const seen: string[] = [];
  runs.subscribe(run?.id ?? '', ({ state }) => seen.push(state));
  const ended = await runs.ended(run?.id ?? '');
  expect(ended).toMatchObject({ state: 'done', ...kept });
  expect(got.map(({ brews }) => brews.length)).toEqual([3]);
  expect(seen[0]).toBe('running');
  expect(seen.filter((state) => state !== 'running')).toEqual(['done']);
});

test('whoever leaves is not called any more', async () => {
  desk(thread('hangs'));
  const { id } = started();
  let calls = 0;
  const leave = runs.subscribe(id, () => {
    calls += 1;
  });
  await vi.waitFor(() => expect(calls).toBeGreaterThan(1), 10_000);
  leave?.();
  const before = calls;
  await new Promise((resolve) => setTimeout(resolve, 60));
  expect(calls).toBe(before);
});

test('only the last few runs are remembered', async () => {
  desk(thread('hangs'));
  const ids = Array.from({ length: 25 }, () => started({ replace: true }).id);
  expect(ids.map((id) => runs.get(id) !== null)).toEqual(ids.map((_, at) => at >= 5));
  expect(runs.stop('nobody')).toBeNull();
  expect(runs.subscribe('nobody', () => undefined)).toBeNull();
  expect(await runs.ended('nobody')).toBeNull();
});
