// What the server and the thread that plans say to each other.
import type {
  Changes,
  House,
  Luck,
  Plan,
  PlanRequest,
  Progress,
  SeasonLimits,
  Steadiness,
} from '../../planner/index.ts';

export type PlanJob = {
  kind: 'plan' | 'replan';
  request: PlanRequest;
  /** With `plan`: the plan in force, to say what differs from it. */
  against: Plan | null;
};
export type PlanResult = { plan: Plan; changes: Changes | null };

/** A question about a plan that takes the planner longer than an answer may take. */
export type SurveyJob =
  | { kind: 'limits'; request: PlanRequest; plan: Plan }
  | {
      kind: 'steadiness';
      /** `steps`: how many seasons are drawn. */
      request: { seed: number; steps: number | null };
      plan: Plan;
      house: House;
      luck: Luck;
    };
export type SurveyResult =
  | { kind: 'limits'; limits: SeasonLimits }
  | { kind: 'steadiness'; steadiness: Steadiness };

export type Job = PlanJob | SurveyJob;
export type ResultOf<J extends Job> = J extends PlanJob ? PlanResult : SurveyResult;

export type WorkerInput = {
  job: Job;
  /** One 32-bit number: other than 0 means stop and keep the best. */
  stop: SharedArrayBuffer;
};

export type WorkerMessage =
  | { type: 'progress'; progress: Progress }
  | { type: 'result'; result: ResultOf<Job> };
