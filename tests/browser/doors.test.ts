// The doors in a real Chromium: nothing before the password, everything after it, sessions ended; and names that would like to be code.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setPassword } from '../../api/doors/password.ts';
import type { House } from '../../planner/index.ts';
import { HOSTILE_NAMES } from '../builders/hostile.ts';
import { axeFindings, LAPTOP, type Look, openBrowser, openPage, PHONE } from './a-page.ts';
import { type RealServer, startRealServer } from './real-server.mjs';

const PASSWORD = 'four unrelated words';
let server: RealServer;
let browser: Browser;

beforeAll(async () => {
  [server, browser] = await Promise.all([startRealServer('2027-01-02'), openBrowser()]);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

const send = async (method: string, path: string, body: unknown, tag = '') => {
  const answer = await fetch(`${server.base}${path}`, {
    method,
    headers: { 'Content-Type': 'application/json', ...(tag === '' ? {} : { 'If-Match': tag }) },
    body: JSON.stringify(body),
  });
  if (!answer.ok) throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
  return answer.json();
};

/** The demo house with a name of its own for every brew and tank and one for each strain, none of them harmless. */
async function hostileHouse(): Promise<{ house: House; revision: string }> {
  const { house, revision } = await server.read<{ house: House; revision: number }>('/api/house');
  const name = (at: number) => HOSTILE_NAMES[at % HOSTILE_NAMES.length] ?? '';
  const yeasts = new Map(house.yeasts.map(({ yeast }, at) => [yeast, name(at)]));
  const yeastOf = (yeast: string) => yeasts.get(yeast) ?? yeast;
  return {
    house: {
      ...house,
      name: name(0),
      tanks: house.tanks.map((row, at) => ({ ...row, tank: name(at + 2) })),
      yeasts: house.yeasts.map((row) => ({ ...row, yeast: yeastOf(row.yeast) })),
      jars: house.jars.map((row, at) => ({ ...row, jar: name(at), yeast: yeastOf(row.yeast) })),
      counts: house.counts.map((row) => ({ ...row, yeast: yeastOf(row.yeast) })),
      brews: house.brews.map((row, at) => ({
        ...row,
        brew: name(at),
        style: name(at + 1),
        yeasts: row.yeasts.map(yeastOf),
      })),
    },
    revision: String(revision),
  };
}

const PLACES = [
  ...['', 'tasks', 'brews', 'shelf', 'shelf/labels', 'house', 'worth', 'subscribe', 'reckoner'],
  'doors',
];

/** What ran, what sticks out, what the browser complained of. */
async function look(at: Look): Promise<string[]> {
  const { page, complaints, close } = await openPage(browser, at);
  const wrong: string[] = [];
  const places = [
    ...PLACES,
    ...HOSTILE_NAMES.slice(0, 6).map((n) => `brews/${encodeURIComponent(n)}`),
    ...HOSTILE_NAMES.slice(0, 3).map((n) => `shelf/jar/${encodeURIComponent(n)}`),
  ];
  for (const place of places) {
    await page.goto(`${server.base}/#/${place}`);
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    await page.waitForTimeout(300);
    if ((await page.title()) === 'run') wrong.push(`${place}: a name ran`);
    const [scripts, images, wide] = await page.evaluate(() => [
      document.querySelectorAll('body script:not([src])').length,
      document.querySelectorAll('img[src="x"]').length,
      document.documentElement.scrollWidth,
    ]);
    if (scripts || images) wrong.push(`${place}: a name became an element`);
    if ((wide ?? 0) > at.width) wrong.push(`${place}: ${wide} wide instead of ${at.width}`);
  }
  await close();
  return [...wrong, ...complaints];
}

describe('names that would like to be code', () => {
  beforeAll(async () => {
    const { house, revision } = await hostileHouse();
    await send('PUT', '/api/house?startOver=true', house, revision);
    await send('POST', '/api/runs', { steps: 200, replace: true });
    for (let tries = 0; tries < 240; tries += 1) {
      const { plan } = await server.read<{ plan: { house: string } | null }>('/api/plan');
      if (plan?.house === HOSTILE_NAMES[0]) return;
      await new Promise((resolve) => setTimeout(resolve, 250));
    }
    throw new Error('no plan came');
  }, 120_000);

  it('stand on every sheet as text; the layout holds on a laptop', async () => {
    expect(await look(LAPTOP)).toEqual([]);
  });

  it('and on a phone', async () => {
    expect(await look(PHONE)).toEqual([]);
  });
});

describe('a password is set', () => {
  const enter = async (page: Page, password: string) => {
    await page.getByLabel('Password').fill(password);
    await page.getByRole('button', { name: 'Sign in' }).click();
  };

  beforeAll(() => setPassword(server.folder, PASSWORD));

  it('first the password and nothing else, then the page; a session is ended from another', async () => {
    const one = await openPage(browser, LAPTOP);
    await one.page.goto(server.base);
    await one.page.getByRole('heading', { name: 'Sign in' }).waitFor();
    expect(await one.page.getByRole('navigation').count()).toBe(0);
    expect(await one.page.locator('body').textContent()).not.toContain(HOSTILE_NAMES[0]);
    expect(await axeFindings(one.page)).toEqual([]);
    await enter(one.page, 'not the password');
    await one.page.getByText('That is not the password.').waitFor();
    await enter(one.page, PASSWORD);
    await one.page.getByRole('navigation', { name: 'Pages' }).waitFor();

    const two = await openPage(browser, PHONE);
    await two.page.goto(`${server.base}/#/doors`);
    await enter(two.page, PASSWORD);
    await two.page.getByRole('heading', { name: 'Doors' }).waitFor();
    expect(await axeFindings(two.page)).toEqual([]);
    const cookies = await two.page.context().cookies();
    expect(cookies).toMatchObject([{ name: 'barmline', httpOnly: true, sameSite: 'Strict' }]);
    expect(await two.page.evaluate(() => document.cookie)).toBe('');
    await two.page.getByRole('button', { name: /^End it/ }).click();
    await two.page.getByRole('button', { name: /^End it/ }).waitFor({ state: 'detached' });

    // The first browser learns of it with its next question.
    await one.page.getByRole('link', { name: 'Reckoner' }).click();
    await one.page.getByRole('heading', { name: 'Sign in' }).waitFor();

    await two.page.getByRole('button', { name: 'Sign out here' }).click();
    await two.page.getByRole('heading', { name: 'Sign in' }).waitFor();
    await one.close();
    await two.close();
  });
});
