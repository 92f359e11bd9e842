// Builds the app from its parts; its type is what the page's client is typed by.
import { Hono } from 'hono';
import { door } from './doors/guard.ts';
import { backupRoutes } from './routes/backups.ts';
import { documentRoutes } from './routes/documents.ts';
import { doorRoutes } from './routes/doors.ts';
import { draftRoutes } from './routes/draft.ts';
import { answerError } from './routes/errors.ts';
import { familyRoutes } from './routes/family.ts';
import { calendarRoutes } from './routes/feed.ts';
import { feedRoutes } from './routes/feeds.ts';
import {
  knownBody,
  knownHost,
  limitedBody,
  sameSite,
  securityHeaders,
  shallowBody,
} from './routes/guards.ts';
import { healthRoutes } from './routes/health.ts';
import { hindsightRoutes } from './routes/hindsight.ts';
import { historyRoutes } from './routes/history.ts';
import { houseRoutes } from './routes/house.ts';
import { newsRoutes } from './routes/news.ts';
import { answerNotFound } from './routes/not-found.ts';
import { pageRoutes } from './routes/page.ts';
import type { Parts } from './routes/parts.ts';
import { planRoutes } from './routes/plan.ts';
import { questionRoutes } from './routes/questions.ts';
import { recordRoutes } from './routes/record.ts';
import { runRoutes } from './routes/runs.ts';
import { settingsRoutes } from './routes/settings.ts';
import { shelfRoutes } from './routes/shelf.ts';
import { surveyRoutes } from './routes/surveys.ts';
import { taskRoutes } from './routes/tasks.ts';
import { trialRoutes } from './routes/trial.ts';
import { whatIfRoutes } from './routes/what-if.ts';

export type * from './routes/backup-shapes.ts';
export type * from './routes/door-shapes.ts';
export type { Parts } from './routes/parts.ts';
export type * from './routes/shapes.ts';
export type * from './routes/survey-shapes.ts';
export type * from './routes/trial-shapes.ts';

/** Everything under /api. Refusals are not in these types: they are always an `ErrorBody` with a 4xx. */
const apiRoutes = (parts: Parts) =>
  new Hono()
    .route('/health', healthRoutes(parts))
    .route('/house', houseRoutes(parts))
    .route('/plan', planRoutes(parts))
    .route('/runs', runRoutes(parts))
    .route('/what-if', whatIfRoutes(parts))
    .route('/surveys', surveyRoutes(parts))
    .route('/tasks', taskRoutes(parts))
    .route('/news', newsRoutes(parts))
    .route('/trial', trialRoutes(parts))
    .route('/record', recordRoutes(parts))
    .route('/hindsight', hindsightRoutes(parts))
    .route('/draft', draftRoutes(parts))
    .route('/history', historyRoutes(parts))
    .route('/family', familyRoutes(parts))
    .route('/shelf', shelfRoutes(parts))
    .route('/feeds', feedRoutes(parts))
    .route('/settings', settingsRoutes(parts))
    .route('/backups', backupRoutes(parts))
    .route('/doors', doorRoutes(parts))
    .route('/questions', questionRoutes(parts))
    .route('/', documentRoutes(parts));

/** The whole app on these parts; it opens no port and reads no environment. */
export function createApp(parts: Parts) {
  const app = new Hono()
    .use(securityHeaders)
    .use(knownHost(parts.hosts))
    .use(sameSite(parts.base))
    .use(door(parts))
    .use('/api/*', knownBody)
    .use('/api/*', limitedBody)
    .use('/api/*', shallowBody)
    .route('/api', apiRoutes(parts))
    .route('/feed', calendarRoutes(parts));
  if (parts.pageFolder !== null) app.route('/', pageRoutes(parts.pageFolder));
  app.notFound((c) => answerNotFound(c));
  app.onError((error, c) => answerError(error, c, parts.report));
  return app;
}

export type AppType = ReturnType<typeof createApp>;
