// A beer that has just been put down: it is held there, the planner is at work on the rest, and it can be taken back.
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Button } from 'react-aria-components';
import { shortDay } from '../../parts/days.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { tellNews } from '../../queries/news.ts';
import type { Move } from '../../queries/trial.ts';

export type Holding = ReturnType<typeof useHold>;

/** Holds a brew to a day and a tank, and lets that be taken back. */
export function useHold() {
  const cache = useQueryClient();
  const tell = useMutation(tellNews(cache));
  const undo = useMutation(tellNews(cache));
  const held = tell.data && tell.variables?.kind === 'pinned' ? tell : null;
  return {
    mutate: (move: Move) => {
      undo.reset();
      tell.mutate({ kind: 'pinned', ...move });
    },
    takeBack: () => {
      if (held?.data) undo.mutate({ kind: 'undone', entry: held.data.entry });
    },
    told: tell.variables?.kind === 'pinned' ? tell.variables : null,
    isHeld: held !== null && !undo.isSuccess,
    isUndone: undo.isSuccess,
    isPending: tell.isPending || undo.isPending,
    error: tell.error ?? undo.error,
  };
}

export function HeldNotice(props: { hold: Holding }) {
  const { hold } = props;
  const { told } = hold;
  const where = told
    ? [told.day ? `to ${shortDay(told.day)}` : '', told.tank ? `in ${told.tank}` : '']
        .filter((word) => word !== '')
        .join(' ')
    : '';
  return (
    <>
      <div className="held" role="status">
        {told && hold.isHeld && (
          <p>
            {told.brew} is held {where}. The rest is planned around it; nothing is in force until
            you adopt it.
          </p>
        )}
        {told && hold.isUndone && <p>{told.brew} is no longer held there.</p>}
      </div>
      {hold.isHeld && (
        <Button className="button small" isDisabled={hold.isPending} onPress={hold.takeBack}>
          Take it back
        </Button>
      )}
      {hold.error !== null && <ErrorNotice error={hold.error} />}
    </>
  );
}
