// The list of all that the API answers: method, place, what goes in and what comes out. The OpenAPI
// document and the answer to a wrong method are made from it; a test compares it with the app's own routes.
import { z } from 'zod';
import { House, News, Plan } from '../../planner/index.ts';
import { WholeHouse } from '../backup/whole.ts';
import {
  BackupMadeAnswer,
  BackupsAnswer,
  CopyName,
  RestoreAnswer,
  RestoreRequest,
} from './backup-shapes.ts';
import { DoorsAnswer, SignIn } from './door-shapes.ts';
import * as history from './history-shapes.ts';
import { ExportAnswer, ImportAnswer, ImportRequest } from './import-shapes.ts';
import * as shape from './shapes.ts';
import { SurveyAnswer, SurveyRequest } from './survey-shapes.ts';
import { TrialAnswer, TrialRequest } from './trial-shapes.ts';
import { WhatIfAnswer, WhatIfRequest } from './what-if-shapes.ts';

export type Operation = {
  method: 'get' | 'put' | 'post' | 'delete';
  path: string;
  says: string;
  /** Answers without a session even where a password is set; whatever does not say so needs one. */
  open?: true;
  query?: z.ZodObject;
  /** Parts of the path, each a text. */
  params?: z.ZodObject;
  headers?: readonly { name: string; says: string }[];
  body?: z.ZodType;
  answers: Readonly<Record<number, z.ZodType | { type: string; says: string }>>;
};

const ifMatch = {
  name: 'If-Match',
  says: 'Revision of the house that was edited; 0: there is none',
};

/** What can be done with work that is under way: follow it, and stop it. */
const underWay = (path: string, events: string, stop: string): Operation[] => [
  {
    method: 'get',
    path: `${path}/:id/events`,
    says: events,
    params: shape.IdParam,
    answers: { 200: { type: 'text/event-stream', says: 'The events' } },
  },
  {
    method: 'post',
    path: `${path}/:id/stop`,
    says: stop,
    params: shape.IdParam,
    answers: { 200: shape.RunAnswer },
  },
];

export const OPERATIONS: readonly Operation[] = [
  {
    method: 'get',
    path: '/api/health',
    says: 'Whether the server is there.',
    open: true,
    answers: { 200: shape.HealthAnswer },
  },
  {
    method: 'get',
    path: '/api/house',
    says: 'The house, its revision and what is wrong with it.',
    answers: { 200: shape.HouseAnswer },
  },
  {
    method: 'put',
    path: '/api/house',
    says: 'Saves the house; a stale revision gets 409 with what changed since.',
    query: shape.HouseQuery,
    headers: [ifMatch],
    body: House,
    answers: { 200: shape.HouseAnswer },
  },
  {
    method: 'post',
    path: '/api/house/import',
    says: "Reads a season folder's files: shows what they hold, or saves it (then with If-Match).",
    headers: [ifMatch],
    body: ImportRequest,
    answers: { 200: ImportAnswer },
  },
  {
    method: 'post',
    path: '/api/house/demo',
    says: 'Puts the demo house in as a new season; record and plan of the old one are put away.',
    headers: [ifMatch],
    answers: { 200: shape.HouseAnswer },
  },
  {
    method: 'get',
    path: '/api/house/export',
    says: "The house as a season folder's files.",
    answers: { 200: ExportAnswer },
  },
  {
    method: 'get',
    path: '/api/plan',
    says: 'The plan in force.',
    answers: { 200: shape.PlanAnswer },
  },
  {
    method: 'post',
    path: '/api/runs',
    says: 'Starts planning. The first plan goes in force, every later one is a draft.',
    body: shape.RunRequest,
    answers: { 202: shape.RunAnswer },
  },
  {
    method: 'get',
    path: '/api/runs/current',
    says: 'The run under way, else the last one.',
    answers: { 200: shape.CurrentRunAnswer },
  },
  ...underWay(
    '/api/runs',
    'Server-sent events, each with {"run": …}: progress, then one of done, stopped, failed.',
    'Asks a run to end now and to keep the best plan so far.',
  ),
  {
    method: 'post',
    path: '/api/what-if',
    says: 'Plans a house that is not saved, to see what would come of it. Nothing is stored.',
    body: WhatIfRequest,
    answers: { 202: shape.RunAnswer },
  },
  {
    method: 'get',
    path: '/api/what-if/:id',
    says: 'A what-if: its run, and once it has ended its plan and what differs.',
    params: shape.IdParam,
    answers: { 200: WhatIfAnswer },
  },
  ...underWay(
    '/api/what-if',
    'Server-sent events of it, as of a run.',
    'Asks it to end now with the best plan so far.',
  ),
  {
    method: 'post',
    path: '/api/surveys',
    says: 'Asks what one more of something would save, or how steady the plan in force is. Nothing is stored.',
    body: SurveyRequest,
    answers: { 202: shape.RunAnswer },
  },
  {
    method: 'get',
    path: '/api/surveys/:id',
    says: 'A survey: its run, and once it has ended what it came to.',
    params: shape.IdParam,
    answers: { 200: SurveyAnswer },
  },
  ...underWay(
    '/api/surveys',
    'Server-sent events of it, as of a run.',
    'Asks it to end now with what it has.',
  ),
  {
    method: 'get',
    path: '/api/tasks',
    says: 'Tasks of the plan in force, both days included.',
    query: shape.TasksQuery,
    answers: { 200: shape.TasksAnswer },
  },
  {
    method: 'post',
    path: '/api/news',
    says: 'One thing that happened or was decided; written into the record, answered by a draft.',
    body: News,
    answers: { 201: shape.NewsAnswer },
  },
  {
    method: 'post',
    path: '/api/trial',
    says: 'Tries a brew on another day or in another tank, all else as it stands: rules broken, cost. Nothing is stored.',
    body: TrialRequest,
    answers: { 200: TrialAnswer },
  },
  {
    method: 'get',
    path: '/api/record',
    says: 'What happened, oldest first.',
    answers: { 200: shape.RecordAnswer },
  },
  {
    method: 'get',
    path: '/api/hindsight',
    says: 'What the plan expected of figures that came in since, and what they were.',
    answers: { 200: history.HindsightAnswer },
  },
  {
    method: 'get',
    path: '/api/draft',
    says: 'The draft and what differs from the plan in force.',
    answers: { 200: shape.DraftAnswer },
  },
  {
    method: 'post',
    path: '/api/draft/adopt',
    says: 'Puts the draft in force; the calendar follows.',
    body: shape.DraftChoice,
    answers: { 200: shape.PlanAnswer },
  },
  {
    method: 'post',
    path: '/api/draft/dismiss',
    says: 'Keeps the plan in force and puts the draft away.',
    body: shape.DraftChoice,
    answers: { 200: shape.DraftAnswer },
  },
  {
    method: 'get',
    path: '/api/history',
    says: 'Plans that are or were in force this season, the newest first.',
    answers: { 200: history.HistoryAnswer },
  },
  {
    method: 'post',
    path: '/api/history/:id/put-back',
    says: 'Makes an earlier plan the draft, with all that has happened since; 409 names what stands against it.',
    params: shape.IdParam,
    answers: { 200: shape.DraftAnswer },
  },
  {
    method: 'get',
    path: '/api/family/:kind/:name',
    says: 'Who shares yeast with a jar, a harvest or a beer, where each one is, and which beers to taste.',
    params: history.FamilyParam,
    answers: { 200: history.FamilyAnswer },
  },
  {
    method: 'get',
    path: '/api/shelf',
    says: 'Jars and packs in the cold, jars to come, and every jar, beer and harvest with what it came from.',
    answers: { 200: history.ShelfAnswer },
  },
  {
    method: 'get',
    path: '/api/feeds',
    says: 'Calendar addresses.',
    answers: { 200: shape.FeedsAnswer },
  },
  {
    method: 'post',
    path: '/api/feeds',
    says: 'Makes a calendar address.',
    body: shape.FeedRequest,
    answers: { 201: shape.FeedMadeAnswer },
  },
  {
    method: 'delete',
    path: '/api/feeds/:id',
    says: 'Revokes a calendar address for good.',
    params: shape.IdParam,
    answers: { 200: shape.FeedsAnswer },
  },
  {
    method: 'get',
    path: '/api/settings',
    says: 'Where the server can be reached.',
    answers: { 200: shape.SettingsAnswer },
  },
  {
    method: 'get',
    path: '/api/backups',
    says: 'The dated copies of the database.',
    answers: { 200: BackupsAnswer },
  },
  {
    method: 'post',
    path: '/api/backups',
    says: 'Makes a copy now.',
    answers: { 201: BackupMadeAnswer },
  },
  {
    method: 'get',
    path: '/api/backups/house.json',
    says: 'The whole house as one file: house, record, plans, calendar entries and addresses.',
    answers: { 200: WholeHouse },
  },
  {
    method: 'get',
    path: '/api/backups/copies/:name',
    says: 'One copy, to keep elsewhere.',
    params: z.strictObject({ name: CopyName }),
    answers: { 200: { type: 'application/octet-stream', says: 'A database file, or JSON' } },
  },
  {
    method: 'post',
    path: '/api/backups/restore',
    says: 'Shows what a copy or a whole house holds, or puts it in place (then with If-Match).',
    headers: [ifMatch],
    body: RestoreRequest,
    answers: { 200: RestoreAnswer },
  },
  {
    method: 'get',
    path: '/api/questions',
    says: 'The single questions: what each asks for, its formula in words, range and sources.',
    answers: { 200: shape.QuestionsAnswer },
  },
  {
    method: 'post',
    path: '/api/questions/:id',
    says: "Answers one question by the house's settings; 422 with a sentence and no number where the values cannot be meant.",
    params: shape.QuestionParam,
    body: shape.QuestionBody,
    answers: { 200: shape.QuestionAnswer },
  },
  {
    method: 'get',
    path: '/api/doors',
    says: 'Whether a password is set, whether you are signed in, and, if so, who is.',
    open: true,
    answers: { 200: DoorsAnswer },
  },
  {
    method: 'post',
    path: '/api/doors/sign-in',
    says: 'Opens a session for the right password; 429 with Retry-After after too many wrong ones.',
    open: true,
    body: SignIn,
    answers: { 200: DoorsAnswer },
  },
  {
    method: 'post',
    path: '/api/doors/sign-out',
    says: 'Ends the session of this browser.',
    answers: { 200: DoorsAnswer },
  },
  {
    method: 'delete',
    path: '/api/doors/sessions/:id',
    says: 'Ends a session, of whichever browser.',
    params: shape.IdParam,
    answers: { 200: DoorsAnswer },
  },
  {
    method: 'get',
    path: '/api/openapi.json',
    says: 'This document.',
    answers: { 200: z.looseObject({ openapi: z.string() }) },
  },
  {
    method: 'get',
    path: '/api/schema/house',
    says: 'JSON Schema of a house.',
    answers: { 200: z.looseObject({}) },
  },
  {
    method: 'get',
    path: '/api/schema/plan',
    says: 'JSON Schema of a plan.',
    answers: { 200: z.looseObject({}) },
  },
  {
    method: 'get',
    path: '/feed/:token.ics',
    says: 'The calendar itself. Answers If-None-Match with 304; HEAD answers alike.',
    open: true,
    params: z.strictObject({ token: z.string().regex(/^[A-Za-z0-9_-]{43}$/) }),
    answers: { 200: { type: 'text/calendar', says: 'RFC 5545' } },
  },
];

/** Shapes that are published although no operation names them alone. */
export const PUBLISHED = { House, Plan, News };
