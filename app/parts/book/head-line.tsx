// One field of the house itself, as a line with its name: written in pencil like everything in the book.
import { useId } from 'react';
import { useUnits } from '../units.ts';
import { same, type Written, writeHead } from './book.ts';
import { Cell } from './cell.tsx';
import { unitOf } from './cells.ts';
import { type Checked, problemWords } from './check.ts';
import { headSpec } from './head-fields.ts';
import { type OpenBook, write } from './store.ts';

/** What stands at a place of the house: `store.tempC`. */
export function headValue(head: Written, place: string): unknown {
  const [key = '', inner] = place.split('.');
  const value = head[key];
  if (inner === undefined) return value;
  return typeof value === 'object' && value !== null ? Reflect.get(value, inner) : undefined;
}

/** Writes at a place of the house; undefined takes it out. */
export function writePlace(place: string, value: unknown, says: string): void {
  const [key = '', inner] = place.split('.');
  write((book) => writeHead(book, [key, inner], value), says, place);
}

/** Whether a place differs from the house as it was opened. */
export function isPencil({ book }: OpenBook, place: string): boolean {
  if (book.base === null) return false;
  return !same(headValue(book.base, place) ?? null, headValue(book.head, place) ?? null);
}

export function HeadLine(props: { open: OpenBook; checked: Checked; place: string }) {
  const { open, checked, place } = props;
  const [units] = useUnits();
  const says = useId();
  const spec = headSpec(place);
  if (spec === null) return null;
  const currency = String(open.book.head.currency ?? '');
  const unit = unitOf(spec, units, currency);
  const problems = checked.at(place);
  const wrong = problems.some(({ level }) => level === 'error');
  return (
    <div className="head-line">
      <span className="head-label" aria-hidden="true">
        {spec.label}
      </span>
      <span className="head-value">
        <Cell
          spec={spec}
          value={headValue(open.book.head, place)}
          name={spec.label}
          units={units}
          currency={currency}
          yeasts={[]}
          pencil={isPencil(open, place)}
          wrong={wrong ? says : undefined}
          write={(value) => writePlace(place, value, spec.label)}
        />
        {unit !== '' && unit !== 'SG' && (
          <span className="quiet" aria-hidden="true">
            {unit}
          </span>
        )}
      </span>
      <HeadProblems checked={checked} place={place} id={says} />
    </div>
  );
}

/** What is wrong at a place. */
export function HeadProblems(props: { checked: Checked; place: string; id?: string }) {
  const problems = props.checked.at(props.place);
  if (problems.length === 0) return null;
  return (
    <div className="head-says" id={props.id}>
      {problems.map((problem) => (
        <p
          key={`${problem.code} ${problem.path}`}
          className={problem.level === 'error' ? 'says-wrong' : 'says-note'}
        >
          {problemWords(problem)}
        </p>
      ))}
    </div>
  );
}
