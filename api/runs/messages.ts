// What the server and the thread that plans say to each other.
import type { Changes, Plan, PlanRequest, Progress } from '../../planner/index.ts';

export type Job = {
  kind: 'plan' | 'replan';
  request: PlanRequest;
  /** With `plan`: the plan in force, to say what differs from it. */
  against: Plan | null;
};

export type WorkerInput = {
  job: Job;
  /** One 32-bit number: other than 0 means stop and keep the best. */
  stop: SharedArrayBuffer;
};

export type WorkerMessage =
  | { type: 'progress'; progress: Progress }
  | { type: 'result'; plan: Plan; changes: Changes | null };
