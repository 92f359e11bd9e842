// Runs of the planner: at most one at a time, each in a thread of its own, watched, stopped, never left hanging.
import { randomUUID } from 'node:crypto';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { describeError } from '../routes/errors.ts';
import type { Run } from '../routes/shapes.ts';
import type { Job, PlanJob, ResultOf, WorkerInput, WorkerMessage } from './messages.ts';

const KEPT_RUNS = 20;
const STOP_GRACE_MS = 10_000;

/** What became of a result: the caller stores it and tells under which id; null: it is no plan. */
export type Settled = { plan: string | null; became: 'in-force' | 'draft' | 'nothing' };

export type Runs<J extends Job = PlanJob> = {
  /**
   * Starts a run in a thread of its own.
   * @param keep stores the result; the run ends as failed when it throws
   * @returns the run, or null while another one is under way and `replace` is false
   */
  start: (
    job: J,
    keep: (result: ResultOf<J>) => Promise<Settled>,
    options?: { replace?: boolean },
  ) => Run | null;
  /** Asks a run to end now with the best plan so far. @returns the run, or null where there is none of this id */
  stop: (id: string) => Run | null;
  get: (id: string) => Run | null;
  /** The run under way, else the last one, else null. */
  current: () => Run | null;
  /** Calls back now and at every change until the run has ended. @returns a function that ends it early, or null */
  subscribe: (id: string, listener: (run: Run) => void) => (() => void) | null;
  /** Ends a run that is under way and forgets what it found. */
  discard: () => void;
  /** Resolves when the run has ended and its result is stored. */
  ended: (id: string) => Promise<Run | null>;
  close: () => Promise<void>;
};

type Live = {
  run: Run;
  worker: Worker | null;
  stopFlag: Int32Array<SharedArrayBuffer>;
  listeners: Set<(run: Run) => void>;
  ended: Promise<void>;
  end: () => void;
};

// In the source the thread's file is TypeScript; in the build it lies beside the server's own file.
const FROM_SOURCE = import.meta.url.endsWith('.ts');
const WORKER_URL = new URL(FROM_SOURCE ? './worker.ts' : './worker.js', import.meta.url);

function startThread(url: URL, workerData: WorkerInput): Worker {
  if (!url.pathname.endsWith('.ts')) return new Worker(url, { workerData });
  // A thread does not take over the loader of TypeScript that the server was started with. Its loader
  // has to be the module for `import`; the one for `require` does not find its own parts in a thread.
  const loader = createRequire(import.meta.url)
    .resolve('tsx/esm/api')
    .replace(/\.cjs$/, '.mjs');
  const code =
    `import(${JSON.stringify(pathToFileURL(loader).href)})` +
    `.then(({ register }) => { register(); return import(${JSON.stringify(url.href)}); });`;
  return new Worker(code, { eval: true, workerData });
}

export type RunsOptions = {
  now: () => Date;
  report: (line: string) => void;
  /** Another file for the thread; tests give ones that die or hang. */
  workerUrl?: URL;
  /** How long a run may take to heed a stop before its thread is ended. */
  stopGraceMs?: number;
};

/** A desk for runs with nothing on it. */
export function createRuns<J extends Job = PlanJob>(options: RunsOptions): Runs<J> {
  const lives = new Map<string, Live>();
  let latest: Live | null = null;

  function change(live: Live, part: Partial<Run>): void {
    live.run = { ...live.run, ...part };
    for (const listener of [...live.listeners]) listener(live.run);
  }

  function finish(live: Live, part: Partial<Run>): void {
    if (live.run.state !== 'running') return;
    live.worker = null;
    change(live, { ...part, endedAt: options.now().toISOString() });
    live.listeners.clear();
    live.end();
  }

  function fail(live: Live, message: string, detail: unknown): void {
    if (live.run.state !== 'running') return;
    options.report(`A planning run failed: ${describeError(detail)}`);
    finish(live, { state: 'failed', error: { code: 'run-failed', message } });
  }

  async function settle(
    live: Live,
    result: ResultOf<J>,
    keep: (result: ResultOf<J>) => Promise<Settled>,
  ): Promise<void> {
    const stopped = Atomics.load(live.stopFlag, 0) !== 0;
    try {
      const settled = await keep(result);
      finish(live, { state: stopped ? 'stopped' : 'done', ...settled });
    } catch (error) {
      fail(live, 'The plan was made but could not be stored; the one before it stays.', error);
    }
  }

  function discard(live: Live): void {
    if (live.run.state !== 'running') return;
    const worker = live.worker;
    finish(live, { state: 'stopped', became: 'nothing' });
    void worker?.terminate();
  }

  return {
    start: (job, keep, { replace = false } = {}) => {
      if (latest?.run.state === 'running') {
        if (!replace) return null;
        discard(latest);
      }
      const live = newLive(job, options.now());
      lives.set(live.run.id, live);
      latest = live;
      for (const old of [...lives.keys()].slice(0, -KEPT_RUNS)) lives.delete(old);

      const workerData: WorkerInput = { job, stop: live.stopFlag.buffer };
      const worker = startThread(options.workerUrl ?? WORKER_URL, workerData);
      live.worker = worker;
      let gotResult = false;
      worker.on('message', (message: WorkerMessage) => {
        if (live.run.state !== 'running') return;
        if (message.type === 'progress') change(live, { progress: message.progress });
        else {
          gotResult = true;
          void settle(live, message.result as ResultOf<J>, keep);
        }
      });
      worker.on('error', (error) =>
        fail(live, 'The planner broke off; the plan before it stays. Please report this.', error),
      );
      worker.on('exit', (code) => {
        if (!gotResult) {
          const detail = new Error(`the planning thread ended with code ${code} and no plan`);
          fail(live, 'The planner ended without a plan; the plan before it stays.', detail);
        }
      });
      return live.run;
    },
    stop: (id) => {
      const live = lives.get(id);
      if (live === undefined) return null;
      if (live.run.state === 'running' && Atomics.exchange(live.stopFlag, 0, 1) === 0) {
        // One that does not listen is ended from outside: no run hangs.
        setTimeout(() => discard(live), options.stopGraceMs ?? STOP_GRACE_MS).unref();
      }
      return live.run;
    },
    get: (id) => lives.get(id)?.run ?? null,
    current: () => latest?.run ?? null,
    subscribe: (id, listener) => {
      const live = lives.get(id);
      if (live === undefined) return null;
      if (live.run.state === 'running') live.listeners.add(listener);
      listener(live.run);
      return () => live.listeners.delete(listener);
    },
    discard: () => {
      if (latest !== null) discard(latest);
    },
    ended: async (id) => {
      const live = lives.get(id);
      if (live === undefined) return null;
      await live.ended;
      return live.run;
    },
    close: async () => {
      const worker = latest?.worker;
      if (latest !== null) finish(latest, { state: 'stopped', became: 'nothing' });
      await worker?.terminate();
    },
  };
}

function newLive(job: Job, startedAt: Date): Live {
  let end = (): void => undefined;
  const ended = new Promise<void>((resolve) => {
    end = resolve;
  });
  return {
    run: {
      id: randomUUID(),
      kind: job.kind,
      state: 'running',
      startedAt: startedAt.toISOString(),
      endedAt: null,
      seed: job.request.seed,
      steps: job.request.steps,
      progress: null,
      plan: null,
      became: null,
      error: null,
    },
    worker: null,
    stopFlag: new Int32Array(new SharedArrayBuffer(4)),
    listeners: new Set(),
    ended,
    end,
  };
}
