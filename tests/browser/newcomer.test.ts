// A newcomer's way in a real Chromium, on a laptop and on a phone: an empty data folder, a season of one's own, its calendar, its labels.
import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { LAPTOP, openBrowser, openPage, PHONE } from './a-page.ts';
import { startRealServer } from './real-server.mjs';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser?.close());

const cell = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const press = (page: Page, name: string) => page.getByRole('button', { name }).click();
const title = (page: Page, name: string) =>
  page.getByRole('heading', { level: 1, name }).waitFor({ timeout: 60_000 });
const turnTo = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Pages' }).getByRole('link', { name, exact: true }).click();

/** Where BARMLINE_SHOTS names a folder, the steps are photographed into it, to be looked at. */
async function look(page: Page, name: string) {
  const folder = process.env.BARMLINE_SHOTS;
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
}

async function beginOwnSeason(page: Page, size: string) {
  await page.getByRole('link', { name: 'Start my own' }).click();
  await press(page, 'Start empty');
  await title(page, '1. What you brew on');
  await cell(page, 'Name of the house').fill('Back Room');
  await press(page, 'Add a tank');
  await look(page, `${size}-1-house`);
  await page.getByRole('link', { name: 'Next: what you brew' }).click();
  await press(page, 'Add a yeast');
  for (const beer of ['First Light', 'Second Light']) {
    await press(page, 'Add a brew');
    await cell(page, 'Beer of New brew').fill(beer);
    await cell(page, `Beer of ${beer}`).waitFor();
  }
  await look(page, `${size}-2-brews`);
  await page.getByRole('link', { name: 'Next: what is on the shelf' }).click();
  await page.getByText('None is fine').waitFor();
  await look(page, `${size}-3-shelf`);
  await press(page, 'Begin the season');
  await title(page, 'Back Room');
  await page.locator('a[data-brew="Second Light"]').waitFor({ timeout: 60_000 });
  await look(page, `${size}-4-season`);
}

describe.each([
  ['laptop', LAPTOP],
  ['phone', PHONE],
] as const)('a newcomer on a %s', (size, screen) => {
  it('comes from an empty folder to a subscribed calendar and printed labels', async () => {
    const server = await startRealServer('2027-01-02');
    const { page, complaints, close } = await openPage(browser, screen);
    try {
      await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
      await page.goto(server.base);
      await beginOwnSeason(page, size);

      await turnTo(page, 'Calendar');
      await page.getByRole('button', { name: 'Copy' }).first().click();
      await page.getByText('Copied.').waitFor();
      const address = await page.evaluate(() => navigator.clipboard.readText());
      const feed = await (await fetch(address)).text();
      expect(feed).toMatch(/^BEGIN:VCALENDAR/);
      expect(feed.replace(/\r\n /g, '')).toMatch(/SUMMARY:.*First Light/);
      await look(page, `${size}-5-calendar`);

      await turnTo(page, 'Shelf');
      await page.getByRole('link', { name: 'Print labels' }).click();
      await title(page, 'Labels');
      await page.locator('.label').first().waitFor();
      await look(page, `${size}-6-labels`);
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      expect(pdf.match(/\/MediaBox/g)).toHaveLength(1);
      expect(complaints).toEqual([]);
    } finally {
      await close();
      await server.stop();
    }
  }, 180_000);
});
