// The yeast science in one place: every model the planner predicts with.
export * from './carry-over.ts';
export * from './chance.ts';
export * from './counting.ts';
export * from './gravity.ts';
export * from './harvest.ts';
export * from './learn-loss.ts';
export * from './learning.ts';
export * from './need.ts';
export * from './packs.ts';
export * from './slurry.ts';
export * from './starter.ts';
export * from './starter-plan.ts';
export * from './triangle.ts';
export * from './units.ts';
export * from './viability.ts';
