// The codes for a phone, read off the page by a reader of somebody else's: zbar (https://zbar.sourceforge.net), as Debian packs it.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { setPassword } from '../../api/doors/password.ts';
import { LAPTOP, openBrowser } from './a-page.ts';
import { type RealServer, startRealServer } from './real-server.mjs';

const reader = (() => {
  try {
    return execFileSync('zbarimg', ['--version'], { encoding: 'utf8' }).trim();
  } catch {
    return null;
  }
})();
const unread = reader === null ? ' (skipped: zbarimg is not installed)' : '';

const PASSWORD = 'four unrelated words';
/** A name that leads to this machine in the browser of the test alone (example names: RFC 2606). */
const NAME = 'brewhouse.example';
const pictures = mkdtempSync(join(tmpdir(), 'barmline-codes-'));
let server: RealServer;
let browser: Browser;
let page: Page;
/** A machine that does much else at once takes its time. */
const SLOW = { timeout: 60_000 };

describe.skipIf(reader === null)(`codes read by zbar ${reader ?? ''}${unread}`, () => {
  beforeAll(async () => {
    const first = await startRealServer('2027-01-02');
    await first.stop(true);
    await setPassword(first.folder, PASSWORD);
    server = await startRealServer('2027-01-02', first.folder, (port) => ({
      BARMLINE_BASE: `http://${NAME}:${port}`,
    }));
    browser = await openBrowser([`--host-resolver-rules=MAP ${NAME} 127.0.0.1`]);
    // about 400 dots an inch, less than any office printer prints
    const context = await browser.newContext({ deviceScaleFactor: 4, viewport: LAPTOP });
    page = await context.newPage();
    await page.goto(`http://${NAME}:${server.port}/`);
    await page.getByLabel('Password').fill(PASSWORD);
    await page.getByRole('button', { name: 'Sign in' }).click();
    await page.getByRole('navigation', { name: 'Pages' }).waitFor(SLOW);
  }, 300_000);
  afterAll(async () => {
    await browser?.close();
    await server?.stop();
    rmSync(pictures, { recursive: true, force: true });
  });

  const base = () => `http://${NAME}:${server.port}`;

  /** One session for all: each further one would be a try at the door. */
  async function at(hash: string): Promise<Page> {
    await page.goto(`${base()}/${hash}`);
    await page.reload();
    await page.getByRole('heading', { level: 1 }).first().waitFor(SLOW);
    return page;
  }

  /** What the reader sees in each code of the page, photographed as it stands there. */
  async function readAll(codes: Locator): Promise<string[]> {
    const texts: string[] = [];
    for (const [nth, code] of (await codes.all()).entries()) {
      const file = join(pictures, `${nth}.png`);
      await code.scrollIntoViewIfNeeded();
      await code.screenshot({ path: file });
      texts.push(execFileSync('zbarimg', ['--quiet', '--raw', file], { encoding: 'utf8' }).trim());
    }
    return texts;
  }

  it('of labels lead each to the page of its own jar', async () => {
    await at('#/shelf/labels');
    const labels = page.getByRole('article', { name: /^Label of jar/ });
    await labels.first().waitFor(SLOW);
    const names = await labels.evaluateAll((all) =>
      all.map((one) => one.getAttribute('aria-label')?.replace('Label of jar ', '') ?? ''),
    );
    const texts = await readAll(labels.locator('.scan-code'));
    expect(texts).toHaveLength(names.length);
    for (const [nth, text] of texts.entries()) {
      expect(text.startsWith(`${base()}/`)).toBe(true);
      await page.goto(text);
      await page.getByRole('heading', { level: 1, name: `Jar ${names[nth]}` }).waitFor(SLOW);
    }
  }, 180_000);

  it.each(['light', 'dark'] as const)(
    'of a calendar, %s, hold the very address that the page names',
    async (scheme) => {
      await page.emulateMedia({ colorScheme: scheme });
      await at('#/subscribe');
      const show = page.getByRole('button', { name: /^Scan it/ });
      await show.first().waitFor(SLOW);
      for (const one of await show.all()) await one.click();
      const codes = page.locator('.scan-code');
      await codes.first().waitFor(SLOW);
      const texts = await readAll(codes);
      const named = await page.evaluate(() =>
        [...document.querySelectorAll('input')]
          .map((one) => one.value)
          .concat(document.body.textContent ?? ''),
      );
      for (const text of texts) {
        expect(text).toMatch(new RegExp(`^webcal://${NAME}:\\d+/feed/[\\w-]+\\.ics$`));
        expect(named.join(' ')).toContain(text.replace(/^webcal/, 'http'));
      }
    },
    120_000,
  );
});
