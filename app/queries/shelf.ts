// What stands in the cold, and the family of one thing of it.
import { queryOptions } from '@tanstack/react-query';
import type { CultureRef } from '../../planner/index.ts';
import { answerOf, client } from '../client.ts';

export const shelfQuery = queryOptions({
  queryKey: ['shelf'],
  queryFn: () => answerOf(client.api.shelf.$get()),
});

/** Begins the keys of all families. */
export const familiesKey = ['family'];

/** Who shares yeast with it, and which beers to taste. */
export const familyQuery = (of: CultureRef) =>
  queryOptions({
    queryKey: [...familiesKey, of.kind, of.kind === 'jar' ? of.jar : of.brew],
    queryFn: () =>
      answerOf(
        client.api.family[':kind'][':name'].$get({
          param: { kind: of.kind, name: encodeURIComponent(of.kind === 'jar' ? of.jar : of.brew) },
        }),
      ),
  });
