// A season in a real Chromium against the real server on an empty data folder: see it, ask why, subscribe, slip, adopt.
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DraftAnswer, PlanAnswer, Run, TaskRow } from '../../api/routes/shapes.ts';
import type { Plan } from '../../planner/index.ts';
import { axeFindings, LAPTOP, type Look, openBrowser, openPage, PHONE } from './a-page.ts';
import { type RealServer, startRealServer } from './real-server.mjs';

type CurrentRun = { run: Run };

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

/** Opens a page, does the work, and insists that the browser had nothing to complain of. */
async function onPage(look: Look, hash: string, work: (page: Page) => Promise<void>) {
  const { page, complaints, close } = await openPage(browser, look);
  await page.goto(`${server.base}/${hash}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  await work(page);
  expect(complaints).toEqual([]);
  await close();
}

describe('the season', () => {
  it('draws every brew, every thread and every pack of the plan', async () => {
    const plan = await planInForce();
    await onPage(LAPTOP, '#/', async (page) => {
      expect(await page.locator('a[data-brew]').count()).toBe(plan.brews.length);
      const fed = plan.brews.filter((brew) => brew.source.kind !== 'fresh');
      for (const { brew } of fed) {
        expect(await page.locator(`g[data-strand$="→${brew}"]`).count(), brew).toBe(1);
      }
      expect(await page.locator('.purchase').count()).toBe(plan.brews.length - fed.length);
      for (const chain of plan.chains) {
        expect(await page.locator('.chain-notes').textContent()).toContain(chain.endsBecause);
      }
    });
  });

  it('says the same as a table', async () => {
    const plan = await planInForce();
    await onPage(LAPTOP, '#/', async (page) => {
      await page.getByRole('tab', { name: 'Table' }).click();
      const table = page.getByRole('table');
      expect(await table.locator('tbody tr').count()).toBe(plan.brews.length);
      for (const brew of plan.brews) {
        const row = table.locator('tbody tr', {
          has: page.getByRole('link', { name: brew.brew, exact: true }),
        });
        expect(await row.first().textContent()).toContain(
          `${Math.round(brew.viability.likely * 100)}\u00a0%`,
        );
      }
    });
  });

  it('lets the keyboard walk along the yeast and open the reasons', async () => {
    const plan = await planInForce();
    const child = plan.brews.find((brew) => brew.source.kind === 'harvest');
    if (child?.source.kind !== 'harvest') throw new Error('no brew is pitched from a harvest');
    const parent = child.source.brew;
    await onPage(LAPTOP, '#/', async (page) => {
      await page.locator(`a[data-brew="${child.brew}"]`).focus();
      await page.keyboard.press('ArrowLeft');
      const focused = () => page.evaluate(() => document.activeElement?.getAttribute('data-brew'));
      expect(await focused()).toBe(parent);
      expect(await page.getByTestId('reading-line').textContent()).toContain(parent);
      await page.keyboard.press('ArrowRight');
      const firstChild = plan.brews.find(
        (brew) => brew.source.kind === 'harvest' && brew.source.brew === parent,
      );
      expect(await focused()).toBe(firstChild?.brew);
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { level: 1, name: firstChild?.brew ?? '' }).waitFor();
      for (const reason of firstChild?.why ?? []) {
        expect(await page.locator('main').textContent()).toContain(reason);
      }
      for (const hazard of firstChild?.hazards ?? []) {
        expect(await page.locator('main').textContent()).toContain(hazard.says);
      }
      expect(await page.locator('main').textContent()).toContain(firstChild?.fallback.says ?? '');
    });
  });

  it.each(['A4', 'Letter'])('prints on one sheet of %s', async (format) => {
    await onPage(LAPTOP, '#/', async (page) => {
      const pdf = (await page.pdf({ format, landscape: true })).toString('latin1');
      expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
    });
  });

  it('keeps the chosen units over a reload', async () => {
    await onPage(LAPTOP, '#/brews/Ferry%20Light', async (page) => {
      await page.getByRole('radio', { name: '°P' }).click();
      await page.reload();
      // 1.043 is 10.7 °P (sucrose table: 10.5 °P is 1.0421, 11 °P is 1.0442).
      await page.getByText(/10\.7\s°P/).waitFor();
    });
  });
});

describe('the calendar', () => {
  it('gives an address that answers with every task', async () => {
    const { tasks } = await server.read<{ tasks: TaskRow[] }>('/api/tasks');
    await onPage(LAPTOP, '#/subscribe', async (page) => {
      const address = await page.getByRole('textbox').first().inputValue();
      expect(address).toContain('.ics');
      const feed = await fetch(address);
      expect(feed.headers.get('content-type')).toContain('text/calendar');
      expect((await feed.text()).match(/BEGIN:VEVENT/g)?.length).toBe(tasks.length);
      await page.getByText(/a phone cannot subscribe/).waitFor();
    });
  });
});

describe('the first page', () => {
  it('loads at most 250 kB of gzipped JavaScript, and nothing inline', async () => {
    const html = await (await fetch(server.base)).text();
    const sources = [...html.matchAll(/<script[^>]*\ssrc="([^"]+)"/g)].map((match) => match[1]);
    expect(sources.length).toBe(html.match(/<script/g)?.length);
    expect(html).not.toMatch(/<style|\sstyle=/);
    let bytes = 0;
    for (const source of sources) {
      const text = await (await fetch(`${server.base}${source}`)).text();
      bytes += gzipSync(text).length;
    }
    expect(bytes).toBeGreaterThan(10_000);
    expect(bytes).toBeLessThanOrEqual(250_000);
  });
});

describe('accessibility', () => {
  const pages = ['#/', '#/brews/Ferry%20Light', '#/tasks', '#/subscribe', '#/nowhere'];
  for (const scheme of ['light', 'dark'] as const) {
    it.each(pages)(`axe finds nothing on %s (${scheme})`, async (hash) => {
      await onPage({ ...LAPTOP, scheme }, hash, async (page) => {
        expect(await axeFindings(page)).toEqual([]);
      });
    });
  }
});

describe('a phone', () => {
  it('opens on the tasks, fits its width, and ticks and unticks with large targets', async () => {
    await onPage(PHONE, '', async (page) => {
      expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Tasks');
      const wide = 'document.documentElement.scrollWidth - document.documentElement.clientWidth';
      expect(await page.evaluate(wide)).toBe(0);
      if ((await page.getByRole('button', { name: /^Done: / }).count()) === 0) {
        await page.getByRole('button', { name: /^Show the/ }).click();
      }
      const done = page.getByRole('button', { name: /^Done: / }).first();
      const box = await done.boundingBox();
      expect(Math.min(box?.height ?? 0, box?.width ?? 0)).toBeGreaterThanOrEqual(44);
      const title = (await done.getAttribute('aria-label'))?.slice('Done: '.length) ?? '';
      await done.click();
      await page.getByRole('button', { name: `Take back: Done on Sat 2 Jan: ${title}` }).click();
      await page
        .getByRole('button', { name: `Done: ${title}` })
        .first()
        .waitFor();
      expect(await axeFindings(page)).toEqual([]);
    });
  });
});

describe('a brew slips', () => {
  it('shows only what differs, and on adoption changes the plan and the same feed entry', async () => {
    const before = await planInForce();
    const brew = before.brews[0];
    if (!brew) throw new Error('the plan is empty');
    const { feeds } = await server.read<{ feeds: { address: string }[] }>('/api/feeds');
    const feedOf = async () => (await fetch(feeds[0]?.address ?? '')).text();
    const uidOf = (text: string) =>
      text
        .replaceAll('\r\n ', '')
        .split('BEGIN:VEVENT')
        .find((event) => event.includes(`SUMMARY:Brew ${brew.brew}`))
        ?.match(/UID:(\S+)/)?.[1];
    const uid = uidOf(await feedOf());
    expect(uid).toBeDefined();

    await onPage(LAPTOP, '#/tasks', async (page) => {
      const show = page.getByRole('button', { name: /^Show the/ });
      if (await show.isVisible()) await show.click();
      await page
        .getByRole('button', { name: new RegExp(`^Slipped to …: Brew ${brew.brew}:`) })
        .click();
      expect(await axeFindings(page)).toEqual([]);
      await page.getByRole('button', { name: 'Plan around it' }).click();
      await page.getByRole('button', { name: 'Stop and keep the best' }).waitFor();
      await page.getByRole('heading', { name: 'What would change' }).waitFor();
      const { draft } = await server.read<DraftAnswer>('/api/draft');
      if (draft === null) throw new Error('there is no draft');
      expect(draft.changes.changes.some((change) => change.brew === brew.brew)).toBe(true);
      const shown = await page.locator('.draft').textContent();
      for (const change of draft.changes.changes) expect(shown).toContain(change.says);
      expect(await axeFindings(page)).toEqual([]);
      expect((await planInForce()).brews[0]?.day).toBe(brew.day);

      await page.getByRole('button', { name: 'Adopt' }).click();
      await page.getByRole('heading', { name: 'What would change' }).waitFor({ state: 'detached' });
      const after = await planInForce();
      const moved = after.brews.find((one) => one.brew === brew.brew);
      expect((moved?.day ?? '') > brew.day).toBe(true);
      expect(uidOf(await feedOf())).toBe(uid);
    });
  });

  it('stops a search when told to, keeps its best, and lets the old plan stand', async () => {
    const before = await server.read<PlanAnswer>('/api/plan');
    await onPage(LAPTOP, '#/tasks', async (page) => {
      const show = page.getByRole('button', { name: /^Show the/ });
      if (await show.isVisible()) await show.click();
      await page
        .getByRole('button', { name: /^Slipped to …: Brew/ })
        .nth(1)
        .click();
      await page.getByRole('button', { name: 'Plan around it' }).click();
      await page.getByRole('button', { name: 'Stop and keep the best' }).click();
      await page.getByRole('heading', { name: 'What would change' }).waitFor();
      const { run } = await server.read<CurrentRun>('/api/runs/current');
      expect(run.state).toBe('stopped');
      await page.getByRole('button', { name: 'Keep the old plan' }).click();
      await page.getByRole('heading', { name: 'What would change' }).waitFor({ state: 'detached' });
      const after = await server.read<PlanAnswer>('/api/plan');
      expect(after.id).toBe(before.id);
      expect((await server.read<DraftAnswer>('/api/draft')).draft).toBeNull();
    });
  });
});
