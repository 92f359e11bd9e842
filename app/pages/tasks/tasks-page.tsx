// The tasks, laid out like the days of an almanac; on a phone the first page.
import { useSuspenseQueries } from '@tanstack/react-query';
import { lazy, useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { House, Plan } from '../../../planner/index.ts';
import { bareMonth, dayNumber, longDay, weekdayKey, weekdayName } from '../../parts/days.ts';
import { count } from '../../parts/words.ts';
import { houseQuery } from '../../queries/house.ts';
import { planQuery } from '../../queries/plan.ts';
import { tasksQuery } from '../../queries/tasks.ts';
import { type DayOfTasks, groupTasks } from './groups.ts';
import { LazySlip } from './lazy-slip.tsx';
import { SomethingElse } from './something-else.tsx';
import { TaskItem } from './task-item.tsx';
import { ToldLately } from './told-lately.tsx';

const EarlierPlans = lazy(() => import('./earlier-plans.tsx'));

/** @param props.asked key of the task that was asked for, as calendar entries link to it */
export function TasksPage(props: { asked?: string }) {
  const [tasks, plan, house] = useSuspenseQueries({ queries: [tasksQuery, planQuery, houseQuery] });
  const { asked } = props;
  const found = tasks.data.tasks.find((task) => task.key === asked);
  const [showLater, setShowLater] = useState(found !== undefined);
  useReached(found?.key);
  if (!plan.data.plan || !house.data.house) {
    return <p className="quiet">There is no plan yet, and so nothing to do.</p>;
  }
  const { today } = tasks.data;
  const groups = groupTasks(tasks.data.tasks, today);
  const parts = { today, plan: plan.data.plan, house: house.data.house };
  const later = groups.later.reduce((sum, day) => sum + day.tasks.length, 0);
  return (
    <>
      <h1 className="season-title">Tasks</h1>
      <p className="quiet">
        {longDay(today)}, {house.data.house.name}
      </p>
      {asked !== undefined && found === undefined && (
        <p className="notice">
          That task is not in the plan any more: a re-plan took it out, or it is of an earlier
          season. <a href="#/tasks">All tasks</a>
        </p>
      )}
      {found?.done && found.day < today && <p className="notice">{found.title}: it is done.</p>}
      {groups.overdue.length > 0 && (
        <Group title="Still open from before" days={groups.overdue} parts={parts} />
      )}
      <Group title="Today" days={groups.today} parts={parts} empty="Nothing to do today." />
      <Group
        title="The next seven days"
        days={groups.soon}
        parts={parts}
        empty="Nothing in the next seven days."
      />
      {later > 0 && !showLater && (
        <Button className="button show-later" onPress={() => setShowLater(true)}>
          Show the {count(later, 'task')} after that
        </Button>
      )}
      {showLater && <Group title="Later" days={groups.later} parts={parts} />}
      <ToldLately />
      <p className="tell-other">
        <SomethingElse subject="house" says="Tell other news" />
        <LazySlip says="Earlier plans">{(close) => <EarlierPlans close={close} />}</LazySlip>
      </p>
    </>
  );
}

/** Brings the task that was asked for into view and opens what it says. */
function useReached(key: string | undefined): void {
  useEffect(() => {
    if (key === undefined) return;
    const item = document.querySelector<HTMLElement>(`[data-task="${CSS.escape(key)}"]`);
    if (item === null) return;
    item.querySelector<HTMLButtonElement>('.task-how button[aria-expanded="false"]')?.click();
    item.tabIndex = -1;
    // A frame later: the sheet starts every page at its top.
    const frame = requestAnimationFrame(() => {
      item.focus({ preventScroll: true });
      item.scrollIntoView({ block: 'center' });
    });
    return () => cancelAnimationFrame(frame);
  }, [key]);
}

type Parts = { today: string; plan: Plan; house: House };

function Group(props: { title: string; days: DayOfTasks[]; parts: Parts; empty?: string }) {
  const { title, days, parts } = props;
  return (
    <section className="task-group" aria-label={title}>
      <h2 className="task-group-title">{title}</h2>
      {days.length === 0 && <p className="quiet">{props.empty}</p>}
      {days.map((day) => (
        <DaySheet key={day.day} day={day} parts={parts} />
      ))}
    </section>
  );
}

function DaySheet(props: { day: DayOfTasks; parts: Parts }) {
  const { day, parts } = props;
  const { house } = parts;
  const brewDay =
    house.brewDays.includes(weekdayKey(dayNumber(day.day))) && !house.closed.includes(day.day);
  return (
    <div className="day-sheet">
      <h3 className={brewDay ? 'day-date red' : 'day-date'}>
        <span className="unseen">{longDay(day.day)}</span>
        <span className="day-number" aria-hidden="true">
          {Number(day.day.slice(8))}
        </span>
        <span className="day-name" aria-hidden="true">
          <span className="of-week">{weekdayName(day.day)}</span>
          <span className="of-year">{bareMonth(day.day)}</span>
        </span>
      </h3>
      <ul className="day-tasks">
        {day.tasks.map((task) => (
          <TaskItem key={task.key} task={task} {...parts} />
        ))}
      </ul>
    </div>
  );
}
