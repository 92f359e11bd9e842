// The brews of the season, line by line: written in place, found, brought in and taken out as files.
import { useState } from 'react';
import { Input, Label, SearchField } from 'react-aria-components';
import type { Written } from '../../parts/book/book.ts';
import { BookFrame, type InBook } from '../../parts/book/book-frame.tsx';
import { STYLES_LIST } from '../../parts/book/cell.tsx';
import { aNewBrew } from '../../parts/book/fields.ts';
import { BringIn } from '../../parts/book/import/bring-in.tsx';
import { Ledger } from '../../parts/book/ledger.tsx';
import { useUnits } from '../../parts/units.ts';
import { count } from '../../parts/words.ts';
import { GUIDELINE, STYLE_RANGES } from './guideline.ts';
import { rangeWords, styleHints } from './style-hints.ts';
import { TakeOut } from './take-out.tsx';

export default function BrewsPage() {
  return <BookFrame>{(book) => <Brews {...book} />}</BookFrame>;
}

/** Whether a word stands in a brew's name, style, yeasts or additions. */
export function found(row: Written, word: string): boolean {
  const sought = word.trim().toLocaleLowerCase('en');
  if (sought === '') return true;
  const text = [row.brew, row.style, row.yeasts, row.additions].flat().join('\n');
  return text.toLocaleLowerCase('en').includes(sought);
}

/** The styles of which ranges are published, offered while one is typed. */
export function StylesList() {
  const [units] = useUnits();
  return (
    <datalist id={STYLES_LIST}>
      {STYLE_RANGES.map((range) => (
        <option key={range.style} value={range.style} label={rangeWords(range, units)} />
      ))}
    </datalist>
  );
}

function Brews(props: InBook) {
  const { open, checked } = props;
  const { book } = open;
  const [word, setWord] = useState('');
  const shown = book.lists.brews.filter(({ row }) => found(row, word)).length;
  const first = String(book.lists.yeasts[0]?.row.yeast ?? '');
  return (
    <>
      <h1 className="season-title">Brews</h1>
      <p className="lead-text">
        What is to be brewed, one beer a line. Write anywhere; what you write stays in pencil until
        you save it.
      </p>
      <div className="ledger-head">
        <SearchField className="field find" value={word} onChange={setWord}>
          <Label>Find by beer, style or yeast</Label>
          <Input className="input" />
        </SearchField>
        <p className="quiet" role="status">
          {word === ''
            ? count(book.lists.brews.length, 'brew')
            : `${shown} of ${count(book.lists.brews.length, 'brew')}`}
        </p>
      </div>
      <StylesList />
      <Ledger
        list="brews"
        open={open}
        checked={checked}
        shows={(row) => found(row, word)}
        hints={styleHints}
        makes={(name) => aNewBrew(name, first)}
      />
      <p className="quiet below-ledger">
        A style that is known has published ranges beside it ({GUIDELINE}). A beer outside them is
        as welcome as any.
      </p>
      <BringIn book={book} list="brews" />
      <TakeOut pencil={open.touched} />
    </>
  );
}
