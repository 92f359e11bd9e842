// Measures how soon the first page can be used, on a processor four times slower than this one.
import type { Browser } from 'playwright-core';
import { openBrowser } from '../browser/a-page.ts';
import { startRealServer } from '../browser/real-server.mjs';
import type { Row } from './measure.ts';
import { PAGE_TODAY } from './page-season.ts';

const SLOWDOWN = 4;
const LOADS = 7;
/** So long after its content the page is watched for work that would keep it from answering, ms. */
const WATCHED_MS = 1500;

/** Notes when a mark of the page is there and drawn, and the end of every task that keeps it from answering for over 50 ms. */
const WATCH = (mark: string) => `
  window.usable = { there: 0, busyUntil: 0 };
  new PerformanceObserver((list) => {
    for (const task of list.getEntries()) usable.busyUntil = task.startTime + task.duration;
  }).observe({ type: 'longtask', buffered: true });
  const look = () => {
    if (document.querySelector(${JSON.stringify(mark)}) === null) requestAnimationFrame(look);
    else requestAnimationFrame(() => setTimeout(() => { usable.there = performance.now(); }));
  };
  requestAnimationFrame(look);
`;

/** Ms from the request for the page, with nothing kept from before, until it shows its content and answers at once. */
async function usableAfter(browser: Browser, base: string, start: Start): Promise<number> {
  const context = await browser.newContext({ viewport: start.viewport });
  const page = await context.newPage();
  const slow = await context.newCDPSession(page);
  await slow.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  await page.addInitScript(WATCH(start.mark));
  await page.goto(base);
  await page.locator(start.mark).first().waitFor();
  await page.waitForTimeout(WATCHED_MS);
  const usable = await page.evaluate<{ there: number; busyUntil: number }>('usable');
  await context.close();
  return Math.max(usable.there, usable.busyUntil);
}

type Start = { what: string; mark: string; viewport: { width: number; height: number } };

const STARTS: readonly Start[] = [
  {
    what: 'first page on a laptop, the season: usable after',
    mark: 'a[data-brew]',
    viewport: { width: 1440, height: 900 },
  },
  {
    what: 'first page on a phone, the tasks: usable after',
    mark: '.task',
    viewport: { width: 390, height: 844 },
  },
];

/** Seconds until the demo house's first page can be used; the middle of some loads. */
export async function startFigures(): Promise<Row[]> {
  const server = await startRealServer(PAGE_TODAY);
  const browser = await openBrowser();
  const rows: Row[] = [];
  try {
    for (const start of STARTS) {
      const all: number[] = [];
      for (let n = 0; n < LOADS; n += 1) all.push(await usableAfter(browser, server.base, start));
      const sorted = all.toSorted((a, b) => a - b);
      rows.push({
        what: start.what,
        value: (sorted[Math.floor(LOADS / 2)] ?? 0) / 1000,
        unit: 's',
        target: 1.5,
        better: 'less',
        note: `processor slowed ${SLOWDOWN} times, nothing cached, no task over 50 ms after it; middle of ${LOADS}, worst ${((sorted.at(-1) ?? 0) / 1000).toFixed(2)} s`,
      });
    }
  } finally {
    await browser.close();
    await server.stop();
  }
  return rows;
}
