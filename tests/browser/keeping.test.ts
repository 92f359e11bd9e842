// Backups and calendar addresses in a real Chromium against the real server: download, look, put back, make, open a task's link.
import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { axeFindings, LAPTOP, type Look, openBrowser, openPage, PHONE } from './a-page.ts';
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

/** Opens a page, does the work, and insists that the browser complained of nothing. */
async function onPage(look: Look, hash: string, work: (page: Page) => Promise<void>) {
  const { page, complaints, close } = await openPage(browser, look);
  await page.goto(`${server.base}/${hash}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await work(page);
  expect(complaints).toEqual([]);
  await close();
}

const houseName = async () =>
  (await server.read<{ house: { name: string } }>('/api/house')).house.name;

async function rename(name: string) {
  const { house, revision } = await server.read<{ house: object; revision: number }>('/api/house');
  const answer = await fetch(`${server.base}/api/house`, {
    method: 'PUT',
    headers: { 'Content-Type': 'application/json', 'If-Match': String(revision) },
    body: JSON.stringify({ ...house, name }),
  });
  expect(answer.status).toBe(200);
}

describe('backups', () => {
  it('a downloaded house is shown beside what is there now, and put back', async () => {
    await onPage(LAPTOP, '#/keeping', async (page) => {
      const before = await houseName();
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('link', { name: 'Download the whole house' }).click(),
      ]);
      expect(download.suggestedFilename()).toMatch(/^barmline-house-2027-01-02\.json$/);
      const file = await download.path();
      expect(JSON.parse(readFileSync(file, 'utf8')).house.name).toBe(before);
      await rename('Renamed meanwhile');
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.getByRole('button', { name: 'Put a downloaded house back …' }).click(),
      ]);
      await chooser.setFiles({
        name: 'my-house.json',
        mimeType: 'application/json',
        buffer: readFileSync(file),
      });
      await page.getByRole('heading', { name: 'What my-house.json holds' }).waitFor();
      const row = page.getByRole('row', { name: /^House/ });
      expect(await row.getByRole('cell').allTextContents()).toEqual([before, 'Renamed meanwhile']);
      expect(await axeFindings(page)).toEqual([]);
      expect(await houseName()).toBe('Renamed meanwhile');
      await page.getByRole('button', { name: 'Put it in place of what is there now' }).click();
      await page.getByText('my-house.json is in place now.').waitFor();
      expect(await houseName()).toBe(before);
    });
  });

  it('a copy is made, looked at and left; a file that is no backup gets a sentence', async () => {
    await onPage(LAPTOP, '#/keeping', async (page) => {
      await page.getByRole('button', { name: 'Make a copy now' }).click();
      await page
        .getByRole('button', { name: /^Look at it, put it back …: barmline-.*\.db$/ })
        .first()
        .click();
      await page.getByRole('button', { name: 'Leave all as it is' }).click();
      const [chooser] = await Promise.all([
        page.waitForEvent('filechooser'),
        page.getByRole('button', { name: 'Put a downloaded house back …' }).click(),
      ]);
      const buffer = Buffer.from('hops');
      await chooser.setFiles({ name: 'notes.json', mimeType: 'application/json', buffer });
      await page.getByText('notes.json is no JSON').waitFor();
    });
  });

  it('fits a phone without a finding', async () => {
    await onPage(PHONE, '#/keeping', async (page) => {
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide).toBeLessThanOrEqual(PHONE.width);
      expect(await axeFindings(page)).toEqual([]);
    });
  });
});

describe('calendar addresses', () => {
  it('are made as they are wanted; without a reachable address there is no code, and the page says why', async () => {
    await onPage(LAPTOP, '#/subscribe', async (page) => {
      await page.getByText('which only this machine can reach').first().waitFor();
      await page.getByText('there is no code for a phone to scan').waitFor();
      expect(await page.getByRole('button', { name: /^Scan it/ }).count()).toBe(0);
      await page.getByRole('button', { name: 'Make another address' }).click();
      await page.getByText('Harvest', { exact: true }).click();
      await page.getByRole('radio', { name: 'as whole days' }).click();
      await page
        .getByRole('radiogroup', { name: 'Volumes and temperatures in this calendar' })
        .getByRole('radio', { name: 'gallons, °F' })
        .click();
      await page.getByRole('radio', { name: 'before each task' }).click();
      await page.getByLabel('Whole days: days before').fill('2');
      await page.getByLabel('Whole days: at').fill('17:30');
      expect(await axeFindings(page)).toEqual([]);
      await page.getByRole('button', { name: 'Make it' }).click();
      await page.getByText('an alarm at 17:30 2 days before').waitFor();
    });
    type Made = { kinds: string[] | null; alarm: object | null; look: object; address: string };
    const { feeds } = await server.read<{ feeds: Made[] }>('/api/feeds');
    const made = feeds.at(-1);
    expect(made).toMatchObject({
      kinds: ['harvest'],
      alarm: { daysBefore: 2, atTime: '17:30' },
      look: { allDay: true, volume: 'us', gravity: 'sg' },
    });
    const text = await (await fetch(made?.address ?? '')).text();
    expect(text).toContain('VALARM');
    expect(text).toMatch(/fl oz/);
  });

  it("an entry's link opens its task, with what to do", async () => {
    const { tasks } = await server.read<{ tasks: { key: string; title: string }[] }>('/api/tasks');
    const task = tasks.at(-1);
    await onPage(LAPTOP, `#/tasks/${encodeURIComponent(task?.key ?? '')}`, async (page) => {
      const item = page.locator(`[data-task="${task?.key}"]`);
      await item.locator('.task-steps li').first().waitFor();
      expect(await item.evaluate((one) => one === document.activeElement)).toBe(true);
    });
    await onPage(LAPTOP, '#/tasks/harvest%3ANobody', async (page) => {
      await page.getByText('That task is not in the plan any more').waitFor();
    });
  });
});
