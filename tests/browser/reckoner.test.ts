// The reckoner in a real Chromium against the real server: every question asked, refused and answered, by keyboard and on a phone.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { QuestionsAnswer } from '../../api/routes/shapes.ts';
import { axeFindings, LAPTOP, type Look, openBrowser, openPage, PHONE } from './a-page.ts';
import { type RealServer, startRealServer } from './real-server.mjs';

let server: RealServer;
let browser: Browser;
let questions: QuestionsAnswer['questions'];

beforeAll(async () => {
  [server, browser] = await Promise.all([startRealServer('2027-01-02'), openBrowser()]);
  ({ questions } = await server.read<QuestionsAnswer>('/api/questions'));
}, 240_000);
afterAll(async () => {
  await browser?.close();
  await server?.stop();
});

/** Opens a question, does the work, and insists that the browser complained of nothing but refusals. */
async function onQuestion(look: Look, id: string, work: (page: Page) => Promise<void>) {
  const { page, complaints, close } = await openPage(browser, look);
  await page.goto(`${server.base}/#/reckoner/${id}`);
  await page.getByRole('heading', { level: 2 }).waitFor();
  await work(page);
  // A browser writes a line of its own for every answer that is a refusal.
  expect(complaints.filter((line) => !line.includes('422'))).toEqual([]);
  await close();
}

const box = (page: Page, name: string) => page.getByRole('textbox', { name });
const reckon = (page: Page) => page.getByRole('button', { name: 'Reckon' }).click();

describe('the reckoner', () => {
  it('lists every question and makes its form from the fields that the server names', async () => {
    await onQuestion(LAPTOP, '', async (page) => {
      const links = page.getByRole('navigation', { name: 'Questions' }).getByRole('link');
      expect(await links.allTextContents()).toEqual(questions.map(({ title }) => title));
      for (const { id, title, fields } of questions) {
        await links.getByText(title).click();
        await page.getByRole('heading', { level: 2, name: title }).waitFor();
        const written = fields.filter(({ kind }) => kind !== 'choice' && kind !== 'yesNo');
        expect(await page.locator('form').getByRole('textbox').count(), id).toBe(written.length);
      }
    });
  });

  it('answers with low, likely and high, formula, range and sources', async () => {
    await onQuestion(LAPTOP, 'jar', async (page) => {
      await box(page, 'Sediment').fill('100');
      await box(page, 'Days in the cold').fill('60');
      await reckon(page);
      await page.getByRole('img', { name: /^living cells: likely .* to .* 4 chances/ }).waitFor();
      const said = await page.locator('.answer').textContent();
      const jar = questions.find(({ id }) => id === 'jar');
      for (const part of [jar?.formula ?? '?', jar?.range ?? '?', ...(jar?.sources ?? ['?'])])
        expect(said).toContain(part);
      expect(said).toContain('60 days is longer than any published band');
    });
  });

  it('names the unit beside each field, once', async () => {
    await onQuestion(LAPTOP, 'starter', async (page) => {
      for (const name of ['Largest starter, L', 'Batch, L', 'Living cells needed, billion'])
        await page.getByRole('textbox', { name, exact: true }).waitFor();
    });
    await onQuestion(LAPTOP, 'jar', async (page) => {
      for (const name of ['Sediment, mL', 'Days in the cold', 'Generation'])
        await page.getByRole('textbox', { name, exact: true }).waitFor();
    });
  });

  it('says what is wrong beside the field, and gives no number', async () => {
    await onQuestion(LAPTOP, 'beer', async (page) => {
      await box(page, 'Original gravity').fill('1048');
      await box(page, 'Final gravity').fill('1.01');
      await reckon(page);
      await page.getByText('write 1.048').waitFor();
      expect(await box(page, 'Original gravity').getAttribute('aria-invalid')).toBe('true');
      expect(await page.locator('.answer').count()).toBe(0);
      expect(await axeFindings(page)).toEqual([]);
      await box(page, 'Original gravity').fill('1.048');
      await reckon(page);
      // (11.91 − 2.56) … Balling: about 5.0 % by volume.
      await page.getByText(/5(\.0\d?)? % alcohol by volume/).waitFor();
    });
  });

  it('reads and answers in gallons, °F and °P when these are chosen', async () => {
    await onQuestion(LAPTOP, 'pitch', async (page) => {
      await page.getByRole('radio', { name: 'gallons, °F' }).click();
      await page.getByRole('radio', { name: '°P' }).click();
      await box(page, 'Wort, gal').fill('5');
      await box(page, 'Original gravity, °P').fill('12');
      await box(page, 'Fermentation temperature, °F').fill('66');
      await reckon(page);
      // 18.927 L × 12 °P × 1.0 = 227 billion.
      await page.getByText('It needs 227 billion living cells.').waitFor();
      expect(await page.locator('.answer').textContent()).toMatch(/\d\sfl\soz of settled slurry/);
      await page.getByRole('radio', { name: 'litres, °C' }).click();
      expect(await box(page, 'Wort, L').inputValue()).toBe('18.93');
      expect(await box(page, 'Fermentation temperature, °C').inputValue()).toBe('18.89');
    });
  });

  it('is asked and answered by keyboard alone', async () => {
    await onQuestion(LAPTOP, 'taste', async (page) => {
      await box(page, 'Tasters').focus();
      await page.keyboard.type('21');
      await page.keyboard.press('Tab');
      await page.keyboard.type('12');
      await page.keyboard.press('Enter');
      await page.getByText('They tasted it').waitFor();
      expect(await axeFindings(page)).toEqual([]);
    });
  });

  it('fits a phone, every question without a finding', async () => {
    await onQuestion(PHONE, '', async (page) => {
      for (const { id, title } of questions) {
        await page.goto(`${server.base}/#/reckoner/${id}`);
        await page.getByRole('heading', { level: 2, name: title }).waitFor();
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(wide, id).toBeLessThanOrEqual(PHONE.width);
        expect(await axeFindings(page), id).toEqual([]);
      }
    });
  });

  it('says so where there is no such question', async () => {
    const { page, close } = await openPage(browser, LAPTOP);
    await page.goto(`${server.base}/#/reckoner/nothing`);
    await page.getByText('There is no such question').waitFor();
    await close();
  });
});
