// The shelf in a real Chromium against the real server: jars, a jar added by hand, a culture gone bad and sound again, labels on three papers.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Shelf } from '../../planner/index.ts';
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

const shelfNow = async () => {
  const { shelf } = await server.read<{ shelf: Shelf | null }>('/api/shelf');
  if (shelf === null) throw new Error('there is no plan');
  return shelf;
};

const overhang = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

describe('on a laptop', () => {
  it('shows every jar, follows the family by keyboard, and opens the page of a code', async () => {
    const { page, complaints, close } = await openPage(browser, LAPTOP);
    await page.goto(`${server.base}/#/shelf`);
    await page.getByRole('heading', { level: 1, name: 'The shelf' }).waitFor();
    const shelf = await shelfNow();
    expect(shelf.jars.length).toBeGreaterThan(1);
    for (const { code } of shelf.jars) {
      expect(await page.getByRole('link', { name: `Jar ${code}`, exact: true }).count()).toBe(1);
    }
    // along the yeast: a jar, the beer that it pitches
    const fed = shelf.cultures.find(
      ({ of, parent }) => of.kind === 'beer' && parent?.kind === 'jar',
    );
    if (fed?.of.kind !== 'beer' || fed.parent?.kind !== 'jar') throw new Error('no jar is used');
    await page.locator(`a[data-knot="jar ${fed.parent.jar}"]`).focus();
    await page.keyboard.press('ArrowRight');
    const knot = await page.evaluate(() => document.activeElement?.getAttribute('data-knot'));
    const children = shelf.cultures.filter(
      ({ parent }) =>
        parent?.kind === 'jar' && fed.parent?.kind === 'jar' && parent.jar === fed.parent.jar,
    );
    expect(children.map(({ of }) => `beer ${of.kind === 'beer' ? of.brew : ''}`)).toContain(knot);
    expect(await axeFindings(page)).toEqual([]);

    const next = shelf.toCome[0];
    if (next === undefined) throw new Error('no harvest is planned');
    // as a phone comes from a label, written in small letters
    await page.goto(`${server.base}/#/shelf/${next.code.toLowerCase()}`);
    await page
      .getByRole('heading', { level: 1, name: `Jar ${next.code}, out of ${next.from}` })
      .waitFor();
    expect(await axeFindings(page)).toEqual([]);
    await page.goto(`${server.base}/#/shelf/QQQQ`);
    await page.getByRole('heading', { level: 1, name: /QQQQ/ }).waitFor();
    expect(complaints).toEqual([]);
    await close();
  }, 90_000);

  it('prints the chosen labels on each paper, a code each, nothing else', async () => {
    const { page, complaints, close } = await openPage(browser, LAPTOP);
    await page.goto(`${server.base}/#/shelf/labels`);
    await page.getByRole('heading', { level: 1, name: 'Labels' }).waitFor();
    const labels = page.getByRole('article', { name: /^Label of jar/ });
    const { toCome } = await shelfNow();
    const harvests = [...new Set(toCome.map(({ from }) => from))].slice(0, 3);
    const wanted = toCome.filter(({ from }) => harvests.includes(from));
    expect(await labels.count()).toBe(wanted.length);
    // this server is on loopback: a phone could not open it, and the page says so
    expect(await page.locator('.label .scan-code').count()).toBe(0);
    await page.getByText(/no code for a phone/).waitFor();
    for (const box of await page.getByRole('checkbox').all()) await box.check({ force: true });
    const all = await labels.count();
    expect(all).toBeGreaterThan(wanted.length);
    // points of 1/72 inch: A4 is 595 × 842, Letter 612 × 792
    const papers = [
      ['plain A4', 10, 595, 842],
      ['plain Letter', 10, 612, 792],
      ['24 labels of 70 × 37 mm, A4', 24, 595, 842],
    ] as const;
    for (const [name, most, width, height] of papers) {
      await page.getByRole('radio', { name, exact: true }).click();
      const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
      const boxes = [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
      expect(boxes).toHaveLength(Math.ceil(all / most));
      for (const box of boxes) {
        expect(Math.abs(Number(box[1]) - width)).toBeLessThan(1);
        expect(Math.abs(Number(box[2]) - height)).toBeLessThan(1);
      }
      // no word runs over the edge of its label
      const over = await labels.evaluateAll((list) =>
        list
          .filter(
            (one) =>
              one.scrollHeight > one.clientHeight + 1 || one.scrollWidth > one.clientWidth + 1,
          )
          .map((one) => one.textContent),
      );
      expect(over).toEqual([]);
    }
    expect(await axeFindings(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await close();
  }, 120_000);
});

it.each(['light', 'dark'] as const)(
  'serves everybody, %s, on the smallest phone',
  async (scheme) => {
    const { page, complaints, close } = await openPage(browser, { ...PHONE, width: 360, scheme });
    for (const [hash, heading] of [
      ['#/shelf', 'The shelf'],
      ['#/shelf/labels', 'Labels'],
      ['#/shelf/jar/J1', 'Jar J1'],
    ] as const) {
      await page.goto(`${server.base}/${hash}`);
      await page.getByRole('heading', { level: 1, name: heading }).waitFor();
      expect(await overhang(page)).toBe(0);
      expect(await axeFindings(page)).toEqual([]);
    }
    expect(complaints).toEqual([]);
    await close();
  },
  90_000,
);

it('adds a jar by hand, refusing what cannot be, and loses it again; a jar goes bad and is sound', async () => {
  const { page, complaints, close } = await openPage(browser, PHONE);
  await page.goto(`${server.base}/#/shelf`);
  await page.getByRole('button', { name: 'Add a jar' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('textbox', { name: 'Jar', exact: true }).fill('T7');
  await dialog.getByRole('textbox', { name: /^Settled/ }).fill('-4');
  await dialog.getByRole('button', { name: 'Tell it' }).click();
  await dialog.getByText(/too little/).waitFor();
  expect(await axeFindings(page)).toEqual([]);
  await dialog.getByRole('textbox', { name: /^Settled/ }).fill('140');
  await dialog.getByRole('button', { name: 'Tell it' }).click();
  await dialog.waitFor({ state: 'detached' });
  await page.getByRole('link', { name: 'Jar T7', exact: true }).waitFor();
  expect((await shelfNow()).jars.map(({ code }) => code)).toContain('T7');

  await page.getByRole('link', { name: 'Jar T7', exact: true }).click();
  await page.getByRole('button', { name: 'Lost or thrown away' }).click();
  await dialog.getByRole('button', { name: 'Tell it' }).click();
  await page.getByText('gone; sound.').waitFor();
  expect((await shelfNow()).jars.map(({ code }) => code)).not.toContain('T7');

  await page.goto(`${server.base}/#/shelf/jar/J1`);
  await page.getByRole('button', { name: 'Gone bad, or may have' }).click();
  // what it entails stands there before it is told
  await dialog.getByRole('heading', { name: 'Suspect then' }).waitFor();
  const planned = (await shelfNow()).cultures.filter(
    ({ parent }) => parent?.kind === 'jar' && parent.jar === 'J1',
  );
  for (const { of } of planned) {
    if (of.kind === 'beer')
      await dialog.getByText(`${of.brew}: not brewed yet`, { exact: true }).waitFor();
  }
  await dialog.getByRole('button', { name: 'Tell it' }).click();
  await page.getByText('on the shelf; suspect.').waitFor();
  expect(await page.locator('.knot.suspect').count()).toBeGreaterThan(0);
  expect(await axeFindings(page)).toEqual([]);
  await page.getByRole('button', { name: 'Sound after all' }).click();
  await dialog.getByRole('button', { name: 'Tell it' }).click();
  await page.getByText('on the shelf; sound.').waitFor();
  // the console tells refusals of the browser's own; none was asked for
  expect(complaints).toEqual([]);
  await close();
}, 120_000);
