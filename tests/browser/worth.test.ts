// The savings page in a real Chromium against the real server: figures, both surveys, stop, keyboard, phone, both schemes.
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { PlanAnswer } from '../../api/routes/shapes.ts';
import { axeFindings, LAPTOP, openBrowser, openPage, PHONE } from './a-page.ts';
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

it('weighs the plan, tries it on a thousand seasons, and stops asking for limits when told', async () => {
  const { page, complaints, close } = await openPage(browser, LAPTOP);
  await page.goto(`${server.base}/#/worth`);
  await page.getByRole('heading', { level: 1, name: 'What it saves' }).waitFor();
  const { plan } = await server.read<PlanAnswer>('/api/plan');
  const strokes = page.getByRole('group', { name: /^Share alive of/ }).getByRole('link');
  expect(await strokes.count()).toBe(plan?.brews.length);

  // by keyboard
  await page.getByRole('button', { name: 'Try it on a thousand seasons' }).press('Enter');
  await page.getByText('Tried on 1,000 seasons').waitFor({ timeout: 60_000 });
  const rows = page.getByRole('table', { name: 'The least steady first.' }).getByRole('row');
  expect(await rows.count()).toBe((plan?.brews.length ?? 0) + 1);

  await page.getByRole('button', { name: 'Try each limit' }).press('Enter');
  await page.getByRole('progressbar', { name: 'Try each limit' }).waitFor();
  await page.getByRole('button', { name: 'Stop with what there is' }).press('Enter');
  await page.getByText('It was stopped: not every limit was tried.').waitFor({ timeout: 60_000 });

  // what was answered is there after a look at another page
  await page.getByRole('link', { name: 'Tasks', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'Tasks' }).waitFor();
  await page.getByRole('link', { name: 'Savings' }).click();
  await page.getByText('Tried on 1,000 seasons').waitFor();
  expect(complaints).toEqual([]);
  await close();
}, 180_000);

it.each(['light', 'dark'] as const)(
  'serves everybody, %s, and fits a phone',
  async (scheme) => {
    const { page, complaints, close } = await openPage(browser, { ...PHONE, scheme });
    await page.goto(`${server.base}/#/worth`);
    await page.getByRole('button', { name: 'Try it on a thousand seasons' }).click();
    await page.getByText('Tried on 1,000 seasons').waitFor({ timeout: 60_000 });
    expect(await axeFindings(page)).toEqual([]);
    const overhang = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overhang).toBe(0);
    expect(complaints).toEqual([]);
    await close();
  },
  120_000,
);
