// The draft after news: only what differs, why, and the cost before and after; then adopt it or keep the old plan.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { Plan } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { money, moneyDifference } from '../../parts/money.ts';
import { count } from '../../parts/words.ts';
import { adoptDraft, type Draft, dismissDraft, draftQuery } from '../../queries/draft.ts';
import { runQuery, startRun } from '../../queries/runs.ts';
import { hashOf } from '../../router.ts';
import { HoldChange } from './hold-change.tsx';

export function DraftNotice() {
  const cache = useQueryClient();
  const draft = useQuery(draftQuery).data?.draft ?? null;
  const running = useQuery(runQuery).data?.run?.state === 'running';
  const adopt = useMutation(adoptDraft(cache));
  const dismiss = useMutation(dismissDraft(cache));
  const again = useMutation(startRun(cache));
  if (draft === null) return <p role="status" className="unseen" />;
  const error = adopt.error ?? dismiss.error ?? again.error;
  const busy = adopt.isPending || dismiss.isPending || running;
  return (
    <section className="draft" aria-labelledby="draft">
      <p role="status" className="unseen">
        A changed plan is ready to be looked at.
      </p>
      <h2 id="draft">What would change</h2>
      <p className="quiet">{summaryWords(draft)}</p>
      <ChangeList draft={draft} beside={(change) => <HoldChange change={change} busy={busy} />} />
      <SmallerChanges draft={draft} />
      <div className="draft-costs">
        <CostTable plan={draft.plan} draft={draft} />
        {draft.stale && <p className="red">{draft.says}</p>}
        {error !== null && <ErrorNotice error={error} />}
      </div>
      <div className="draft-acts">
        {draft.stale ? (
          <Button className="button first" isDisabled={busy} onPress={() => again.mutate()}>
            Plan again
          </Button>
        ) : (
          <Button className="button first" isDisabled={busy} onPress={() => adopt.mutate(draft.id)}>
            Adopt
          </Button>
        )}
        <Button className="button" isDisabled={busy} onPress={() => dismiss.mutate(draft.id)}>
          Keep the old plan
        </Button>
      </div>
    </section>
  );
}

/** How much would change, in one line. */
export function summaryWords(draft: Pick<Draft, 'plan' | 'changes'>): string {
  const { changes, tasksAdded, tasksGone, tasksMoved } = draft.changes;
  const brews = new Set(changes.map((change) => change.brew)).size;
  const tasks = [
    tasksMoved.length > 0 ? `${count(tasksMoved.length, 'task')} on another day` : '',
    tasksAdded.length > 0 ? `${tasksAdded.length} new` : '',
    tasksGone.length > 0 ? `${tasksGone.length} no longer needed` : '',
  ].filter((word) => word !== '');
  const first =
    brews === 0 ? 'No brew changes' : `${count(brews, 'brew')} of ${draft.plan.brews.length}`;
  const smaller =
    draft.changes.smaller.length > 0
      ? 'Apart from amounts by a few per cent, named below, nothing else differs.'
      : 'Nothing else differs.';
  return `${[first, ...tasks].join('; ')}. ${smaller}`;
}

/** Amounts that differ by so little that nobody is asked about them: not nothing, so they are named. */
export function SmallerChanges(props: { draft: Pick<Draft, 'changes'> }) {
  const { smaller } = props.draft.changes;
  if (smaller.length === 0) return null;
  return (
    <details className="smaller">
      <summary>{count(smaller.length, 'amount')} differ by 5 % or less</summary>
      <ul>
        {smaller.map(({ brew, before, after }) => (
          <li key={brew}>
            <a href={hashOf({ page: 'pitch', brew })}>{brew}</a>: {after} instead of {before}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** All that changes for one brew stands under its day, each change with its reason. */
export function ChangeList(props: {
  draft: Pick<Draft, 'changes'>;
  /** What may be done about one change. */
  beside?: (change: Draft['changes']['changes'][number]) => ReactNode;
}) {
  const { changes } = props.draft.changes;
  const brews = [...new Set(changes.map((change) => change.brew))];
  return (
    <ul className="changes">
      {brews.map((brew) => {
        const own = changes.filter((change) => change.brew === brew);
        const day = own.map((change) => shortDay(change.day))[0];
        return (
          <li key={brew}>
            <span className="change-day figures">{day}</span>
            <ul>
              {own.map((change) => (
                <li key={change.kind}>
                  <Says brew={brew} says={change.says} />{' '}
                  <span className="quiet">{change.reason}</span> {props.beside?.(change)}
                </li>
              ))}
            </ul>
          </li>
        );
      })}
    </ul>
  );
}

/** A sentence of the planner, its brew linked where the sentence begins with it. */
function Says(props: { brew: string; says: string }) {
  const { brew, says } = props;
  const link = <a href={hashOf({ page: 'pitch', brew })}>{brew}</a>;
  if (!says.startsWith(brew)) {
    return (
      <>
        {link}: {says}
      </>
    );
  }
  return (
    <>
      {link}
      {says.slice(brew.length)}
    </>
  );
}

const PARTS = [
  { key: 'cashMinor', says: 'Cash' },
  { key: 'workMinor', says: 'Work' },
  { key: 'riskMinor', says: 'Risk, a guess' },
] as const;

export function CostTable(props: { plan: Plan; draft: Pick<Draft, 'changes'> }) {
  const { before, after } = props.draft.changes;
  const say = (minor: number) => money(minor, props.plan);
  return (
    <table className="sums">
      <caption className="quiet">Before: with what happened, and nothing else moved.</caption>
      <thead>
        <tr>
          <th scope="col">Cost</th>
          <th scope="col" className="amount">
            Before
          </th>
          <th scope="col" className="amount">
            Draft
          </th>
          <th scope="col" className="amount">
            That is
          </th>
        </tr>
      </thead>
      <tbody>
        {PARTS.map(({ key, says }) => (
          <tr key={key}>
            <th scope="row">{says}</th>
            <td className="amount">{say(before[key])}</td>
            <td className="amount">{say(after[key])}</td>
            <td className="amount">{moneyDifference(after[key] - before[key], props.plan)}</td>
          </tr>
        ))}
        <OtherRow says="Rules broken" before={before.hard} after={after.hard} />
        <OtherRow says="Brews left out" before={before.leftOut} after={after.leftOut} />
        <OtherRow says="Days late" before={before.lateDays} after={after.lateDays} />
      </tbody>
    </table>
  );
}

function OtherRow(props: { says: string; before: number; after: number }) {
  const { says, before, after } = props;
  if (before === 0 && after === 0) return null;
  const differs = after - before;
  return (
    <tr>
      <th scope="row">{says}</th>
      <td className="amount">{before}</td>
      <td className="amount">{after}</td>
      <td className="amount">
        {differs === 0 ? 'the same' : `${Math.abs(differs)} ${differs > 0 ? 'more' : 'fewer'}`}
      </td>
    </tr>
  );
}
