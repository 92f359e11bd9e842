// The dated copies, and putting one of them, or a file, back.
import { mutationOptions, type QueryClient, queryOptions } from '@tanstack/react-query';
import type { HouseSummary, RestoreAnswer } from '../../api/routes/backup-shapes.ts';
import { answerOf, client } from '../client.ts';

export type { HouseSummary, RestoreAnswer };

/** One of the copies by name, or a document that was read from a file. */
export type Source = { copy: string } | { document: unknown };

export const backupsQuery = queryOptions({
  queryKey: ['backups'],
  queryFn: () => answerOf(client.api.backups.$get()),
});

/** Where the browser fetches the whole house, and one copy. */
export const HOUSE_FILE = '/api/backups/house.json';
export const copyFile = (name: string) => `/api/backups/copies/${encodeURIComponent(name)}`;

/** Makes a copy now. */
export const makeCopy = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: () => answerOf(client.api.backups.$post()),
    onSuccess: ({ made: _made, ...backups }) => cache.setQueryData(backupsQuery.queryKey, backups),
  });

/** Shows what a copy holds and what it would take the place of; nothing is changed. */
export const lookAt = () =>
  mutationOptions({
    mutationFn: (source: Source) => answerOf(client.api.backups.restore.$post({ json: source })),
  });

/** Puts back what was looked at; everything that was read before is then out of date. */
export const putBack = (cache: QueryClient) =>
  mutationOptions({
    mutationFn: (wanted: { source: Source; revision: number; addresses: boolean }) =>
      answerOf(
        client.api.backups.restore.$post(
          { json: { ...wanted.source, addresses: wanted.addresses, apply: true } },
          { headers: { 'If-Match': String(wanted.revision) } },
        ),
      ),
    onSuccess: () => cache.invalidateQueries(),
  });
