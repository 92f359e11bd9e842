// What a start does with the database before the first request: an empty one gets the demo house and a feed.
import type { Parts } from './app.ts';
import { demoHouse } from './demo/index.ts';
import { isShut } from './doors/guard.ts';
import { PLAIN_LOOK } from './routes/feed-shapes.ts';
import { feedsAnswer, makeFeed } from './routes/feeds.ts';
import { planAnswer } from './routes/plan.ts';
import { startPlanning } from './runs/planning.ts';
import { readState } from './runs/state.ts';
import { readHouse, saveHouse } from './store/house.ts';
import { planLines } from './welcome.ts';

/** Puts the demo house and one feed of all tasks into an empty database. @returns whether it did */
export async function loadDemo(parts: Parts): Promise<boolean> {
  return parts.store.write(async (tx) => {
    if ((await readHouse(tx)) !== null) return false;
    const now = parts.store.now();
    // The demo house is in Dublin; which day it is there moves its season by a week at most.
    const house = demoHouse(parts.today('Europe/Dublin'));
    await saveHouse(tx, { house, demo: true, at: now, startOver: false });
    await makeFeed(parts, tx, now, { kinds: null, alarm: null, look: PLAIN_LOOK });
    return true;
  });
}

/** Plans where there is a house and no plan in force; an earlier start may have been broken off before it had one. */
export async function planIfNone(parts: Parts): Promise<string | null> {
  const state = await readState(parts.store.db);
  if (state === null || state.inForce !== null) return null;
  const today = parts.today(state.stored.house.timeZone);
  const run = startPlanning(parts, state, {
    today,
    seed: 1,
    steps: parts.steps,
    anew: false,
    replace: false,
  });
  const ended = run === null ? null : await parts.runs.ended(run.id);
  return ended?.error?.message ?? null;
}

/** The lines that the terminal shows once everything stands. */
export async function openingLines(parts: Parts): Promise<string[]> {
  const { plan, tasks } = await planAnswer(parts);
  const { feeds } = await feedsAnswer(parts, parts.store.db);
  const feed = feeds.find(({ address }) => address !== null);
  return [
    ...(plan === null ? ['There is no plan yet.'] : planLines(plan, tasks.next)),
    '',
    `Page:      ${parts.base}/`,
    // With a password there are secrets, and what a terminal shows may be kept by whoever started it.
    `Calendar:  ${isShut(parts) ? 'sign in, and the page shows its address' : (feed?.address ?? 'none yet; the page makes one')}`,
    '',
    'Ctrl-C stops it.',
  ];
}
