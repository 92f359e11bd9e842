// Who is signed in, with a way to end each session and to sign out here.
import { useMutation, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { ErrorNotice } from '../../parts/failed.tsx';
import { type DoorsAnswer, doorsQuery, endSession, signOut } from '../../queries/doors.ts';

const moment = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
const when = (iso: string) => moment.format(new Date(iso));

export default function DoorsPage() {
  const cache = useQueryClient();
  const { data } = useSuspenseQuery(doorsQuery);
  const out = useMutation(signOut(cache));
  useEffect(() => {
    // Others may have signed in since the page was opened.
    void cache.invalidateQueries({ queryKey: doorsQuery.queryKey });
  }, [cache]);
  return (
    <>
      <h1 className="season-title">Doors</h1>
      {data.shut ? (
        <>
          <p className="lead-text">
            Each browser that has signed in with the password holds a session. One that is not used
            for 30 days ends by itself. A new password, set with <code>npm run password</code> on
            the machine that runs the server, ends them all.
          </p>
          <ul className="feeds">
            {data.sessions.map((session) => (
              <SessionItem key={session.id} session={session} />
            ))}
          </ul>
          <Button className="button" isDisabled={out.isPending} onPress={() => out.mutate()}>
            Sign out here
          </Button>
          {out.isError && <ErrorNotice error={out.error} />}
        </>
      ) : (
        <p className="lead-text">
          No password is set: only the machine that runs the server gets in, and it is not asked.
          Before others can, <code>npm run password</code> sets one.
        </p>
      )}
    </>
  );
}

function SessionItem(props: { session: DoorsAnswer['sessions'][number] }) {
  const { session } = props;
  const end = useMutation(endSession(useQueryClient()));
  const name = session.browser === '' ? 'A program without a name' : session.browser;
  return (
    <li>
      <h2 className="session-name">
        <bdi>{name}</bdi>
        {session.here && <span className="quiet"> (this one)</span>}
      </h2>
      <p>
        Since {when(session.startedAt)}, last used {when(session.seenAt)}.
      </p>
      {!session.here && (
        <p className="feed-acts">
          <Button
            className="button plain small"
            aria-label={`End it: ${name}, since ${when(session.startedAt)}`}
            isDisabled={end.isPending}
            onPress={() => end.mutate(session.id)}
          >
            End it
          </Button>
        </p>
      )}
      {end.isError && <ErrorNotice error={end.error} />}
    </li>
  );
}
