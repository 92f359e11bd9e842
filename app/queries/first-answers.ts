// What every page shows, asked for before anything is drawn: drawn once with it, a page is there sooner than drawn waiting and then anew.
import type { QueryClient } from '@tanstack/react-query';
import { routeOf } from '../router.ts';
import { doorsQuery } from './doors.ts';
import { draftQuery } from './draft.ts';
import { houseQuery } from './house.ts';
import { planQuery } from './plan.ts';
import { runQuery } from './runs.ts';
import { tasksQuery } from './tasks.ts';

/** So long the page stays empty for it at most, ms; then it says that it is reading. */
const PATIENCE_MS = 300;

/** Resolves when the answers are there or have kept the reader waiting long enough. Never rejects: a page says itself what it lacks. */
export async function firstAnswers(cache: QueryClient): Promise<void> {
  // The same as index.html asks for ahead; the browser gives those answers to these requests.
  const asked = [
    cache.prefetchQuery(planQuery),
    cache.prefetchQuery(houseQuery),
    cache.prefetchQuery(runQuery),
    cache.prefetchQuery(draftQuery),
    cache.prefetchQuery(doorsQuery),
  ];
  if (routeOf(window.location.hash).page === 'tasks') asked.push(cache.prefetchQuery(tasksQuery));
  await Promise.race([
    Promise.all(asked),
    new Promise((resolve) => setTimeout(resolve, PATIENCE_MS)),
  ]);
}
