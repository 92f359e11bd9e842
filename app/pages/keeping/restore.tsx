// Putting a backup back: first what it holds beside what is there, then the question whether to.
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Button, Checkbox } from 'react-aria-components';
import { ErrorNotice } from '../../parts/failed.tsx';
import {
  type HouseSummary,
  putBack,
  type RestoreAnswer,
  type Source,
} from '../../queries/backups.ts';

const moment = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
const when = (iso: string | null) => (iso === null ? 'none' : moment.format(new Date(iso)));

const ROWS: readonly (readonly [string, (house: HouseSummary) => string])[] = [
  ['House', ({ name }) => name],
  ['Last saved', ({ savedAt }) => when(savedAt)],
  ['Brews', ({ brews }) => String(brews)],
  ['Tanks', ({ tanks }) => String(tanks)],
  ['Yeasts', ({ yeasts }) => String(yeasts)],
  ['Jars', ({ jars }) => String(jars)],
  ['News told', ({ news }) => String(news)],
  ['Last news', ({ lastNewsAt }) => when(lastNewsAt)],
  ['Plan made', ({ planMadeAt }) => when(planMadeAt)],
  ['Calendar entries', ({ tasks }) => String(tasks)],
];

/** @param props.seen what the server said about the copy or file @param props.close puts the look away */
export function Restore(props: {
  from: string;
  source: Source;
  seen: RestoreAnswer;
  close: () => void;
}) {
  const { from, source, seen, close } = props;
  const put = useMutation(putBack(useQueryClient()));
  const [addresses, setAddresses] = useState('copy' in source);
  const { holds, now } = seen;
  if (put.isSuccess) {
    return (
      <section className="restore" aria-label="Put back">
        <p role="status">
          {from} is in place now.
          {put.data.kept !== null && ` What was there before is kept as ${put.data.kept}.`}
        </p>
        <Button className="button" onPress={close}>
          Good
        </Button>
      </section>
    );
  }
  return (
    <section className="restore" aria-labelledby="restore-title">
      <h2 id="restore-title">What {from} holds</h2>
      {holds === null ? (
        <div className="notice" role="alert">
          <p>It cannot be put back.</p>
          <ul>
            {seen.problems.slice(0, 10).map((problem) => (
              <li key={`${problem.path} ${problem.message}`}>
                {problem.message} <span className="quiet">{problem.remedy}</span>
              </li>
            ))}
          </ul>
        </div>
      ) : (
        <table className="restore-table">
          <thead>
            <tr>
              <th scope="col">
                <span className="unseen">What</span>
              </th>
              <th scope="col">Backup</th>
              <th scope="col">Now</th>
            </tr>
          </thead>
          <tbody>
            {ROWS.map(([what, of]) => (
              <tr key={what}>
                <th scope="row">{what}</th>
                <td>{of(holds)}</td>
                <td>{now === null ? '–' : of(now)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {holds !== null && holds.addresses > 0 && (
        <Checkbox className="checkbox" isSelected={addresses} onChange={setAddresses}>
          <span className="box" aria-hidden="true" />
          It is mine: let its calendar addresses open this calendar
        </Checkbox>
      )}
      <p className="restore-acts">
        {holds !== null && (
          <Button
            className="button first"
            isDisabled={put.isPending}
            onPress={() => put.mutate({ source, revision: seen.revision, addresses })}
          >
            Put it in place of what is there now
          </Button>
        )}
        <Button className="button" onPress={close}>
          Leave all as it is
        </Button>
      </p>
      {put.isError && <ErrorNotice error={put.error} />}
    </section>
  );
}
