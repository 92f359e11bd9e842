// One task: what, how much and when in one line; its caution; and what can be told about it.
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Button, Disclosure, DisclosurePanel } from 'react-aria-components';
import type { House, Plan } from '../../../planner/index.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { tellNews } from '../../queries/news.ts';
import { recordQuery } from '../../queries/record.ts';
import type { TaskRow } from '../../queries/tasks.ts';
import { hashOf } from '../../router.ts';
import { FiguresDialog } from './figures-dialog.tsx';
import { SlipDialog } from './slip-dialog.tsx';
import { SomethingElse } from './something-else.tsx';
import { doneNews, expectedMl, figureOf, isPitch } from './telling.ts';
import { entryOfTask } from './told.ts';

type Props = { task: TaskRow; today: string; plan: Plan; house: House };

export function TaskItem(props: Props) {
  const { task, today, plan, house } = props;
  const tell = useMutation(tellNews(useQueryClient()));
  const facts = plan.brews.some((brew) => brew.brew === task.brew && brew.done);
  // On the day itself the caution stands in full; before it, its first sentence is enough to plan by.
  const ahead = task.day > today && firstSentence(task.caution ?? '') !== task.caution;
  const when = [
    task.time ? `at ${task.time}` : null,
    task.minutes > 0 ? minutesWords(task.minutes) : null,
  ].filter((word) => word !== null);
  const figures = figureOf(task) !== null && expectedMl(task, plan) !== null;
  return (
    <li className={task.done ? 'task is-done' : 'task'} data-task={task.key}>
      <div className="task-head">
        <p className="task-title">
          {task.done && <span className="tick">✓ </span>}
          {task.title}
          {task.done && <span className="unseen"> (done)</span>}
        </p>
        <p className="task-when">{when.join(', ')}</p>
      </div>
      {!task.done && task.caution && (
        <p className="task-caution">
          <strong>Caution.</strong> {ahead ? firstSentence(task.caution) : task.caution}
          {ahead && <span className="quiet"> More under 'How'.</span>}
        </p>
      )}
      <div className="task-acts">
        {task.done ? (
          <UndoDone task={task} />
        ) : (
          <>
            <Button
              className="button first"
              isDisabled={tell.isPending}
              aria-label={`Done: ${task.title}`}
              onPress={() => tell.mutate(doneNews(task, today))}
            >
              Done
            </Button>
            {figures && <FiguresDialog task={task} today={today} plan={plan} tell={tell} />}
            {isPitch(task) && !facts && (
              <SlipDialog task={task} today={today} house={house} tell={tell} />
            )}
          </>
        )}
        <Disclosure className="task-how">
          <Button slot="trigger" className="button plain" aria-label={`How: ${task.title}`}>
            How
          </Button>
          <DisclosurePanel>
            <TaskSteps task={task} />
          </DisclosurePanel>
        </Disclosure>
        {task.brew !== null && (
          <SomethingElse
            subject={{ brew: task.brew }}
            says="Something else happened"
            about={task.title}
          />
        )}
      </div>
      {tell.isError && <ErrorNotice error={tell.error} />}
    </li>
  );
}

/** Minutes as people say them: '45 min', '5 h 30'. */
export function minutesWords(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${String(rest).padStart(2, '0')}`;
}

/** Up to the first full stop, if there is one. */
export function firstSentence(text: string): string {
  return text.match(/^.*?[.!?](?=\s)/)?.[0] ?? text;
}

function UndoDone(props: { task: TaskRow }) {
  const tell = useMutation(tellNews(useQueryClient()));
  const entries = useQuery(recordQuery).data?.entries ?? [];
  const entry = entryOfTask(props.task, entries);
  if (entry === null) return null;
  return (
    <>
      <Button
        className="button"
        isDisabled={tell.isPending}
        aria-label={`Undo: ${props.task.title}`}
        onPress={() => tell.mutate({ kind: 'undone', entry })}
      >
        Undo
      </Button>
      {tell.isError && <ErrorNotice error={tell.error} />}
    </>
  );
}

function TaskSteps(props: { task: TaskRow }) {
  const { task } = props;
  return (
    <div className="task-steps">
      <ol>
        {task.steps.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      {task.caution && (
        <p className="task-caution">
          <strong>Caution.</strong> {task.caution}
        </p>
      )}
      <dl>
        {task.amounts.length > 0 && (
          <>
            <dt className="field-name">How much</dt>
            <dd className="figures">
              {task.amounts
                .map(
                  (amount) =>
                    `${amount.what}: ${amount.value.toLocaleString('en-GB')} ${amount.unit}`,
                )
                .join('; ')}
            </dd>
          </>
        )}
        {task.haveReady.length > 0 && (
          <>
            <dt className="field-name">Have ready</dt>
            <dd>{task.haveReady.join('; ')}</dd>
          </>
        )}
        <dt className="field-name">What good looks like</dt>
        <dd>{task.goodLooksLike}</dd>
        <dt className="field-name">Why</dt>
        <dd>
          {task.why}{' '}
          {task.brew !== null && (
            <a href={hashOf({ page: 'pitch', brew: task.brew })}>More about {task.brew}</a>
          )}
        </dd>
      </dl>
    </div>
  );
}
