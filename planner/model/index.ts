// Every shape that goes into the planner or comes out of it.
export * from './changes.ts';
export * from './common.ts';
export * from './facts.ts';
export * from './family.ts';
export * from './house.ts';
export * from './limits.ts';
export * from './money.ts';
export * from './news.ts';
export * from './news-words.ts';
export * from './overlay.ts';
export * from './plan.ts';
export * from './problem-report.ts';
export * from './request.ts';
export * from './settings.ts';
export * from './steadiness.ts';
export * from './task.ts';
export * from './trial.ts';
