// The sheet around every page: masthead, the planner at work, the page itself, units at the foot.
import { QueryErrorResetBoundary } from '@tanstack/react-query';
import { lazy, Suspense, useEffect } from 'react';
import { PitchPage } from './pages/pitch/pitch-page.tsx';
import { SeasonPage } from './pages/season/season-page.tsx';
import { DraftNotice } from './pages/tasks/draft-notice.tsx';
import { TasksPage } from './pages/tasks/tasks-page.tsx';
import { Connection } from './parts/connection.tsx';
import { DemoNotice } from './parts/demo-notice.tsx';
import { FailedBoundary } from './parts/failed.tsx';
import { DoorsLink } from './parts/gate.tsx';
import { PlanningStrip } from './parts/planning-strip.tsx';
import { UnitsChoice } from './parts/units-choice.tsx';
import { hashOf, type Route, useRoute } from './router.ts';

/** Brought in when it is opened: the season's own page is the lighter for it. */
const ReckonerPage = lazy(() => import('./pages/reckoner/reckoner-page.tsx'));
const BrewsPage = lazy(() => import('./pages/brews/brews-page.tsx'));
const ShelfPage = lazy(() => import('./pages/shelf/shelf-page.tsx'));
const HousePage = lazy(() => import('./pages/house/house-page.tsx'));
const WorthPage = lazy(() => import('./pages/worth/worth-page.tsx'));
const WelcomePage = lazy(() => import('./pages/welcome/welcome-page.tsx'));
const DoorsPage = lazy(() => import('./pages/doors/doors-page.tsx'));
const SubscribePage = lazy(() => import('./pages/subscribe/subscribe-page.tsx'));
const KeepingPage = lazy(() => import('./pages/keeping/keeping-page.tsx'));

const NAV = [
  { route: { page: 'season' }, says: 'Season' },
  { route: { page: 'tasks' }, says: 'Tasks' },
  { route: { page: 'brews' }, says: 'Brews' },
  { route: { page: 'shelf', view: 'all', name: '' }, says: 'Shelf' },
  { route: { page: 'house' }, says: 'House' },
  { route: { page: 'worth' }, says: 'Savings' },
  { route: { page: 'subscribe' }, says: 'Calendar' },
  { route: { page: 'reckoner', question: '' }, says: 'Reckoner' },
] as const;

const TITLES: Record<Route['page'], string> = {
  season: 'Season',
  pitch: 'Pitch',
  tasks: 'Tasks',
  brews: 'Brews',
  shelf: 'Shelf',
  house: 'House',
  worth: 'Savings',
  start: 'Start',
  subscribe: 'Calendar',
  reckoner: 'Reckoner',
  doors: 'Doors',
  keeping: 'Backups',
  lost: 'Not here',
};

function titleOf(route: Route): string {
  if (route.page === 'pitch') return route.brew;
  if (route.page !== 'shelf' || route.view === 'all') return TITLES[route.page];
  return route.view === 'labels' ? 'Labels' : route.name;
}

export function Sheet() {
  const route = useRoute();
  const title = titleOf(route);
  useEffect(() => {
    document.title = `${title} · Barmline`;
    // After the reader moved on, the page starts at its top and a screen reader at its content.
    window.scrollTo(0, 0);
  }, [title]);
  return (
    <>
      <button
        type="button"
        className="skip button"
        onClick={() => document.getElementById('content')?.focus()}
      >
        To the content
      </button>
      <header className="masthead">
        <a className="masthead-name" href="#/">
          Barmline
        </a>
        <nav aria-label="Pages">
          {NAV.map(({ route: to, says }) => (
            <a
              key={says}
              href={hashOf(to)}
              {...(to.page === route.page ? { 'aria-current': 'page' as const } : {})}
            >
              {says}
            </a>
          ))}
        </nav>
      </header>
      <main id="content" tabIndex={-1}>
        <Connection />
        {route.page !== 'start' && <DemoNotice />}
        <PlanningStrip />
        <DraftNotice />
        <QueryErrorResetBoundary>
          {({ reset }) => (
            <FailedBoundary key={title} again={reset}>
              <Suspense fallback={<p className="quiet waiting">Reading the season …</p>}>
                <Page route={route} />
              </Suspense>
            </FailedBoundary>
          )}
        </QueryErrorResetBoundary>
      </main>
      <footer className="sheet-foot">
        <span className="field-name">Units</span>
        <UnitsChoice />
        <DoorsLink />
        <a href={hashOf({ page: 'keeping' })}>Backups</a>
      </footer>
    </>
  );
}

function Page(props: { route: Route }) {
  const { route } = props;
  if (route.page === 'season') return <SeasonPage />;
  if (route.page === 'pitch') return <PitchPage brew={route.brew} />;
  if (route.page === 'tasks') return <TasksPage {...(route.task ? { asked: route.task } : {})} />;
  if (route.page === 'subscribe') return <SubscribePage />;
  if (route.page === 'keeping') return <KeepingPage />;
  if (route.page === 'brews') return <BrewsPage />;
  if (route.page === 'shelf') return <ShelfPage view={route.view} name={route.name} />;
  if (route.page === 'house') return <HousePage />;
  if (route.page === 'worth') return <WorthPage />;
  if (route.page === 'start') return <WelcomePage step={route.step} />;
  if (route.page === 'doors') return <DoorsPage />;
  if (route.page === 'reckoner') return <ReckonerPage question={route.question} />;
  return (
    <>
      <h1 className="season-title">Nothing stands here</h1>
      <p>
        The address ends in {route.hash}, which is no page. <a href="#/">Back to the season</a>
      </p>
    </>
  );
}
