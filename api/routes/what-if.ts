// What would come of a house that is not saved: plan it, watch it, stop it, read what differs. Nothing is stored.
import { Hono } from 'hono';
import type { z } from 'zod';
import { type House, parseHouse } from '../../planner/index.ts';
import { readState } from '../runs/state.ts';
import { refuse, refuseProblems } from './errors.ts';
import { runEvents } from './events.ts';
import type { Parts } from './parts.ts';
import { lostFacts } from './saving.ts';
import { IdParam } from './shapes.ts';
import { bodyBy, param, parsed } from './valid.ts';
import { type WhatIfAnswer, WhatIfRequest } from './what-if-shapes.ts';

function noSuchWhatIf(id: string): never {
  return refuse(
    404,
    'no-such-what-if',
    `There is no what-if ${id}; the server remembers only the last few. POST /api/what-if starts one.`,
  );
}

type Asked = Omit<z.output<typeof WhatIfRequest>, 'house'> & { house: House | null };

/** The request with its house looked at as a house that is saved would be: every problem at once. */
const whatIfBody = bodyBy<z.input<typeof WhatIfRequest>, Asked>((value) => {
  const { house: given, ...rest } = parsed(WhatIfRequest, value, '(body)');
  if (given === null || given === undefined) return { ...rest, house: null };
  const { house, problems } = parseHouse(given);
  return house === null ? refuseProblems(problems, 422) : { ...rest, house };
});

function answerOf({ whatIfs }: Parts, id: string): WhatIfAnswer {
  const run = whatIfs.get(id);
  if (run === null) return noSuchWhatIf(id);
  const result = whatIfs.result(id);
  return { run, result };
}

export const whatIfRoutes = (parts: Parts) =>
  new Hono()
    .post('/', whatIfBody, async (c) => {
      const { house, seed, steps, anew, replace } = c.req.valid('json');
      const state = await readState(parts.store.db);
      if (state === null) {
        return refuse(409, 'no-house', 'There is no house yet that could be changed.');
      }
      const lost = house === null ? [] : lostFacts(house, state.record);
      if (lost.length > 0) return refuseProblems(lost, 409, 'in-the-record');
      const run = parts.whatIfs.start(state, {
        house,
        today: parts.today((house ?? state.stored.house).timeZone),
        seed,
        steps: steps ?? parts.steps,
        anew,
        replace,
      });
      if (run === null) {
        return refuse(
          409,
          'what-if-under-way',
          'Another what-if is being planned. Wait for it, stop it, or send "replace": true to discard it.',
        );
      }
      return c.json({ run }, 202);
    })
    .get('/:id', param(IdParam), (c) => c.json(answerOf(parts, c.req.valid('param').id), 200))
    .get('/:id/events', param(IdParam), (c) => {
      const { id } = c.req.valid('param');
      if (parts.whatIfs.get(id) === null) return noSuchWhatIf(id);
      return runEvents(c, parts.whatIfs, id);
    })
    .post('/:id/stop', param(IdParam), (c) => {
      const { id } = c.req.valid('param');
      const run = parts.whatIfs.stop(id);
      return run === null ? noSuchWhatIf(id) : c.json({ run }, 200);
    });
