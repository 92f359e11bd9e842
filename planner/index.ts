// The face of the planner: others import from here and nowhere deeper.
export * from './model/index.ts';
export { type DoneTask, tasks } from './tasks/index.ts';
