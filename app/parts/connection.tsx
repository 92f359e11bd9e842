// Says that the server does not answer, tries again until it does, and then reads everything anew.
import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useSyncExternalStore } from 'react';
import { answerOf, client } from '../client.ts';
import { isLost, subscribeReach } from '../reach.ts';

const TRY_AGAIN_MS = 3000;

export function Connection() {
  const cache = useQueryClient();
  const lost = useSyncExternalStore(subscribeReach, isLost);
  useEffect(() => {
    if (!lost) return;
    const again = setInterval(() => {
      void answerOf(client.api.health.$get())
        .then(() => cache.invalidateQueries())
        .catch(() => undefined);
    }, TRY_AGAIN_MS);
    return () => clearInterval(again);
  }, [cache, lost]);
  return (
    <p role="status" className={lost ? 'notice connection' : 'unseen'}>
      {lost &&
        'The server does not answer. It is asked again every few seconds; what you write here is kept in this browser.'}
    </p>
  );
}
