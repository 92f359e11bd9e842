// The season's picture under the hand, against the real server: zoom and pan, a beer carried elsewhere, a decision on a pitch.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DraftAnswer, PlanAnswer, TrialAnswer } from '../../api/app.ts';
import type { House, Plan, PlannedBrew } from '../../planner/index.ts';
import { axeFindings, LAPTOP, type Look, openBrowser, openPage, PHONE } from './a-page.ts';
import { type RealServer, startRealServer } from './real-server.mjs';

const TODAY = '2027-01-02';
let server: RealServer;
let browser: Browser;

beforeAll(async () => {
  [server, browser] = await Promise.all([startRealServer(TODAY), openBrowser()]);
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

async function planInForce(): Promise<Plan> {
  const { plan } = await server.read<PlanAnswer>('/api/plan');
  if (plan === null) throw new Error('there is no plan');
  return plan;
}

async function tried(move: { brew: string; day: string; tank: string }) {
  const answer = await fetch(`${server.base}/api/trial`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json', Origin: server.base },
    body: JSON.stringify(move),
  });
  return ((await answer.json()) as TrialAnswer).trial;
}

/** Opens a page, does the work, and insists that the browser had nothing to complain of. */
async function onPage(look: Look, hash: string, work: (page: Page) => Promise<void>) {
  const { page, complaints, close } = await openPage(browser, look);
  await page.goto(`${server.base}/${hash}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await work(page);
  expect(complaints).toEqual([]);
  await close();
}

/** Waits for the draft, checks that it holds what was decided, and keeps the old plan. */
async function draftThat(page: Page, holds: (brews: readonly PlannedBrew[]) => void) {
  await page.getByRole('heading', { name: 'What would change' }).waitFor({ timeout: 90_000 });
  const { draft } = await server.read<DraftAnswer>('/api/draft');
  if (draft === null) throw new Error('there is no draft');
  holds(draft.plan.brews);
}

const widthOf = (page: Page) =>
  page.locator('.weave > .links').evaluate((drawing) => Number(drawing.getAttribute('width')));
const leftOf = (page: Page) =>
  page.locator('.scroller').evaluate((scroller) => scroller.scrollLeft);

/** A brew that is still a choice and comes out of a harvest, and another tank than its own. */
async function someMove(): Promise<{ brew: PlannedBrew; tank: string; house: House }> {
  const plan = await planInForce();
  const { house } = await server.read<{ house: House }>('/api/house');
  const brew = plan.brews.find((one) => !one.done && one.source.kind === 'harvest');
  const tank = house.tanks.find((one) => one.tank !== brew?.tank)?.tank;
  if (!brew || !tank) throw new Error('nothing can be moved');
  return { brew, tank, house };
}

describe('the picture', () => {
  it('gives the cold store a lane of its own, in which a jar thins and pales with its share alive', async () => {
    const plan = await planInForce();
    await onPage(LAPTOP, '#/', async (page) => {
      const store = await page.locator('.weave .store').boundingBox();
      const oldest = plan.brews
        .filter((brew) => brew.source.kind === 'harvest' && brew.source.ageDays >= 7)
        .toSorted((a, b) => a.viability.likely - b.viability.likely)[0];
      if (!store || !oldest) throw new Error('nothing ages in the store');
      const thread = page.locator(`g[data-strand$="→${oldest.brew}"]`);
      const inks = await thread
        .locator('stop')
        .evaluateAll((stops) => stops.map((stop) => Number(stop.getAttribute('stop-opacity'))));
      expect(inks[1]).toBeLessThan(inks[0] ?? 0);
      const ribbon = await thread.locator('path[fill^="url"]').boundingBox();
      expect(ribbon?.y).toBeGreaterThanOrEqual(store.y);
      expect((ribbon?.y ?? 0) + (ribbon?.height ?? 0)).toBeLessThanOrEqual(store.y + store.height);
    });
  });

  it('zooms and pans by the keys, and by the wheel about the pointer', async () => {
    await onPage(LAPTOP, '#/', async (page) => {
      const whole = await widthOf(page);
      await page.locator('a[data-brew][tabindex="0"]').focus();
      for (const _ of [1, 2, 3]) await page.keyboard.press('+');
      expect((await widthOf(page)) / whole).toBeCloseTo(1.5 ** 3, 1);
      const before = await leftOf(page);
      await page.keyboard.press('Shift+ArrowRight');
      await expect.poll(() => leftOf(page)).toBeGreaterThan(before + 100);
      await page.keyboard.press('Shift+ArrowLeft');
      await expect.poll(() => leftOf(page)).toBeLessThan(before + 100);
      await page.keyboard.press('0');
      await expect.poll(() => widthOf(page)).toBe(whole);

      const box = await page.locator('.scroller').boundingBox();
      if (!box) throw new Error('no picture');
      await page.mouse.move(box.x + box.width * 0.7, box.y + 40);
      const under = (x: number, width: number) => (x + box.width * 0.7) / width;
      const share = under(await leftOf(page), whole);
      await page.keyboard.down('Control');
      await page.mouse.wheel(0, -400);
      await page.keyboard.up('Control');
      await expect.poll(() => widthOf(page)).toBeGreaterThan(whole * 1.5);
      // the day under the pointer stays there
      expect(under(await leftOf(page), await widthOf(page))).toBeCloseTo(share, 2);
    });
  });
});

describe('a beer is carried elsewhere', () => {
  it('by the mouse: says the planner’s words, pins on drop, plans anew, and can be taken back', async () => {
    const { brew, tank } = await someMove();
    const told = await tried({ brew: brew.brew, day: brew.day, tank });
    await onPage(LAPTOP, '#/', async (page) => {
      const bar = page.locator(`a[data-brew="${brew.brew}"]`);
      await bar.scrollIntoViewIfNeeded();
      const box = await bar.boundingBox();
      const row = await page.locator('.row-names .tank', { hasText: tank }).boundingBox();
      if (!box || !row) throw new Error('nothing to take hold of');
      await page.mouse.move(box.x + 10, box.y + 10);
      await page.mouse.down();
      await page.mouse.move(box.x + 10, row.y + row.height / 2, { steps: 5 });
      const words = page.getByTestId('carrying-line');
      await words.getByText(`in ${tank}`).first().waitFor();
      for (const finding of told.breaks) await words.getByText(finding.says).waitFor();
      for (const line of told.lines.slice(0, 4)) {
        expect(await words.textContent()).toContain(line.says);
      }
      // Escape leaves it where it was, and the press that ends then opens nothing
      await page.keyboard.press('Escape');
      await page.mouse.up();
      expect(new URL(page.url()).hash).toBe('#/');
      expect((await server.read<{ entries: unknown[] }>('/api/record')).entries).toHaveLength(0);

      await page.mouse.move(box.x + 10, box.y + 10);
      await page.mouse.down();
      await page.mouse.move(box.x + 10, row.y + row.height / 2, { steps: 5 });
      await words.getByText(`in ${tank}`).first().waitFor();
      await page.mouse.up();
      await draftThat(page, (brews) => {
        const moved = brews.find((one) => one.brew === brew.brew);
        expect([moved?.tank, moved?.day]).toEqual([tank, brew.day]);
      });
      expect((await planInForce()).brews.find((one) => one.brew === brew.brew)?.tank).toBe(
        brew.tank,
      );
      expect(await axeFindings(page)).toEqual([]);
      await page.getByRole('button', { name: 'Take it back' }).click();
      await page.getByText('Taken back:').waitFor();
      await page.getByRole('heading', { name: 'What would change' }).waitFor({ state: 'detached' });
    });
  });

  it('by the keyboard alone: plan, explain, pin, plan anew', async () => {
    const { brew } = await someMove();
    await onPage(LAPTOP, '#/', async (page) => {
      await page.locator(`a[data-brew="${brew.brew}"]`).focus();
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { level: 1, name: brew.brew }).waitFor();
      await page.getByRole('heading', { name: 'Why this way' }).waitFor();
      await page.goBack();
      await page.locator(`a[data-brew="${brew.brew}"]`).focus();
      await page.keyboard.press('m');
      await page.keyboard.press('ArrowRight');
      const words = page.getByTestId('carrying-line');
      await words.getByText(/breaks/).waitFor();
      expect(await axeFindings(page)).toEqual([]);
      const day = await page.locator('.ghost .when').textContent();
      await page.keyboard.press('Enter');
      await draftThat(page, (brews) => {
        const moved = brews.find((one) => one.brew === brew.brew);
        expect((moved?.day ?? '') > brew.day).toBe(true);
        expect(day).toContain(String(Number(moved?.day.slice(8))));
      });
      // back to the plan in force, with the keys too
      await page.getByRole('button', { name: 'Take it back' }).focus();
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { name: 'What would change' }).waitFor({ state: 'detached' });
    });
  });

  it('by a finger once that is chosen, and not before', async () => {
    await onPage(PHONE, '#/', async (page) => {
      await page
        .locator('.scroller')
        .evaluate((scroller) => scroller.scrollIntoView({ block: 'center' }));
      await (await swipeOverABeer(page))();
      expect(await page.locator('.ghost').count()).toBe(0);
      await page.getByRole('button', { name: 'Move beers' }).click();
      const letGo = await swipeOverABeer(page);
      await page
        .getByTestId('carrying-line')
        .getByText(/ on .* in /)
        .first()
        .waitFor();
      expect(await axeFindings(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await letGo();
    });
  });
});

/** A finger comes down on a beer in sight and goes to the side and down; it is lifted by what is returned. */
async function swipeOverABeer(page: Page): Promise<() => Promise<void>> {
  const box = await page.locator('a.moves').first().boundingBox();
  if (!box) throw new Error('no beer is in sight');
  const finger = await page.context().newCDPSession(page);
  const [x, y] = [box.x + 12, box.y + 12];
  await finger.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
  for (let n = 1; n <= 8; n += 1) {
    const touchPoints = [{ x: x + n * 7, y: y + n * 3 }];
    await finger.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints });
  }
  return async () => {
    await finger.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  };
}

describe('a decision on a pitch', () => {
  it('rules a source out: the draft pitches from another, and the decision can be taken back', async () => {
    const { brew } = await someMove();
    const { source } = brew;
    if (source.kind !== 'harvest') throw new Error('not out of a harvest');
    await onPage(LAPTOP, `#/brews/${encodeURIComponent(brew.brew)}`, async (page) => {
      await page.getByRole('button', { name: /^Rule out slurry from / }).click();
      await draftThat(page, (brews) => {
        const now = brews.find((one) => one.brew === brew.brew)?.source;
        expect(now?.kind === 'harvest' && now.brew === source.brew).toBe(false);
      });
      expect(await axeFindings(page)).toEqual([]);
      await page.getByRole('button', { name: /^Take back: .* is not to get/ }).click();
      await page.getByRole('heading', { name: 'What would change' }).waitFor({ state: 'detached' });
    });
  });

  it('says beside the lists what another tank would break', async () => {
    const { brew, tank } = await someMove();
    const told = await tried({ brew: brew.brew, day: brew.day, tank });
    await onPage(
      { ...LAPTOP, scheme: 'dark' },
      `#/brews/${encodeURIComponent(brew.brew)}`,
      async (page) => {
        await page.getByLabel('Tank', { exact: true }).selectOption(tank);
        await page.getByText(`${brew.brew} on`).first().waitFor();
        for (const { says, remedy } of told.breaks) {
          await page.getByText(says).waitFor();
          expect(await page.locator('.trial').textContent()).toContain(remedy);
        }
        expect(await axeFindings(page)).toEqual([]);
      },
    );
  });
});
