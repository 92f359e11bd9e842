// After a slip in a real Chromium: the draft is adopted, the slip taken back, and the plan before put back.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DraftAnswer, PlanAnswer } from '../../api/routes/shapes.ts';
import type { Plan, RecordEntry } from '../../planner/index.ts';
import { LAPTOP, openBrowser, openPage } from './a-page.ts';
import { type RealServer, startRealServer } from './real-server.mjs';

let server: RealServer;
let browser: Browser;

beforeAll(async () => {
  [server, browser] = await Promise.all([startRealServer('2027-01-02'), openBrowser()]);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

async function planNow(): Promise<Plan> {
  const { plan } = await server.read<PlanAnswer>('/api/plan');
  if (plan === null) throw new Error('no plan is in force');
  return plan;
}

async function draftNow() {
  const { draft } = await server.read<DraftAnswer>('/api/draft');
  if (draft === null) throw new Error('there is no draft');
  return draft;
}

/** Until no run is under way: the draft is then that of the newest news. */
async function rest(): Promise<void> {
  for (;;) {
    const { run } = await server.read<{ run: { state: string } | null }>('/api/runs/current');
    if (run === null || run.state !== 'running') return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

/** The brews of one plan that stand on another day in another. */
const moved = (plan: Plan, other: Plan): string[] =>
  plan.brews
    .filter(({ brew, day }) => other.brews.some((one) => one.brew === brew && one.day !== day))
    .map(({ brew }) => brew);

async function tell(news: object): Promise<void> {
  const answer = await fetch(`${server.base}/api/news`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(news),
  });
  if (!answer.ok) throw new Error(await answer.text());
  await rest();
}

/** Everything told so far is taken back, the newest first. */
async function takeAllBack(): Promise<void> {
  const { entries } = await server.read<{ entries: { entry: RecordEntry }[] }>('/api/record');
  const undone = entries.flatMap(({ entry }) =>
    entry.news.kind === 'undone' ? [entry.no, entry.news.entry] : [],
  );
  for (const { entry } of entries.toReversed()) {
    if (!undone.includes(entry.no)) await tell({ kind: 'undone', entry: entry.no });
  }
}

/** The brew whose yeast most others are pitched from slips four weeks: they have to do otherwise. */
async function slipTheMother(plan: Plan): Promise<void> {
  const fed = (brew: string) =>
    plan.brews.filter(({ source }) => source.kind === 'harvest' && source.brew === brew).length;
  const mother = plan.brews.toSorted((a, b) => fed(b.brew) - fed(a.brew))[0];
  if (mother === undefined) throw new Error('nothing is planned');
  const to = new Date(Date.parse(mother.day) + 28 * 86_400_000).toISOString().slice(0, 10);
  await tell({ kind: 'slipped', brew: mother.brew, to });
}

describe('a slip that moves more than itself', () => {
  it('puts the plan before back as the draft, once the slip is taken back', async () => {
    const { page, complaints, close } = await openPage(browser, LAPTOP);
    const first = await planNow();
    await slipTheMother(first);
    await page.goto(`${server.base}/#/tasks`);
    await page.getByRole('button', { name: 'Adopt' }).click();
    await page.locator('#draft').waitFor({ state: 'detached' });
    const adopted = await planNow();
    await takeAllBack();
    await page.goto(`${server.base}/#/tasks`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await page.getByRole('button', { name: 'Earlier plans' }).click();
    await page
      .getByRole('button', { name: /^Put it back: the plan of/ })
      .first()
      .click();
    await page.locator('#draft').waitFor({ timeout: 60_000 });
    await rest();
    // in force is what was adopted, until the draft is adopted too
    expect((await planNow()).brews).toEqual(adopted.brews);
    const back = await draftNow();
    expect(moved(first, back.plan)).toEqual([]);
    expect(moved(first, adopted)).not.toEqual([]);
    await page.getByRole('button', { name: 'Adopt' }).click();
    await page.locator('#draft').waitFor({ state: 'detached' });
    expect((await planNow()).brews.map(({ day }) => day)).toEqual(
      back.plan.brews.map(({ day }) => day),
    );
    expect(complaints).toEqual([]);
    await close();
  }, 180_000);
});
