// Around every page that writes in the book: opens it, checks it, and shows what is in pencil at its foot.
import { useSuspenseQuery } from '@tanstack/react-query';
import { type ReactNode, useDeferredValue, useEffect, useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import '../../styles/book.css';
import '../../styles/pencil.css';
import { houseQuery } from '../../queries/house.ts';
import { hashOf } from '../../router.ts';
import { type Checked, checkBook } from './check.ts';
import { forget, type Kept, othersKept } from './keeping.ts';
import { SaveBar } from './save-bar.tsx';
import { bookFor, type OpenBook, reopen, useOpenBook } from './store.ts';

export type InBook = { open: OpenBook; checked: Checked; today: string };

export function BookFrame(props: { children: (book: InBook) => ReactNode }) {
  const { house, revision, today } = useSuspenseQuery(houseQuery).data;
  const shown = useOpenBook();
  useEffect(() => {
    bookFor(house, revision);
  }, [house, revision]);
  if (shown === null) {
    return house === null ? (
      <p>
        There is no house yet. <a href={hashOf({ page: 'start', step: '' })}>Start one</a>
      </p>
    ) : null;
  }
  return <Opened open={shown} today={today} render={props.children} />;
}

function Opened(props: { open: OpenBook; today: string; render: (book: InBook) => ReactNode }) {
  const { open, today, render } = props;
  // What is typed shows at once; what the planner says of it may lag a little.
  const looked = useDeferredValue(open.book);
  const checked = useMemo(() => checkBook(looked), [looked]);
  return (
    <>
      <Orphans touched={open.touched} />
      {render({ open, checked, today })}
      <SaveBar open={open} checked={checked} />
    </>
  );
}

/** What another tab had in pencil, maybe a tab that is closed: taken over here, or thrown away. */
function Orphans(props: { touched: boolean }) {
  const [kept, setKept] = useState<Kept[]>(othersKept);
  const [first] = kept;
  if (first === undefined || props.touched) return null;
  const when = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
  const away = () => setKept(kept.slice(1));
  return (
    <div className="notice">
      <p>
        Another tab of this browser has edits in pencil, last written{' '}
        {Number.isNaN(Date.parse(first.at)) ? 'some time ago' : when.format(new Date(first.at))}.
      </p>
      <p className="merge-acts">
        <Button
          className="button small"
          onPress={() => {
            reopen(first.book);
            forget(first.tab);
            away();
          }}
        >
          Go on with them here
        </Button>
        <Button className="button plain small" onPress={away}>
          Leave them there
        </Button>
        <Button
          className="button plain small"
          onPress={() => {
            forget(first.tab);
            away();
          }}
        >
          Throw them away
        </Button>
      </p>
    </div>
  );
}
