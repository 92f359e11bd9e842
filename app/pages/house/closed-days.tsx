// The days on which nobody works: added by stretches, taken out by stretches.
import { useState } from 'react';
import { Button, Input, Label, TextField } from 'react-aria-components';
import type { InBook } from '../../parts/book/book-frame.tsx';
import { HeadProblems, writePlace } from '../../parts/book/head-line.tsx';
import { daysOf, MOST_DAYS, stretchesOf, stretchWords } from './stretches.ts';

export function ClosedDays(props: InBook) {
  const { open, checked } = props;
  const { closed } = open.book.head;
  const days = Array.isArray(closed) ? closed.map(String) : [];
  const [from, setFrom] = useState('');
  const [to, setTo] = useState('');
  const added = daysOf({ from, to });
  const put = (next: readonly string[]) =>
    writePlace('closed', [...new Set(next)].sort(), 'closed days');
  return (
    <div className="closed">
      <h3>Closed days</h3>
      {days.length === 0 && <p className="quiet">None: every work day is open.</p>}
      <ul className="closed-days">
        {stretchesOf(days).map((stretch) => (
          <li key={stretch.from}>
            {stretchWords(stretch)}
            <button
              type="button"
              className="word"
              aria-label={`Open again: ${stretchWords(stretch)}`}
              onClick={() => put(days.filter((day) => day < stretch.from || day > stretch.to))}
            >
              open again
            </button>
          </li>
        ))}
      </ul>
      <div className="closed-new">
        <TextField className="field" type="date" value={from} onChange={setFrom}>
          <Label>Closed from</Label>
          <Input className="input" />
        </TextField>
        <TextField className="field" type="date" value={to} onChange={setTo}>
          <Label>To, if more than a day</Label>
          <Input className="input" min={from} />
        </TextField>
        <Button
          className="button"
          isDisabled={added === null}
          onPress={() => {
            put([...days, ...(added ?? [])]);
            setFrom('');
            setTo('');
          }}
        >
          Close these days
        </Button>
      </div>
      {from !== '' && added === null && (
        <p className="says-wrong">
          The last day has to be on or after the first, and at most {MOST_DAYS} days later.
        </p>
      )}
      <HeadProblems checked={checked} place="closed" />
    </div>
  );
}
