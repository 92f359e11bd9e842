// What moving one brew would break or cost: asked anew for every day and tank, and known again on the way back.
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { Trial } from '../../planner/index.ts';
import { answerOf, client } from '../client.ts';

export type Move = { brew: string; day: string; tank: string };

/**
 * The answer to a move on a plan; while a newer one is on its way, the one before of the same brew.
 * @param move null: nothing is asked
 */
export function useTrial(
  plan: string | null,
  move: Move | null,
): { trial: Trial | null; error: unknown } {
  const asked = useQuery({
    queryKey: ['trial', plan, move?.brew, move?.day, move?.tank],
    queryFn: async ({ signal }) => {
      if (move === null) throw new Error('nothing is asked');
      return (await answerOf(client.api.trial.$post({ json: move }, { init: { signal } }))).trial;
    },
    enabled: move !== null,
    placeholderData: keepPreviousData,
    retry: false,
    gcTime: 60_000,
  });
  if (move === null) return { trial: null, error: null };
  const of = asked.data?.brew === move.brew ? asked.data : null;
  return { trial: of, error: asked.error };
}
