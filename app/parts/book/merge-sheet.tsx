// Somebody saved the house meanwhile: what they changed, and for each place that both changed, whose it shall be.
import { useState } from 'react';
import { Button, Label, Radio, RadioGroup } from 'react-aria-components';
import type { House } from '../../../planner/index.ts';
import type { Book } from './book.ts';
import { mergedBook, mergeOf, type Side } from './merge.ts';
import { editWords, placeWords, type Reader, sideWords } from './pencil-words.ts';

const MOST_SHOWN = 40;

export function MergeSheet(props: {
  book: Book;
  now: House;
  revision: number;
  reader: Reader;
  /** Takes the merged book. */
  take: (book: Book) => void;
  /** Takes the house as it stands; what is in pencil goes. */
  drop: () => void;
}) {
  const { book, now, revision, reader, take, drop } = props;
  const { theirs, clashes } = mergeOf(book, now);
  const [chosen, setChosen] = useState<Readonly<Record<string, Side>>>({});
  const open = clashes.filter(({ key }) => chosen[key] === undefined);
  return (
    <section className="merge" aria-labelledby="merge">
      <h2 id="merge">The house was saved elsewhere meanwhile</h2>
      <p>
        In another tab or on another device. Nothing of yours is lost and nothing of theirs is
        overwritten: both go together.
      </p>
      <h3>What changed there</h3>
      <ul className="merge-list">
        {theirs.slice(0, MOST_SHOWN).map((one) => (
          <li key={one.key}>{editWords(one, reader)}</li>
        ))}
        {theirs.length > MOST_SHOWN && <li>and {theirs.length - MOST_SHOWN} more</li>}
        {theirs.length === 0 && <li>Nothing that differs in the end.</li>}
      </ul>
      {clashes.length > 0 && <h3>Both of you wrote here</h3>}
      {clashes.map((clash) => (
        <RadioGroup
          key={clash.key}
          className="radios clash"
          value={chosen[clash.key] ?? null}
          onChange={(side) => setChosen({ ...chosen, [clash.key]: side as Side })}
        >
          <Label>
            {placeWords(clash)}
            <span className="quiet"> · it was {sideWords(clash, clash.before, reader)}</span>
          </Label>
          <Radio value="mine" className="radio">
            Mine: {sideWords(clash, clash.mine, reader)}
          </Radio>
          <Radio value="theirs" className="radio">
            Theirs: {sideWords(clash, clash.theirs, reader)}
          </Radio>
        </RadioGroup>
      ))}
      <p className="merge-acts">
        <Button
          className="button first"
          isDisabled={open.length > 0}
          onPress={() => take(mergedBook(book, now, revision, chosen))}
        >
          Put both together
        </Button>
        <Button className="button" onPress={drop}>
          Take theirs, throw mine away
        </Button>
        {open.length > 0 && <span className="quiet">Choose a side for each place first.</span>}
      </p>
    </section>
  );
}
