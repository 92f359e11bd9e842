// One file of an import, cell by cell: strange columns to be named, bad cells marked and put right in place.
import { useId, useState } from 'react';
import type { Problem } from '../../../../planner/index.ts';
import type { ImportTable } from '../../../queries/import.ts';
import { Scroller } from '../../scroller.tsx';
import { problemWords } from '../check.ts';
import { freeColumns, problemsIn, type TableProblems } from './placed.ts';

/** Sound rows that are shown; those with something wrong are all shown. */
const MOST_SOUND = 30;

export type PreviewProps = {
  table: ImportTable;
  problems: readonly Problem[];
  /** How many of its rows can be taken. */
  sound: number;
  name: (cell: string, column: string) => void;
  correct: (line: number, column: string, text: string) => void;
};

/** The header with the place of each cell: two columns may have one name. */
const numberedCells = ({ header }: ImportTable) => header.map((cell, at) => ({ ...cell, at }));

export function Preview(props: PreviewProps) {
  const { table, sound } = props;
  const title = useId();
  const placed = problemsIn(table, props.problems);
  const wrong = table.rows.filter(({ line }) => placed.ofLine.has(line));
  const right = table.rows.filter(({ line }) => !placed.ofLine.has(line)).slice(0, MOST_SOUND);
  const rows = [...wrong, ...right].sort((a, b) => a.line - b.line);
  const hidden = table.rows.length - rows.length;
  return (
    <section className="preview" aria-labelledby={title}>
      <h3 id={title}>
        {table.file}: {sound} of {table.rows.length} rows can be taken
      </h3>
      <Strange {...props} />
      {placed.whole
        .filter(({ code }) => code !== 'unknown-column')
        .map((problem) => (
          <p
            key={`${problem.code} ${problem.path}`}
            className={problem.level === 'error' ? 'says-wrong' : 'says-note'}
          >
            {problemWords(problem)}
          </p>
        ))}
      <Scroller className="preview-scroll" label={`Rows of ${table.file}`}>
        <table className="preview-table">
          <thead>
            <tr>
              <th scope="col">Line</th>
              {numberedCells(table).map(({ cell, column, at }) => (
                <th key={at} scope="col" className={column === null ? 'aside' : ''}>
                  {column ?? (cell === '' ? '(no name)' : cell)}
                </th>
              ))}
            </tr>
          </thead>
          {rows.map((row) => (
            <Row key={row.line} row={row} placed={placed} {...props} />
          ))}
        </table>
      </Scroller>
      {hidden > 0 && <p className="quiet">{hidden} further rows have nothing wrong.</p>}
    </section>
  );
}

/** Columns whose names are not known: what each means, or that it means nothing. */
function Strange(props: PreviewProps) {
  const { table, name } = props;
  const strange = table.header.filter(({ cell, column }) => column === null && cell !== '');
  if (strange.length === 0) return null;
  const free = freeColumns(table);
  return (
    <div className="strange">
      <p>Columns that are not known by their names. What do they mean?</p>
      {strange.map(({ cell, guess }) => (
        <label key={cell} className="strange-column">
          <span className="strange-name">{cell}</span>
          <select
            className="cell boxed"
            aria-label={cell}
            value=""
            onChange={(event) => name(cell, event.target.value)}
          >
            <option value="">nothing: leave it aside</option>
            {free.map((column) => (
              <option key={column} value={column}>
                {column}
                {column === guess ? ' (most likely)' : ''}
              </option>
            ))}
          </select>
        </label>
      ))}
    </div>
  );
}

function Row(
  props: PreviewProps & {
    row: ImportTable['rows'][number];
    placed: TableProblems;
  },
) {
  const { table, row, placed, correct } = props;
  const says = useId();
  const problems = placed.ofLine.get(row.line) ?? [];
  return (
    <tbody>
      <tr>
        <td className="figures quiet">{row.line}</td>
        {numberedCells(table).map(({ cell, column, at }) => {
          const text = row.cells[at] ?? '';
          const bad = problems.some((one) => one.column !== null && one.column === column);
          return (
            <td key={at} className={column === null ? 'aside' : bad ? 'bad' : ''}>
              {bad && column !== null ? (
                <Correction
                  text={text}
                  label={`${cell} in line ${row.line}`}
                  says={says}
                  correct={(to) => correct(row.line, column, to)}
                />
              ) : (
                text
              )}
            </td>
          );
        })}
      </tr>
      {problems.length > 0 && (
        <tr>
          <td colSpan={table.header.length + 1} id={says}>
            {problems.map(({ problem }) => (
              <p
                key={`${problem.code} ${problem.path}`}
                className={problem.level === 'error' ? 'says-wrong' : 'says-note'}
              >
                <span className="figures quiet">{problem.path}</span> {problemWords(problem)}
              </p>
            ))}
          </td>
        </tr>
      )}
    </tbody>
  );
}

/** A bad cell, to be written anew; it is read again when it is left. */
function Correction(props: {
  text: string;
  label: string;
  says: string;
  correct: (text: string) => void;
}) {
  const [typed, setTyped] = useState(props.text);
  const done = () => {
    if (typed !== props.text) props.correct(typed);
  };
  return (
    <input
      className="cell boxed"
      aria-label={props.label}
      aria-invalid
      aria-describedby={props.says}
      value={typed}
      size={Math.max(6, Math.min(24, typed.length + 1))}
      onChange={(event) => setTyped(event.target.value)}
      onBlur={done}
      onKeyDown={(event) => {
        if (event.key === 'Enter') done();
      }}
    />
  );
}
