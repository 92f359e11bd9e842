// The thread that plans, so that the server goes on answering: one job, then it ends.
import { setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import {
  compare,
  type Progress,
  plan,
  replan,
  SEASONS,
  seasonLimits,
  steadiness,
} from '../../planner/index.ts';
import type { Job, ResultOf, WorkerInput, WorkerMessage } from './messages.ts';

const PROGRESS_EVERY_MS = 100;

const { job, stop } = workerData as WorkerInput;
const stopFlag = new Int32Array(stop);

function say(message: WorkerMessage): void {
  parentPort?.postMessage(message);
}

/** On a small box answers come before planning. Steps, not time, bound a search: the plan stays the same. */
const NICENESS = 5;
// NOTE: on Linux this is a matter of the thread that asks for it; elsewhere it would slow the whole server down.
if (process.platform === 'linux') setPriority(NICENESS);

let lastSaid = Number.NEGATIVE_INFINITY;
function watch(progress: Progress): boolean {
  const now = performance.now();
  if (now - lastSaid >= PROGRESS_EVERY_MS) {
    lastSaid = now;
    say({ type: 'progress', progress });
  }
  return Atomics.load(stopFlag, 0) !== 0;
}

function work(job: Job): ResultOf<Job> {
  if (job.kind === 'replan') return replan(job.request, watch);
  if (job.kind === 'limits') {
    return { kind: 'limits', limits: seasonLimits(job.request, job.plan, watch) };
  }
  if (job.kind === 'steadiness') {
    const { hard, leftOut, costMinor } = job.plan.totals;
    const untold = { parts: null, boundMinor: null };
    const { seed, steps } = job.request;
    const options = { seed, seasons: steps ?? SEASONS, luck: job.luck };
    const counted = steadiness(job.plan, job.house, options, (stepsDone, seasons) =>
      watch({ stepsDone, steps: seasons, hard, leftOut, costMinor, ...untold }),
    );
    return { kind: 'steadiness', steadiness: counted };
  }
  const made = plan(job.request, watch);
  const changes = job.against === null ? null : compare(job.against, made, job.request.house);
  return { plan: made, changes };
}

say({ type: 'result', result: work(job) });
