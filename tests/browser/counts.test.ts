// A house that counts its yeast: the pitch page says from how many counts a number comes, and what it was before.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { DraftAnswer, HouseAnswer, PlanAnswer, Run } from '../../api/routes/shapes.ts';
import type { PlannedBrew, YeastCount } from '../../planner/index.ts';
import { axeFindings, LAPTOP, openBrowser, openPage } from './a-page.ts';
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

async function send(method: string, path: string, body: unknown, revision = 0): Promise<unknown> {
  const answer = await fetch(`${server.base}${path}`, {
    method,
    headers: { 'Content-Type': 'application/json', 'If-Match': String(revision) },
    body: JSON.stringify(body),
  });
  if (!answer.ok) throw new Error(`${method} ${path}: ${answer.status} ${await answer.text()}`);
  return answer.json();
}

async function ended(): Promise<void> {
  for (;;) {
    const { run } = await server.read<{ run: Run | null }>('/api/runs/current');
    if (run !== null && run.state !== 'running') return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
}

async function pitchOf(brew: PlannedBrew | undefined, says: RegExp): Promise<void> {
  if (!brew) throw new Error('no brew is pitched with slurry');
  const { page, complaints, close } = await openPage(browser, LAPTOP);
  await page.goto(`${server.base}/#/brews/${encodeURIComponent(brew.brew)}`);
  await page.getByText(says).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  expect(complaints).toEqual([]);
  await close();
}

const fedBy = (plan: PlanAnswer['plan'], yeast?: string) =>
  plan?.brews.find(
    (brew) => brew.source.kind === 'harvest' && (yeast === undefined || brew.yeast === yeast),
  );

it('goes from the default to five counts', async () => {
  const before = fedBy((await server.read<PlanAnswer>('/api/plan')).plan);
  await pitchOf(before, /No counts of this strain yet: the default\./);
  const { house, revision } = await server.read<HouseAnswer>('/api/house');
  if (!house || !before) throw new Error('no house');
  const counts: YeastCount[] = [35, 60, 85, 100, 115].map((stained, i) => ({
    yeast: before.yeast,
    countedOn: `2026-11-${String(6 * (i + 1)).padStart(2, '0')}`,
    harvestedOn: '2026-11-01',
    stained,
    total: 200,
    millionPerMl: null,
    sourceAbv: null,
    generation: 1,
  }));
  await send('PUT', '/api/house', { ...house, counts }, revision);
  await send('POST', '/api/runs', { steps: 2000 });
  await ended();
  const { draft } = await server.read<DraftAnswer>('/api/draft');
  await send('POST', '/api/draft/adopt', { draft: draft?.id });
  const { plan } = await server.read<PlanAnswer>('/api/plan');
  const after = fedBy(plan, before.yeast);
  expect(after?.viability.likely).toBeLessThan(after?.beforeCounts?.likely ?? 0);
  await pitchOf(after, /From 5 counts of this strain\. Before them: \d+/);
});
