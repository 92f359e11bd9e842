// Measures the page itself in a real Chromium: frames while a season of 250 brews is panned and zoomed, and how soon a drag is answered.
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { readFolder } from '../../api/folder/index.ts';
import { saveHouse } from '../../api/store/house.ts';
import { openStore } from '../../api/store/index.ts';
import { addPlan } from '../../api/store/plans.ts';
import { type House, type Plan, plan } from '../../planner/index.ts';
import { openBrowser } from '../browser/a-page.ts';
import { type RealServer, startRealServer } from '../browser/real-server.mjs';
import type { Row } from './measure.ts';
import { largeHouse, largePlan, PAGE_TODAY } from './page-season.ts';

/** A server on a house whose plan is in force already. */
export async function serverWith(house: House, made: Plan): Promise<RealServer> {
  const folder = mkdtempSync(join(tmpdir(), 'barmline-bench-'));
  const now = () => new Date(`${PAGE_TODAY}T08:00:00Z`);
  const store = await openStore({ url: pathToFileURL(join(folder, 'barmline.db')).href, now });
  await store.write(async (tx) => {
    const saved = await saveHouse(tx, { house, demo: false, at: now(), startOver: false });
    const { season, revision: houseRevision, savedAt: madeAt } = saved;
    const id = crypto.randomUUID();
    const kept = { id, season, madeAt, houseRevision, recordNo: 0, plan: made, changes: null };
    await addPlan(tx, kept, 'in-force');
  });
  store.close();
  return startRealServer(PAGE_TODAY, folder);
}

async function seasonPage(browser: Browser, base: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
  const page = await context.newPage();
  await page.goto(`${base}/#/`);
  await page.locator('a[data-brew]').first().waitFor();
  return page;
}

/** Frames a second, and the share of frames later than 1/50 s, while `each` runs before every frame for some seconds. */
type Frames = { perSecond: number; lateShare: number; latestMs: number };

const SECONDS = 4;

/** Runs a step (source text, of the frame's number) before every frame and counts the frames. */
const framesWhile = (page: Page, step: string): Promise<Frames> =>
  page.evaluate(`new Promise((resolve) => {
    const scroller = document.querySelector('.scroller');
    const times = [];
    const frame = (now) => {
      times.push(now);
      if (now - times[0] >= ${SECONDS * 1000}) {
        const gaps = times.slice(1).map((time, at) => time - times[at]);
        const span = times[times.length - 1] - times[0];
        resolve({
          perSecond: (gaps.length * 1000) / span,
          lateShare: gaps.filter((gap) => gap > 20.5).length / gaps.length,
          latestMs: Math.max(...gaps),
        });
        return;
      }
      (${step})(scroller, times.length);
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  })`);

/** To and fro over the whole picture. */
const PAN = `(scroller, n) => {
  const most = scroller.scrollWidth - scroller.clientWidth;
  const at = (n * 24) % (2 * most);
  scroller.scrollLeft = at < most ? at : 2 * most - at;
}`;

/** In for a second and out for a second, as a hand on the wheel does; every third second it rests, and all is drawn anew. */
const ZOOM = `(scroller, n) => {
  if (n % 60 < 15) return;
  const box = scroller.getBoundingClientRect();
  scroller.dispatchEvent(new WheelEvent('wheel', {
    deltaY: n % 120 < 60 ? -6 : 6, ctrlKey: true, bubbles: true, cancelable: true,
    clientX: box.left + box.width / 2, clientY: box.top + 40,
  }));
}`;

const nothing = '() => {}';

/** Frames while the pointer crosses the picture, beer after beer, about as fast as a hand moves. */
async function framesWhileHovering(page: Page): Promise<Frames> {
  const box = await page.locator('.scroller').boundingBox();
  if (!box) throw new Error('the picture is not there');
  let done = false;
  const counted = framesWhile(page, nothing).finally(() => {
    done = true;
  });
  for (let n = 0; !done; n += 1) {
    const [x, y] = [20 + ((n * 13) % (box.width - 40)), 80 + ((n * 7) % (box.height - 100))];
    await page.mouse.move(box.x + x, box.y + Math.min(y, 880 - box.y));
    await page.waitForTimeout(10);
  }
  return counted;
}

/** Frames a second while 250 brews are panned, zoomed and pointed at. */
export async function pagePanFigures(): Promise<Row[]> {
  const house = await largeHouse();
  const made = largePlan(house);
  const server = await serverWith(house, made);
  const browser = await openBrowser();
  const rows: Row[] = [];
  const add = (what: string, frames: Frames) =>
    rows.push({
      what: `${made.brews.length} brews, ${what}`,
      value: frames.perSecond,
      unit: 'frames/s',
      target: 50,
      better: 'more',
      note: `${Math.round(frames.lateShare * 100)} % of the frames later than 1/50 s, the latest ${Math.round(frames.latestMs)} ms; headless, drawn by the processor`,
    });
  try {
    const page = await seasonPage(browser, server.base);
    for (const view of ['Season', 'Month', 'Week']) {
      await page.getByRole('radio', { name: view }).click();
      await page.waitForTimeout(800);
      const where = `in the ${view.toLowerCase()}'s view`;
      if (view !== 'Season') add(`panned ${where}`, await framesWhile(page, PAN));
      add(`zoomed by the wheel ${where}`, await framesWhile(page, ZOOM));
      await page.getByRole('radio', { name: view }).click();
      await page.waitForTimeout(800);
      await page.locator('.scroller').scrollIntoViewIfNeeded();
      add(`pointed at ${where}`, await framesWhileHovering(page));
    }
  } finally {
    await browser.close();
    await server.stop();
  }
  return rows;
}

const DRAGS = 24;
/** About a day in the month's view. */
const STEP_PX = 36;
const SIGHT_PX = 1380;

/** Ms from the pointer's move to the words that answer it, over a drag across a season of 60 brews. */
export async function dragFigures(): Promise<Row[]> {
  const { house } = await readFolder(new URL('../seasons/quay-seven', import.meta.url).pathname);
  if (!house) throw new Error('quay-seven cannot be read');
  const made = plan({ house, today: PAGE_TODAY, steps: 2000, seed: 1 });
  const server = await serverWith(house, made);
  const browser = await openBrowser();
  try {
    const page = await seasonPage(browser, server.base);
    await page.getByRole('radio', { name: 'Month' }).click();
    await page.waitForTimeout(600);
    const waits = await dragWaits(page);
    const sorted = waits.toSorted((a, b) => a - b);
    const at = (share: number) => sorted[Math.floor((sorted.length - 1) * share)] ?? 0;
    const note = `${sorted.length} days and tanks, from the move to the words; worst ${Math.round(at(1))} ms, middle ${Math.round(at(0.5))} ms`;
    return [
      {
        what: `${made.brews.length} brews, a drag is answered`,
        value: at(0.9),
        unit: 'ms',
        target: 100,
        better: 'less',
        note,
      },
    ];
  } finally {
    await browser.close();
    await server.stop();
  }
}

/** Takes a beer in sight up and carries it on; each wait ends when its own day stands in the words. */
async function dragWaits(page: Page): Promise<number[]> {
  const bar = page.locator('a.moves').filter({ visible: true }).first();
  await bar.scrollIntoViewIfNeeded();
  const box = await bar.boundingBox();
  if (!box) throw new Error('no beer is in sight');
  const [x, y] = [box.x + 12, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  const waits: number[] = [];
  const most = Math.floor((SIGHT_PX - x) / STEP_PX);
  for (let n = 1; n <= DRAGS; n += 1) {
    await page.evaluate(LISTEN);
    // to the right as far as the window goes, and back
    const at = n % (2 * most);
    await page.mouse.move(x + STEP_PX * (at <= most ? at : 2 * most - at), y);
    const wait = await page.evaluate<number | null>('window.answered');
    if (wait !== null) waits.push(wait);
  }
  await page.keyboard.press('Escape');
  await page.mouse.up();
  if (waits.length < DRAGS / 3) throw new Error('the beer hardly moved');
  return waits;
}

/** Promises in the page how long its next move waits for its words; null where it leads to no other day. */
const LISTEN = `void (window.answered = new Promise((resolve, reject) => {
  const dayNow = () => document.querySelector('.ghost .when')?.textContent ?? '';
  const dayBefore = dayNow();
  let began = 0;
  addEventListener('pointermove', (event) => { began ||= event.timeStamp; }, { capture: true, once: true });
  setTimeout(() => reject(new Error('the words did not come')), 5000);
  const look = () => {
    const now = performance.now();
    const day = dayNow();
    const says = document.querySelector('[data-testid=carrying-line]')?.textContent ?? '';
    if (began > 0 && day !== dayBefore && says.includes(day)) resolve(now - began);
    else if (began > 0 && day === dayBefore && now - began > 250) resolve(null);
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}))`;
