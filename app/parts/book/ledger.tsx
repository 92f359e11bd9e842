// A list of the house as ruled lines: one line a row, its cells written in place, the rest in a fold below it.
import { memo, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { type Units, useUnits } from '../units.ts';
import {
  addRows,
  type BookRow,
  baseRow,
  duplicateRow,
  freeName,
  NAMED_BY,
  removeRow,
  same,
  type Written,
  writeCell,
} from './book.ts';
import { Cell, Strains } from './cell.tsx';
import { unitOf } from './cells.ts';
import { type Checked, type PlacedProblem, problemWords } from './check.ts';
import { type EditedList, FIELDS, type FieldSpec, ROW_WORD } from './fields.ts';
import { type OpenBook, write } from './store.ts';

/** More lines than anyone reads at once; the filter finds the others. */
const MOST_LINES = 300;

/** Something worth knowing about a row that is no error. */
export type Hint = { key: string; says: string };

export type LedgerProps = {
  list: EditedList;
  open: OpenBook;
  checked: Checked;
  /** Which rows are shown; none given: all. */
  shows?: (row: Written) => boolean;
  hints?: (row: Written, units: Units) => Hint[];
  /** A new row under a name of its own. */
  makes: (name: string) => Written;
};

export function Ledger(props: LedgerProps) {
  const { list, open, checked, shows, hints, makes } = props;
  const { book } = open;
  const [units] = useUnits();
  const [all, setAll] = useState(false);
  const currency = String(book.head.currency ?? '');
  const yeasts = book.lists.yeasts.map(({ row }) => String(row.yeast ?? ''));
  const spec = FIELDS[list];
  const columns = spec.filter((field) => field.line);
  const matching = book.lists[list].filter(({ row }) => shows?.(row) ?? true);
  const rows = all ? matching : matching.slice(0, MOST_LINES);
  const word = ROW_WORD[list];
  return (
    <>
      {book.lists[list].length > 0 && (
        <table className="ledger">
          <thead>
            <tr>
              <th className="ledger-no" scope="col">
                <span className="unseen">Number</span>
              </th>
              {columns.map((field) => (
                <th key={field.field} scope="col" className={`as-${field.kind}`}>
                  {field.label}
                  <HeadUnit unit={unitOf(field, units, currency)} />
                </th>
              ))}
              <th scope="col">
                <span className="unseen">More</span>
              </th>
            </tr>
          </thead>
          {rows.map((one, at) => (
            <LedgerRow
              key={one.id}
              list={list}
              one={one}
              nth={at + 1}
              base={baseRow(book, list, one.id)}
              fresh={book.startOver}
              columns={columns}
              problems={checked.ofRow(list, one.id)}
              units={units}
              currency={currency}
              yeasts={yeasts.join('\n')}
              hints={JSON.stringify(hints?.(one.row, units) ?? [])}
            />
          ))}
        </table>
      )}
      {matching.length > rows.length && (
        <Button className="button" onPress={() => setAll(true)}>
          Show all {matching.length}
        </Button>
      )}
      {checked.at(list).map((problem) => (
        <p key={problem.code} className="says-wrong">
          {problemWords(problem)}
        </p>
      ))}
      <Button
        className="button ledger-add"
        onPress={() =>
          write(
            (now) => addRows(now, list, [makes(freeName(now, list, NEW_NAME[list]))]),
            `${word} added`,
          )
        }
      >
        Add a {word}
      </Button>
    </>
  );
}

const NEW_NAME: Readonly<Record<EditedList, string>> = {
  brews: 'New brew',
  tanks: 'Tank 1',
  yeasts: 'New yeast',
  jars: 'J1',
};

function HeadUnit(props: { unit: string }) {
  const { unit } = props;
  return unit === '' || unit === 'SG' ? null : <span className="head-unit">{unit}</span>;
}

type RowProps = {
  list: EditedList;
  one: BookRow;
  nth: number;
  base: Written | null;
  /** The whole house is new: nothing in it is an edit. */
  fresh: boolean;
  columns: readonly FieldSpec[];
  problems: readonly PlacedProblem[];
  units: Units;
  currency: string;
  /** Joined by line breaks, so that an unchanged list is the same value. */
  yeasts: string;
  /** As text, so that the same hints are the same value. */
  hints: string;
};

/** The problems of a row are made anew with each check; those that say the same are the same. */
const sameProps = (a: RowProps, b: RowProps): boolean =>
  (Object.keys(a) as (keyof RowProps)[]).every((key) =>
    key === 'problems' || key === 'columns' ? same(a[key], b[key]) : Object.is(a[key], b[key]),
  );

const LedgerRow = memo(function LedgerRow(props: RowProps) {
  const { list, one, nth, base, columns, problems, currency, units } = props;
  const [folded, setFolded] = useState(true);
  const says = useId();
  const name = String(one.row[NAMED_BY[list]] ?? '') || `${ROW_WORD[list]} ${nth}`;
  const yeasts = props.yeasts === '' ? [] : props.yeasts.split('\n');
  const cell = (spec: FieldSpec) => ({
    spec,
    value: one.row[spec.field],
    name: `${spec.label} of ${name}`,
    units,
    currency,
    yeasts,
    pencil: !props.fresh && (base === null || !same(base[spec.field], one.row[spec.field])),
    wrong: problems.some(({ field, problem }) => field === spec.field && problem.level === 'error')
      ? says
      : undefined,
    write: (value: unknown) =>
      write(
        (book) => writeCell(book, list, one.id, spec.field, value),
        `${spec.label} of ${name}`,
        `${list} ${one.id} ${spec.field}`,
      ),
  });
  const rest = FIELDS[list].filter((spec) => !spec.line);
  const folds = rest.some((spec) => problems.some(({ field }) => field === spec.field));
  const open = !folded || folds;
  const wrong = problems.some(({ problem }) => problem.level === 'error');
  const span = columns.length + 1;
  const lines = JSON.parse(props.hints) as Hint[];
  return (
    <tbody className={`ledger-row${open ? ' is-open' : ''}${wrong ? ' is-wrong' : ''}`}>
      <tr>
        <td className="ledger-no figures" aria-hidden="true">
          {nth}
        </td>
        {columns.map((spec) => (
          <td key={spec.field} data-label={spec.label} className={`as-${spec.kind} w-${spec.wide}`}>
            <Cell {...cell(spec)} />
          </td>
        ))}
        <td className="ledger-more">
          <button
            type="button"
            className="word"
            aria-expanded={open}
            aria-label={`${open ? 'Less' : 'More'} of ${name}`}
            onClick={() => setFolded(open)}
          >
            {open ? 'less' : 'more'}
          </button>
        </td>
      </tr>
      {(problems.length > 0 || lines.length > 0) && (
        <tr className="ledger-says">
          <td className="ledger-no" />
          <td colSpan={span} id={says}>
            {problems.map(({ problem }) => (
              <p
                key={`${problem.code} ${problem.path}`}
                className={problem.level === 'error' ? 'says-wrong' : 'says-note'}
              >
                {problemWords(problem)}
              </p>
            ))}
            {lines.map(({ key, says: line }) => (
              <p key={key} className="says-note">
                {line}
              </p>
            ))}
          </td>
        </tr>
      )}
      {open && (
        <tr className="ledger-fold">
          <td className="ledger-no" />
          <td colSpan={span}>
            {list === 'brews' && (
              <Strains
                strains={Array.isArray(one.row.yeasts) ? one.row.yeasts.map(String) : []}
                yeasts={yeasts}
                brew={name}
                write={(strains) =>
                  write(
                    (book) => writeCell(book, list, one.id, 'yeasts', strains),
                    `yeasts of ${name}`,
                  )
                }
              />
            )}
            <div className="fold-fields">
              {rest.map((spec) => (
                <div key={spec.field} className="fold-field">
                  <span className="field-name" aria-hidden="true">
                    {spec.label}
                    <HeadUnit unit={unitOf(spec, units, currency)} />
                  </span>
                  <Cell {...cell(spec)} />
                </div>
              ))}
            </div>
            <p className="fold-acts">
              <Button
                className="button small"
                aria-label={`Duplicate ${name}`}
                onPress={() =>
                  write((book) => duplicateRow(book, list, one.id), `${name} duplicated`)
                }
              >
                Duplicate
              </Button>
              <Button
                className="button small"
                aria-label={`Remove ${name}`}
                onPress={() => write((book) => removeRow(book, list, one.id), `${name} removed`)}
              >
                Remove
              </Button>
            </p>
          </td>
        </tr>
      )}
    </tbody>
  );
}, sameProps);
