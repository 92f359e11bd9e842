// What the API takes and gives, as schemas: the types of the page's client and the OpenAPI document come from here.
import { z } from 'zod';
import {
  Changes,
  House,
  IsoDay,
  Plan,
  Problem,
  QUESTIONS,
  questionSchema,
  RecordEntry,
  Task,
} from '../../planner/index.ts';

export * from './feed-shapes.ts';

const at = z.string().describe('A moment, ISO 8601 in UTC');
const id = z.uuid();

export const HealthAnswer = z
  .strictObject({ ok: z.literal(true), version: z.string() })
  .meta({ id: 'HealthAnswer' });

export const HouseAnswer = z
  .strictObject({
    house: House.nullable().describe('As it was entered; null: nothing has been put in yet'),
    now: House.nullable().describe('As it is now, with what news changed: this is what is planned'),
    revision: z.number().int().nonnegative().describe('To be sent as If-Match with the next edit'),
    savedAt: at.nullable(),
    demo: z.boolean().describe('It is the house that comes along, to look around in'),
    problems: z.array(Problem),
    today: IsoDay,
  })
  .meta({ id: 'HouseAnswer' });
export type HouseAnswer = z.infer<typeof HouseAnswer>;

export const Progress = z
  .strictObject({
    stepsDone: z.number(),
    steps: z.number(),
    hard: z.number(),
    leftOut: z.number(),
    costMinor: z.number(),
    parts: z
      .strictObject({ cashMinor: z.number(), workMinor: z.number(), riskMinor: z.number() })
      .nullable()
      .describe('The three parts of that cost, or null where they are not told'),
    boundMinor: z
      .number()
      .nullable()
      .describe('What no sound plan costs less than, from when it is known'),
  })
  .meta({ id: 'Progress' });

export const Run = z
  .strictObject({
    id,
    kind: z
      .enum(['plan', 'replan', 'limits', 'steadiness'])
      .describe(
        'A plan from nothing or against the one in force, or a survey of the plan in force',
      ),
    state: z.enum(['running', 'done', 'stopped', 'failed']),
    startedAt: at,
    endedAt: at.nullable(),
    seed: z.number().int(),
    steps: z.number().int().nullable().describe('null: the default budget'),
    progress: Progress.nullable(),
    plan: id.nullable().describe('The plan that came out of it'),
    became: z
      .enum(['in-force', 'draft', 'nothing'])
      .nullable()
      .describe('What its plan was made; nothing: another run took its place'),
    error: z.strictObject({ code: z.string(), message: z.string() }).nullable(),
  })
  .meta({ id: 'Run' });
export type Run = z.infer<typeof Run>;

export const RunRequest = z
  .strictObject({
    seed: z.number().int().min(0).max(4_294_967_295).default(1),
    steps: z.number().int().min(0).max(1_000_000_000).nullable().default(null),
    replace: z.boolean().default(false).describe('Stop and discard a run that is under way'),
    anew: z
      .boolean()
      .default(false)
      .describe('Plan from what has happened alone, as if no plan were in force'),
  })
  .meta({ id: 'RunRequest' });

export const RunAnswer = z.strictObject({ run: Run }).meta({ id: 'RunAnswer' });
export const CurrentRunAnswer = z
  .strictObject({ run: Run.nullable().describe('The one under way, else the last one') })
  .meta({ id: 'CurrentRunAnswer' });

export const TaskRow = Task.extend({
  uid: z.string().describe('UID of its calendar entry'),
}).meta({ id: 'TaskRow' });
export type TaskRow = z.infer<typeof TaskRow>;

export const TasksAnswer = z
  .strictObject({ today: IsoDay, tasks: z.array(TaskRow) })
  .meta({ id: 'TasksAnswer' });
export const TasksQuery = z.strictObject({ from: IsoDay.optional(), to: IsoDay.optional() });

export const PlanAnswer = z
  .strictObject({
    plan: Plan.nullable().describe('The plan in force; null: there is none yet'),
    id: id.nullable(),
    madeAt: at.nullable(),
    today: IsoDay,
    behind: z
      .strictObject({
        house: z.boolean().describe('The house was edited since'),
        record: z.boolean().describe('News came in that it does not reckon with'),
        says: z.string().nullable(),
      })
      .describe('Whether the plan still is of the newest state'),
    tasks: z.strictObject({
      count: z.number().int(),
      done: z.number().int(),
      overdue: z.number().int(),
      next: z.array(TaskRow).describe('The next few that are not done'),
    }),
  })
  .meta({ id: 'PlanAnswer' });
export type PlanAnswer = z.infer<typeof PlanAnswer>;

export const DraftAnswer = z
  .strictObject({
    draft: z
      .strictObject({
        id,
        madeAt: at,
        plan: Plan,
        changes: Changes,
        stale: z.boolean().describe('Made from a state that has moved on since'),
        says: z.string().nullable().describe('Why it is stale'),
      })
      .nullable(),
  })
  .meta({ id: 'DraftAnswer' });
export type DraftAnswer = z.infer<typeof DraftAnswer>;

export const DraftChoice = z
  .strictObject({ draft: id.describe('The draft that was looked at') })
  .meta({ id: 'DraftChoice' });

export const NewsAnswer = z
  .strictObject({
    entry: z.number().int().positive().describe('Its number in the record'),
    run: Run.nullable().describe('The re-planning that it set off; null: nothing has to move'),
  })
  .meta({ id: 'NewsAnswer' });

export const HouseQuery = z.strictObject({
  startOver: z
    .enum(['true', 'false'])
    .default('false')
    .describe('Begin a new season: record and plan of the old one are put away'),
});

export const SettingsAnswer = z
  .strictObject({
    base: z.string().describe('The address that links and feeds are built on'),
    loopback: z.boolean().describe('Only this machine can reach it'),
    says: z.string().describe('What that means and how to change it'),
  })
  .meta({ id: 'SettingsAnswer' });

export const AskedField = z
  .strictObject({
    name: z.string().describe('Its key in the body of the question'),
    kind: z.enum(['number', 'gravity', 'share', 'choice', 'yesNo', 'counts']),
    label: z.string(),
    says: z.string(),
    unit: z.string().nullable(),
    min: z.number().nullable(),
    max: z.number().nullable(),
    whole: z.boolean(),
    most: z.number().nullable().describe('For a list of counts: how many at most'),
    options: z.array(z.string()).describe('For a choice'),
    bound: z.string().describe('What may stand there, in words'),
    required: z.boolean(),
    fallback: z
      .union([z.number(), z.string(), z.boolean()])
      .nullable()
      .describe('Taken where nothing is given; null: nothing, or it is required'),
  })
  .meta({ id: 'AskedField' });
export type AskedField = z.infer<typeof AskedField>;

const question = {
  formula: z.string().describe('In words'),
  range: z.string().describe('Where the formula holds'),
  sources: z.array(z.string()),
};

export const QuestionsAnswer = z
  .strictObject({
    questions: z.array(
      z.strictObject({
        id: z.string(),
        title: z.string(),
        fields: z.array(AskedField),
        ...question,
      }),
    ),
  })
  .meta({ id: 'QuestionsAnswer' });
export type QuestionsAnswer = z.infer<typeof QuestionsAnswer>;

const maybe = z.number().nullable();
export const QuestionAnswer = z
  .strictObject({
    answer: z.strictObject({
      question: z.string(),
      says: z.array(z.string()),
      figures: z.array(
        z.strictObject({
          name: z.string(),
          value: maybe,
          low: maybe,
          high: maybe,
          unit: z.string(),
        }),
      ),
      beyond: z.array(z.string()).describe('Where it goes beyond what has been measured'),
      caution: z.string().nullable().describe('How the work asked about can hurt someone'),
      ...question,
    }),
  })
  .meta({ id: 'QuestionAnswer' });
export type QuestionAnswer = z.infer<typeof QuestionAnswer>;

/** The body of each question, for the description alone: the question itself looks at what comes. */
export const QuestionBody = z
  .union(QUESTIONS.map(({ fields, title }) => questionSchema(fields).describe(title)))
  .meta({ id: 'QuestionBody' });
export const QuestionParam = z.strictObject({ id: z.enum(QUESTIONS.map(({ id }) => id)) });

export const IdParam = z.strictObject({ id });

export const RecordAnswer = z
  .strictObject({
    entries: z.array(
      z.strictObject({
        at,
        entry: RecordEntry,
        says: z.string().describe('What was told, in words'),
      }),
    ),
  })
  .meta({ id: 'RecordAnswer' });
