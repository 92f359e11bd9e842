// Reads files of a season on the server, which knows how: every cell, every problem, and the house that comes of it.
import type { z } from 'zod';
import type { ImportAnswer, ImportRequest, ImportTable } from '../../api/routes/import-shapes.ts';
import { answerOf, client } from '../client.ts';

export type { ImportAnswer, ImportTable };
export type Reading = Pick<
  z.input<typeof ImportRequest>,
  'files' | 'columns' | 'corrections' | 'onto'
>;

/** Shows what files hold; nothing is saved. */
export const readFiles = {
  mutationFn: (reading: Reading): Promise<ImportAnswer> =>
    answerOf(client.api.house.import.$post({ json: { ...reading, apply: false } })),
};
