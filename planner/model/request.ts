// What the planner is asked: a house, what has happened, what is held fast, and how long to think.
import { z } from 'zod';
import { IsoDay, whole } from './common.ts';
import { Facts, NO_FACTS, Pin } from './facts.ts';
import { House } from './house.ts';
import { Plan } from './plan.ts';

export const PlanRequest = z
  .strictObject({
    house: House,
    today: IsoDay.describe('The clock, as an argument'),
    facts: Facts.default(NO_FACTS),
    pins: z.array(Pin).default([]),
    inForce: Plan.nullable().default(null).describe('The plan that people follow now'),
    seed: whole(0, 4_294_967_295).default(1),
    steps: whole(0, 1_000_000_000).nullable().default(null).describe('null: the default budget'),
  })
  .meta({ id: 'PlanRequest' });
export type PlanRequest = z.infer<typeof PlanRequest>;

/** How far a run is. Given now and then; return true from the callback to stop and keep the best. */
export type Progress = {
  stepsDone: number;
  steps: number;
  hard: number;
  leftOut: number;
  costMinor: number;
  /** The three parts of that cost, or null where they are not told. */
  parts: { cashMinor: number; workMinor: number; riskMinor: number } | null;
  /** What no sound plan costs less than, from when it is known. */
  boundMinor: number | null;
};
