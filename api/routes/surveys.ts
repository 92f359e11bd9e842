// Surveys of the plan in force: start one, watch it, stop it, read what it came to. Nothing is stored.
import { Hono } from 'hono';
import type { SurveyJob } from '../runs/messages.ts';
import { readState, requestOf } from '../runs/state.ts';
import { refuse } from './errors.ts';
import { runEvents } from './events.ts';
import type { Parts } from './parts.ts';
import { IdParam } from './shapes.ts';
import { type SurveyAnswer, SurveyRequest } from './survey-shapes.ts';
import { body, param } from './valid.ts';

function noSuchSurvey(id: string): never {
  return refuse(
    404,
    'no-such-survey',
    `There is no survey ${id}; the server remembers only the last few. POST /api/surveys starts one.`,
  );
}

export const surveyRoutes = (parts: Parts) =>
  new Hono()
    .post('/', body(SurveyRequest), async (c) => {
      const asked = c.req.valid('json');
      const state = await readState(parts.store.db);
      if (state === null || state.inForce === null) {
        return refuse(
          409,
          'no-plan',
          'There is no plan in force to look at: plan the season first.',
        );
      }
      const { plan } = state.inForce;
      const today = parts.today(state.stored.house.timeZone);
      const { seed } = asked;
      const steps = asked.kind === 'limits' ? (asked.steps ?? parts.steps) : asked.seasons;
      const request = requestOf(state, { today, seed, steps, anew: true });
      const job: SurveyJob =
        asked.kind === 'limits'
          ? { kind: 'limits', request, plan }
          : {
              kind: 'steadiness',
              request: { seed, steps },
              plan,
              house: request.house,
              luck: asked.luck,
            };
      const run = parts.surveys.start(job, { replace: asked.replace });
      if (run === null) {
        return refuse(
          409,
          'survey-under-way',
          'Another survey is being made. Wait for it, stop it, or send "replace": true to discard it.',
        );
      }
      return c.json({ run }, 202);
    })
    .get('/:id', param(IdParam), (c) => {
      const { id } = c.req.valid('param');
      const run = parts.surveys.get(id);
      if (run === null) return noSuchSurvey(id);
      const answer: SurveyAnswer = { run, result: parts.surveys.result(id) };
      return c.json(answer, 200);
    })
    .get('/:id/events', param(IdParam), (c) => {
      const { id } = c.req.valid('param');
      if (parts.surveys.get(id) === null) return noSuchSurvey(id);
      return runEvents(c, parts.surveys, id);
    })
    .post('/:id/stop', param(IdParam), (c) => {
      const { id } = c.req.valid('param');
      const run = parts.surveys.stop(id);
      return run === null ? noSuchSurvey(id) : c.json({ run }, 200);
    });
