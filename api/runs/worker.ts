// The thread that plans, so that the server goes on answering: one job, then it ends.
import { parentPort, workerData } from 'node:worker_threads';
import { compare, type Progress, plan, replan } from '../../planner/index.ts';
import type { WorkerInput, WorkerMessage } from './messages.ts';

const PROGRESS_EVERY_MS = 100;

const { job, stop } = workerData as WorkerInput;
const stopFlag = new Int32Array(stop);

function say(message: WorkerMessage): void {
  parentPort?.postMessage(message);
}

let lastSaid = Number.NEGATIVE_INFINITY;
function watch(progress: Progress): boolean {
  const now = performance.now();
  if (now - lastSaid >= PROGRESS_EVERY_MS) {
    lastSaid = now;
    say({ type: 'progress', progress });
  }
  return Atomics.load(stopFlag, 0) !== 0;
}

if (job.kind === 'replan') {
  const result = replan(job.request, watch);
  say({ type: 'result', plan: result.plan, changes: result.changes });
} else {
  const made = plan(job.request, watch);
  const changes = job.against === null ? null : compare(job.against, made, job.request.house);
  say({ type: 'result', plan: made, changes });
}
