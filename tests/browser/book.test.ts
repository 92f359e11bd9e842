// The brews and the house in a real Chromium against the real server: written, tried, saved, merged, brought in, kept.
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { HouseAnswer } from '../../api/routes/shapes.ts';
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

/** Opens a page of the book, does the work, and insists that the browser complained of nothing but refusals. */
async function inBook(look: Look, hash: string, work: (page: Page) => Promise<void>) {
  const { page, complaints, close } = await openPage(browser, look);
  await open(page, hash);
  await work(page);
  expect(complaints.filter((line) => !/40[49]|ERR_FAILED|ERR_ABORTED/.test(line))).toEqual([]);
  await close();
}

async function open(page: Page, hash: string) {
  await page.goto(`${server.base}/#/${hash}`);
  await page.getByRole('heading', { level: 1 }).waitFor();
}

const cell = (page: Page, name: string) => page.getByRole('textbox', { name, exact: true });
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();
const house = async () => {
  const answer = await server.read<HouseAnswer>('/api/house');
  if (!answer.house) throw new Error('no house');
  return { ...answer, house: answer.house };
};
const brew = async (name: string) => (await house()).house.brews.find((row) => row.brew === name);
const save = async (page: Page) => {
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText('Saved. The plan in force').waitFor();
};

describe('brews', () => {
  it('are written in pencil, tried on the plan, and saved', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await cell(page, 'Volume of Heron, L').fill('21');
      await press(page, '1 edit in pencil');
      await page.getByText('Volume of Heron: 21 L, was 20 L').waitFor();
      expect((await brew('Heron'))?.volumeL).toBe(20);
      await press(page, 'See what the plan makes of it');
      await page.getByRole('heading', { name: 'What the plan would make of it' }).waitFor();
      await page.getByText(/Nothing else differs\.|No brew changes/).waitFor({ timeout: 90_000 });
      expect(await page.locator('.what-if .sums').textContent()).toMatch(/Cash.*Work/);
      expect(await axeFindings(page)).toEqual([]);
      // nothing was stored by trying
      expect((await server.read<{ draft: unknown }>('/api/draft')).draft).toBeNull();
      await save(page);
      expect((await brew('Heron'))?.volumeL).toBe(21);
    });
  });

  it('say what is wrong beside the line, and are not saved so', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await cell(page, 'OG of Heron').fill('1048');
      await page.locator('.ledger-says').getByText('Write it with its point: 1.048.').waitFor();
      expect(await cell(page, 'OG of Heron').getAttribute('aria-invalid')).toBe('true');
      expect(await page.getByRole('button', { name: 'Save', exact: true }).isDisabled()).toBe(true);
      await page.getByRole('button', { name: '1 thing to put right' }).waitFor();
      expect(await axeFindings(page)).toEqual([]);
      await press(page, 'Undo: OG of Heron');
      expect(await cell(page, 'OG of Heron').inputValue()).toBe('1.047');
    });
  });

  it('are kept through a reload in the middle of an edit', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await cell(page, 'Beer of Heron').fill('Heron at da');
      await cell(page, 'OG of Heron at da').press('End');
      await page.keyboard.type('x');
      await page.reload();
      expect(await cell(page, 'Beer of Heron at da').inputValue()).toBe('Heron at da');
      expect(await cell(page, 'OG of Heron at da').inputValue()).toBe('1.047x');
      await press(page, 'Throw away …');
      await press(page, 'Yes, throw all of it away');
      await cell(page, 'Beer of Heron').waitFor();
      await page.reload();
      await cell(page, 'Beer of Heron').waitFor();
    });
  });

  it('are found, duplicated, removed and put back', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await page.getByRole('searchbox').fill('märz');
      await page.getByText('1 of 24 brews').waitFor();
      expect(await page.locator('.ledger-row').count()).toBe(1);
      await press(page, 'More of Lodestar');
      await press(page, 'Duplicate Lodestar');
      await cell(page, 'Beer of Lodestar 2').waitFor();
      await press(page, 'Remove Lodestar');
      await page.getByText('1 of 24 brews').waitFor();
      await press(page, 'Undo: Lodestar removed');
      await cell(page, 'Beer of Lodestar').waitFor();
      await press(page, 'Undo: Lodestar duplicated');
      expect(await page.getByRole('button', { name: 'Save', exact: true }).count()).toBe(0);
    });
  });

  it('show the published range of a style as a hint that hinders nothing', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await page.getByRole('combobox', { name: 'Style of Heron' }).fill('American IPA');
      // BJCP 2021, 21A: OG 1.056–1.070, IBU 40–70
      await page
        .getByText(/For American IPA, its OG is below 1\.056 to 1\.070;.*BJCP 2021/)
        .waitFor();
      expect(await page.getByRole('button', { name: 'Save', exact: true }).isDisabled()).toBe(
        false,
      );
    });
  });

  it('are read and written in gallons and °P when these are chosen', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await page.getByRole('radio', { name: 'gallons, °F' }).click();
      await page.getByRole('radio', { name: '°P' }).click();
      await cell(page, 'Volume of Jetty, gal').fill('5');
      await cell(page, 'OG of Jetty, °P').fill('12');
      await save(page);
      // 5 US gallons are 18.927 L; 12 °P is 1.0484
      expect((await brew('Jetty'))?.volumeL).toBeCloseTo(18.927, 3);
      expect((await brew('Jetty'))?.og).toBeCloseTo(1.0484, 4);
    });
  });

  it('are written by keyboard alone', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await cell(page, 'Bitterness of Quill, IBU').focus();
      await page.keyboard.press('Control+A');
      await page.keyboard.type('43');
      await page.getByRole('button', { name: 'Save', exact: true }).focus();
      await page.keyboard.press('Enter');
      await page.getByText('Saved. The plan in force').waitFor();
      expect((await brew('Quill'))?.ibu).toBe(43);
    });
  });
});

describe('nothing is lost', () => {
  it('when two tabs write: the late one is offered both, place by place', async () => {
    const [one, two] = [await openPage(browser, LAPTOP), await openPage(browser, LAPTOP)];
    await open(one.page, 'brews');
    await open(two.page, 'brews');
    await cell(one.page, 'Bitterness of Keel, IBU').fill('27');
    await cell(one.page, 'OG of Keel').fill('1.051');
    await cell(two.page, 'OG of Keel').fill('1.052');
    await cell(two.page, 'FG of Keel').fill('1.013');
    await save(one.page);
    await two.page.getByRole('button', { name: 'Save', exact: true }).click();
    await two.page
      .getByRole('heading', { name: 'The house was saved elsewhere meanwhile' })
      .waitFor();
    await two.page.getByText('Bitterness of Keel: 27 IBU, was 25 IBU').waitFor();
    const both = two.page.getByRole('button', { name: 'Put both together' });
    expect(await both.isDisabled()).toBe(true);
    expect(await axeFindings(two.page)).toEqual([]);
    await two.page.getByText('Theirs: 1.051').click();
    await both.click();
    await save(two.page);
    expect(await brew('Keel')).toMatchObject({ ibu: 27, og: 1.051, fg: 1.013 });
    await one.close();
    await two.close();
  });

  it('when the server goes away: it is said, tried again, and saved', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await cell(page, 'Bitterness of Ember, IBU').fill('26');
      await page.route('**/api/**', (route) => route.abort());
      await page.getByRole('button', { name: 'Save', exact: true }).click();
      await page.getByText('Saving is tried again until it does').waitFor();
      await page.getByText('The server does not answer. It is asked again').waitFor();
      await page.unroute('**/api/**');
      await page.getByText('Saved. The plan in force').waitFor({ timeout: 30_000 });
      expect((await brew('Ember'))?.ibu).toBe(26);
      await page.getByText('It is asked again').waitFor({ state: 'detached' });
    });
  });

  it('when a tab is closed: its edits are offered to the next', async () => {
    const { page, close } = await openPage(browser, LAPTOP);
    await open(page, 'brews');
    await cell(page, 'Bitterness of Quill, IBU').fill('44');
    const next = await page.context().newPage();
    await page.waitForTimeout(400);
    await page.close();
    await open(next, 'brews');
    await press(next, 'Go on with them here');
    expect(await cell(next, 'Bitterness of Quill, IBU').inputValue()).toBe('44');
    await close();
  });
});

describe('files', () => {
  const PASTED = [
    [
      'Beer',
      'Original Gravity',
      'fg',
      'yeast',
      'volume_l',
      'ebc',
      'ibu',
      'ferment_c',
      'tank_days',
      'condition_days',
      'value',
      'Notes',
    ],
    [
      'Brought One',
      '1048',
      '1.011',
      'Mill Lane Ale',
      '20',
      '12',
      '30',
      '18',
      '14',
      '14',
      '60',
      'x',
    ],
    ['Brought Two', '1,050', '1.011', 'Nobody’s', '20', '12', '30', '18', '14', '14', '60', 'y'],
  ]
    .map((row) => row.join('\t'))
    .join('\n');

  it('pasted with strange columns and bad cells are named, put right, and taken', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await press(page, 'Bring in a file');
      await page.getByRole('textbox', { name: /^Or paste rows/ }).fill(PASTED);
      await press(page, 'Look at it');
      await page.getByText('Columns that are not known by their names').waitFor();
      await page.getByLabel('Beer', { exact: true }).selectOption('brew');
      await page.getByLabel('Original Gravity').selectOption('og');
      const bad = page.getByRole('textbox', { name: 'Original Gravity in line 2' });
      await bad.waitFor();
      await page.getByText('brews.csv:2:og').waitFor();
      expect(await axeFindings(page)).toEqual([]);
      await bad.fill('1.048');
      await bad.press('Enter');
      await page.getByRole('heading', { name: 'brews.csv: 1 of 2 rows can be taken' }).waitFor();
      await page.getByText('brews.csv:3:yeast').first().waitFor();
      await press(page, 'Take the 1 sound row, leave 1 out');
      await cell(page, 'Beer of Brought One').waitFor();
      expect(await brew('Brought One')).toBeUndefined();
      await save(page);
      expect((await brew('Brought One'))?.og).toBe(1.048);
    });
  });

  it('chosen or dropped are read by their names', async () => {
    await inBook(LAPTOP, 'brews', async (page) => {
      await press(page, 'Bring in a file');
      const tanks =
        'tank,min_fill_l,max_fill_l,min_c,max_c,turnaround_days,bottom_outlet\r\nDropped,10,40,2,25,1,yes\r\n';
      const chooser = page.waitForEvent('filechooser');
      await press(page, 'Choose files');
      await (await chooser).setFiles([
        { name: 'My Tanks.csv', mimeType: 'text/csv', buffer: Buffer.from(tanks) },
        { name: 'brews.csv', mimeType: 'text/csv', buffer: Buffer.from('PK\u0003\u0004\0') },
      ]);
      await page.getByRole('heading', { name: 'tanks.csv: 1 of 1 rows can be taken' }).waitFor();
      await page.getByText('is not a text file').waitFor();
      expect(await page.getByLabel('My Tanks.csv').inputValue()).toBe('tanks.csv');
      await press(page, 'Take 1 row');
      await page.getByRole('button', { name: '1 edit in pencil' }).waitFor();
    });
  });

  it('that are taken out hold no formula, and names of any kind are inert', async () => {
    const names = [
      '<script>alert(1)</script>',
      '=cmd()',
      '../../etc',
      '‮abc',
      '🍺'.repeat(60),
      'x'.repeat(200),
    ];
    await inBook(LAPTOP, 'brews', async (page) => {
      let asked = false;
      page.on('dialog', () => {
        asked = true;
      });
      for (const name of names) {
        await press(page, 'Add a brew');
        await cell(page, 'Beer of New brew').fill(name);
      }
      await save(page);
      await press(page, 'Take the season out as files');
      const download = page.waitForEvent('download');
      await page.getByRole('link', { name: 'brews.csv' }).click();
      const stream = await (await download).createReadStream();
      const parts: Buffer[] = [];
      for await (const part of stream) parts.push(Buffer.from(part));
      const text = Buffer.concat(parts).toString('utf8');
      expect(text).toContain("\n'=cmd(),");
      expect(text).not.toMatch(/(^|[\n,])"?[=+@]/);
      for (const name of names) if (!name.startsWith('=')) expect(text).toContain(name);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(wide).toBeLessThanOrEqual(LAPTOP.width);
      expect(asked).toBe(false);
      // ten thousand letters are a fault that is said, not one that breaks the page
      await cell(page, 'Beer of ../../etc').fill('y'.repeat(10_000));
      await page
        .getByText(/longer than 200|at most 200/)
        .first()
        .waitFor();
      await press(page, /^Undo/);
    });
    const { house: now, revision } = await house();
    const plain = { ...now, brews: now.brews.filter((row) => !names.includes(row.brew)) };
    await fetch(`${server.base}/api/house`, {
      method: 'PUT',
      headers: { 'Content-Type': 'application/json', 'If-Match': String(revision) },
      body: JSON.stringify(plain),
    });
  });
});

describe('the house', () => {
  it('turns a rule, softens another, shows what the plan makes of it, and sets all back', async () => {
    await inBook(LAPTOP, 'house', async (page) => {
      await page.getByRole('searchbox').fill('later generation');
      const generations = page.getByRole('textbox', {
        name: /^Slurry of a later generation than this/,
      });
      await generations.fill('1');
      await page.getByRole('searchbox').fill('gravity');
      await page.getByRole('radio', { name: 'costs' }).first().click();
      await press(page, 'See what the plan makes of it');
      await page.locator('.what-if .sums').waitFor({ timeout: 90_000 });
      expect(await axeFindings(page)).toEqual([]);
      await press(page, /^Set all \d turned lines back/);
      expect(await page.getByRole('radio', { name: 'forbids' }).first().isChecked()).toBe(true);
      await page.getByRole('searchbox').fill('later generation');
      expect(await generations.inputValue()).toBe('5');
    });
  });

  it('closes days, works on other days, and adds a tank', async () => {
    await inBook(LAPTOP, 'house', async (page) => {
      await page.getByLabel('Closed from').fill('2027-04-05');
      await page.getByLabel('To, if more than a day').fill('2027-04-07');
      await press(page, 'Close these days');
      await page.getByText('5 Apr to Wed 7 Apr').waitFor();
      await press(page, 'Add a tank');
      await cell(page, 'Tank of Tank 1').fill('Keg C');
      await cell(page, 'Largest fill of Keg C, L').fill('5');
      await page.getByText(/Keg C/).first().waitFor();
      await cell(page, 'Largest fill of Keg C, L').fill('21');
      await save(page);
      const { house: now } = await house();
      expect(now.closed).toEqual(
        expect.arrayContaining(['2027-04-05', '2027-04-06', '2027-04-07']),
      );
      expect(now.tanks.map(({ tank }) => tank)).toContain('Keg C');
    });
  });
});

describe('every page of the book', () => {
  const LOOKS: [string, Look][] = [
    ['a dark laptop', { ...LAPTOP, scheme: 'dark' }],
    ['a narrow phone', { ...PHONE, width: 360 }],
    ['a wide screen', { ...LAPTOP, width: 2560, height: 1200 }],
  ];
  it.each(LOOKS)('fits %s without a finding', async (_name, look) => {
    for (const hash of ['brews', 'house', 'start']) {
      await inBook(look, hash, async (page) => {
        const more = page.getByRole('button', { name: /^More of/ }).first();
        if (await more.isVisible()) await more.click();
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(wide, hash).toBeLessThanOrEqual(look.width);
        expect(await axeFindings(page), hash).toEqual([]);
      });
    }
  });
});

describe('a new house', () => {
  it('begins empty, in three steps, and is planned', async () => {
    await inBook(LAPTOP, '', async (page) => {
      await page.getByRole('link', { name: 'Brews' }).click();
      await open(page, 'start');
      await press(page, 'Start empty');
      await page.getByRole('heading', { level: 1, name: '1. What you brew on' }).waitFor();
      await cell(page, 'Name of the house').fill('Back Room');
      await press(page, 'Add a tank');
      expect(await axeFindings(page)).toEqual([]);
      await page.getByRole('link', { name: 'Next: what you brew' }).click();
      await press(page, 'Add a yeast');
      await press(page, 'Add a brew');
      await cell(page, 'Beer of New brew').fill('First Light');
      await page.reload();
      await cell(page, 'Beer of First Light').waitFor();
      expect(await axeFindings(page)).toEqual([]);
      await page.getByRole('link', { name: 'Next: what is on the shelf' }).click();
      await page.getByText('None is fine').waitFor();
      await press(page, 'Begin the season');
      await page.getByRole('heading', { level: 1, name: 'Back Room' }).waitFor();
      await page.locator('a[data-brew="First Light"]').waitFor({ timeout: 60_000 });
      expect((await house()).demo).toBe(false);
    });
  });

  it('gives way to the demo house again', async () => {
    await inBook(LAPTOP, 'start', async (page) => {
      await press(page, 'Open the demo house');
      await page
        .getByRole('heading', { level: 1, name: 'Lantern Shed' })
        .waitFor({ timeout: 60_000 });
      await page.getByText('is a demo house').waitFor();
    });
  });
});
