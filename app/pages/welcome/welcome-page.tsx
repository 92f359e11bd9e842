// The first visit: look around in the demo house, begin empty in three steps, or bring a season in.
import { useMutation, useQueryClient, useSuspenseQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import { newBook } from '../../parts/book/book.ts';
import { BookFrame } from '../../parts/book/book-frame.tsx';
import { bookFor, reopen, useOpenBook } from '../../parts/book/store.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { houseQuery, openDemo } from '../../queries/house.ts';
import { startRun } from '../../queries/runs.ts';
import '../../styles/house.css';
import { hashOf } from '../../router.ts';
import { emptyHouse } from './empty-house.ts';
import { isStep, Steps } from './steps.tsx';

export default function WelcomePage(props: { step: string }) {
  const { step } = props;
  const answer = useSuspenseQuery(houseQuery).data;
  const shown = useOpenBook();
  useEffect(() => {
    bookFor(answer.house, answer.revision);
  }, [answer]);
  if (isStep(step) && shown?.book.startOver) {
    return <BookFrame>{(book) => <Steps step={step} {...book} />}</BookFrame>;
  }
  return <Ways />;
}

function goTo(step: string): void {
  window.location.hash = hashOf({ page: 'start', step });
}

function Ways() {
  const cache = useQueryClient();
  const { house, demo, revision, today } = useSuspenseQuery(houseQuery).data;
  const shown = useOpenBook();
  const begun = shown?.book.startOver ?? false;
  const plan = useMutation(startRun(cache));
  const opening = openDemo(cache);
  const open = useMutation({
    ...opening,
    onSuccess: async () => {
      await cache.invalidateQueries();
      plan.mutate();
      window.location.hash = hashOf({ page: 'season' });
    },
  });
  const pencil = shown?.touched === true && !begun;
  const begin = (step: string) => {
    const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
    reopen(newBook(emptyHouse(today, timeZone, navigator.language), revision));
    goTo(step);
  };
  return (
    <>
      <h1 className="season-title">Where to begin</h1>
      {house && (
        <p className="lead-text">
          {demo
            ? `${house.name} is open now: a demo house, one season of a home brewery, to look around in.`
            : `${house.name} is open now. Another house begins a new season: its plan and its record are put away when the new one is saved, not before.`}
        </p>
      )}
      {pencil && (
        <p className="notice">
          There are edits in pencil that are not saved. Beginning another house throws them away;
          save them first if they are to stay.
        </p>
      )}
      <ol className="ways">
        <li>
          <h2>Look around</h2>
          <p>The demo house, planned: change what you like, nothing can be broken.</p>
          {house && demo ? (
            <a className="button" href={hashOf({ page: 'season' })}>
              Go to its season
            </a>
          ) : (
            <Button
              className="button"
              isDisabled={open.isPending}
              onPress={() => open.mutate(revision)}
            >
              Open the demo house
            </Button>
          )}
          {house && !demo && (
            <p className="quiet">
              It takes the place of {house.name}: take your season out as files first.
            </p>
          )}
          {open.isError && <ErrorNotice error={open.error} />}
        </li>
        <li>
          <h2>Start empty</h2>
          <p>Three steps: what you brew on, what you brew, what is on the shelf.</p>
          {begun ? (
            <p className="merge-acts">
              <Button className="button first" onPress={() => goTo('1')}>
                Go on where I was
              </Button>
              <Button className="button plain" onPress={() => begin('1')}>
                Begin anew
              </Button>
            </p>
          ) : (
            <Button className="button first" onPress={() => begin('1')}>
              Start empty
            </Button>
          )}
        </li>
        <li>
          <h2>Bring a season in</h2>
          <p>
            The files of a season folder, or lists from a spreadsheet: each is shown cell by cell
            before anything is taken.
          </p>
          <Button className="button" onPress={() => begin('files')}>
            Bring files in
          </Button>
        </li>
      </ol>
    </>
  );
}
