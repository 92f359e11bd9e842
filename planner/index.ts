// The face of the planner: others import from here and nowhere deeper.

export { compare } from './changes/index.ts';
export { earlierPlan } from './earlier.ts';
export { seasonLimits } from './limits/index.ts';
export { checkHouse } from './model/check-house.ts';
export type { PathPart, Placing } from './model/checks/draft.ts';
export { nearest } from './model/checks/report.ts';
export { defaultToday, seasonOver } from './model/default-today.ts';
export * from './model/index.ts';
export { type ParsedHouse, parseHouse } from './model/parse-house.ts';
export { plan, replan, type Watch } from './plan.ts';
export {
  familyOf,
  foldRecord,
  hindsightOf,
  houseNow,
  RecordEntry,
  RecordFact,
  type RecordState,
  resolveNews,
  sayNews,
  shelfOf,
} from './record/index.ts';
export { settledPlan } from './report/settled.ts';
export { type Move, trials } from './report/trial.ts';
export { RULES, type Rule } from './rules/index.ts';
export {
  type Answer,
  type AnyQuestion,
  type Asked,
  boundOf as questionBound,
  type Field as QuestionField,
  type Figure,
  QUESTIONS,
  schemaOf as questionSchema,
} from './science/questions/index.ts';
export { defaultSteps } from './search/search.ts';
export { SEASONS, steadiness } from './steadiness/index.ts';
export { LOCAL_CODES } from './tasks/cautions.ts';
export { type DoneTask, tasks } from './tasks/index.ts';
export { looksLikeCode } from './tasks/jar-codes.ts';
export { METRIC, type ReadingUnits, taskIn } from './tasks/read-in.ts';
export { asTold } from './tasks/steady.ts';
