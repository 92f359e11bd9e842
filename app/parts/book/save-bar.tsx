// The foot of the book: what is in pencil, to be tried, saved, undone or thrown away; a late edit is merged here.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button, Disclosure, DisclosurePanel } from 'react-aria-components';
import { houseQuery, isStale, outOfReach, type Saving, saveHouse } from '../../queries/house.ts';
import { runQuery, startRun } from '../../queries/runs.ts';
import { startWhatIf, useWhatIf } from '../../queries/what-if.ts';
import { ErrorNotice } from '../failed.tsx';
import { useUnits } from '../units.ts';
import { count } from '../words.ts';
import { type Book, openBook, same } from './book.ts';
import { type Checked, checkBook, problemWords } from './check.ts';
import { pencilled } from './merge.ts';
import { MergeSheet } from './merge-sheet.tsx';
import { editWords, type Reader } from './pencil-words.ts';
import { type OpenBook, reopen, undo } from './store.ts';
import { WhatIfSheet } from './what-if-sheet.tsx';

const MOST_SHOWN = 60;

/** A rule is named by its whole sentence: too long for a button. */
const shortened = (says: string): string => (says.length > 44 ? `${says.slice(0, 42)} …` : says);

export function SaveBar(props: { open: OpenBook; checked: Checked }) {
  const { open, checked } = props;
  const cache = useQueryClient();
  const now = useQuery(houseQuery).data;
  const [units] = useUnits();
  const whatIf = useWhatIf();
  const plan = useMutation(startRun(cache));
  const running = useQuery(runQuery).data?.run?.state === 'running';
  const saving = saveHouse(cache);
  const save = useMutation({
    ...saving,
    onSuccess: async (answer, sent: Saving) => {
      if (answer.house) reopen(openBook(answer.house, answer.revision));
      await cache.invalidateQueries({ predicate: ({ queryKey }) => queryKey[0] !== 'house' });
      cache.setQueryData(houseQuery.queryKey, answer);
      // a new house has no plan yet, and nothing that it would take the place of
      if (sent.startOver) {
        plan.mutate();
        window.location.hash = '#/';
      }
    },
    onError: (error) => {
      if (isStale(error)) void cache.invalidateQueries({ queryKey: houseQuery.queryKey });
    },
  });
  const tryIt = useMutation(startWhatIf(cache));
  const { book } = open;
  const reader: Reader = { units, currency: String(book.head.currency ?? '') };
  const stale = open.touched && now !== undefined && now.revision !== book.revision;
  const faults = checked.problems.filter(({ level }) => level === 'error');
  if (!open.touched) {
    if (!save.isSuccess) return <p role="status" className="unseen" />;
    return (
      <div className="pencil-bar">
        <p role="status">
          Saved. The plan in force does not know of it yet.{' '}
          <Button
            className="button first small"
            isDisabled={running || plan.isPending}
            onPress={() => plan.mutate()}
          >
            Plan again with it
          </Button>{' '}
          <Button className="button plain small" onPress={() => save.reset()}>
            Later
          </Button>
        </p>
        {plan.isError && <ErrorNotice error={plan.error} />}
      </div>
    );
  }
  if (stale && !book.startOver && now.house) {
    return (
      <MergeSheet
        key={now.revision}
        book={book}
        now={now.house}
        revision={now.revision}
        reader={reader}
        take={(merged) => {
          save.reset();
          reopen(merged);
        }}
        drop={() => {
          save.reset();
          if (now.house) reopen(openBook(now.house, now.revision));
        }}
      />
    );
  }
  const { house } = checked;
  // What is shown may lag behind the typing; what is sent is what stands in the book now.
  const written = () => checkBook(book).house;
  const revision = book.startOver ? (now?.revision ?? book.revision) : book.revision;
  return (
    <>
      {whatIf && <WhatIfSheet whatIf={whatIf} outdated={!same(whatIf.house, house)} />}
      <section className="pencil-bar" aria-label="In pencil, not saved yet">
        {book.startOver ? (
          <p>
            <strong>A new house.</strong> It begins a new season when it is saved
            {now?.house ? `; ${now.house.name} and its plan are put away then` : ''}.
          </p>
        ) : (
          <PencilList book={book} reader={reader} />
        )}
        {!open.kept && (
          <p className="red">
            This browser keeps nothing: save before you close or reload the page.
          </p>
        )}
        {faults.length > 0 && <Faults faults={faults} fresh={book.startOver} />}
        {save.isPending && save.failureCount > 0 && outOfReach(save.failureReason) && (
          <p role="status">The server does not answer. Saving is tried again until it does.</p>
        )}
        {save.isError && !isStale(save.error) && <ErrorNotice error={save.error} />}
        {tryIt.isError && <ErrorNotice error={tryIt.error} />}
        <p className="pencil-acts">
          <Button
            className="button first"
            isDisabled={house === null || save.isPending}
            onPress={() => {
              const sent = written();
              if (sent) save.mutate({ house: sent, revision, startOver: book.startOver });
            }}
          >
            {book.startOver ? 'Begin the season' : 'Save'}
          </Button>
          {!book.startOver && (
            <Button
              className="button"
              isDisabled={house === null || tryIt.isPending || whatIf?.run.state === 'running'}
              onPress={() => {
                const sent = written();
                if (sent) tryIt.mutate(sent);
              }}
            >
              See what the plan makes of it
            </Button>
          )}
          {open.undoes !== null && (
            <Button className="button" onPress={undo}>
              Undo<span className="undoes">: {shortened(open.undoes)}</span>
            </Button>
          )}
          <ThrowAway
            throwAway={() => {
              if (now?.house) reopen(openBook(now.house, now.revision));
            }}
          />
        </p>
      </section>
    </>
  );
}

function PencilList(props: { book: Book; reader: Reader }) {
  const edits = pencilled(props.book);
  return (
    <Disclosure className="pencil-list">
      <Button slot="trigger" className="button plain small">
        {count(edits.length, 'edit')} in pencil, not saved yet
      </Button>
      <DisclosurePanel>
        <ul className="merge-list">
          {edits.slice(0, MOST_SHOWN).map((one) => (
            <li key={one.key}>{editWords(one, props.reader)}</li>
          ))}
          {edits.length > MOST_SHOWN && <li>and {edits.length - MOST_SHOWN} more</li>}
        </ul>
      </DisclosurePanel>
    </Disclosure>
  );
}

function Faults(props: { faults: Checked['problems']; fresh: boolean }) {
  const { faults } = props;
  return (
    <Disclosure className="pencil-list">
      <Button slot="trigger" className="button plain small red">
        {count(faults.length, 'thing')}{' '}
        {props.fresh ? 'to write before it can begin' : 'to put right before it can be saved'}
      </Button>
      <DisclosurePanel>
        <ul className="merge-list">
          {faults.slice(0, MOST_SHOWN).map((fault) => (
            <li key={`${fault.code} ${fault.path}`}>{problemWords(fault)}</li>
          ))}
          {faults.length > MOST_SHOWN && <li>and {faults.length - MOST_SHOWN} more</li>}
        </ul>
      </DisclosurePanel>
    </Disclosure>
  );
}

function ThrowAway(props: { throwAway: () => void }) {
  const [sure, setSure] = useState(false);
  if (!sure) {
    return (
      <Button className="button plain" onPress={() => setSure(true)}>
        Throw away …
      </Button>
    );
  }
  return (
    <>
      <Button
        className="button"
        onPress={() => {
          setSure(false);
          props.throwAway();
        }}
      >
        Yes, throw all of it away
      </Button>
      <Button className="button plain" onPress={() => setSure(false)}>
        Keep it
      </Button>
    </>
  );
}
