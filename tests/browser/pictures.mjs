// Writes pictures of every page into docs/pictures: `node tests/browser/pictures.mjs`. Light, dark and phone, from the real server.
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { root } from '../../api/prepare.mjs';
import { BROWSER_ARGS, findOrGetBrowser } from './find-browser.mjs';
import { startRealServer } from './real-server.mjs';

const TODAY = '2027-01-02';
const folder = join(root, 'docs', 'pictures');

const LOOKS = {
  light: { viewport: { width: 1440, height: 900 }, colorScheme: 'light' },
  dark: { viewport: { width: 1440, height: 900 }, colorScheme: 'dark' },
  phone: {
    viewport: { width: 390, height: 844 },
    colorScheme: 'light',
    isMobile: true,
    hasTouch: true,
  },
};

/** What is in 180 mL after two weeks. */
async function reckonJar(page) {
  await page.getByRole('textbox', { name: 'Sediment' }).fill('180');
  await page.getByRole('textbox', { name: 'Days in the cold' }).fill('14');
  await page.getByRole('button', { name: 'Reckon' }).click();
  await page.getByRole('heading', { name: 'What it rests on' }).waitFor();
}

/** Takes a beer up and carries it two brew days on. */
async function carry(page, brew) {
  await page.focus(`a[data-brew="${brew}"]`);
  for (const key of ['m', 'ArrowRight', 'ArrowRight']) await page.keyboard.press(key);
  await page.getByText(/breaks/).waitFor();
}

/** A beer opened, with an edit in pencil and a style whose range it leaves. */
async function writeInPencil(page) {
  await page.getByRole('button', { name: 'More of Heron' }).click();
  await page.getByRole('textbox', { name: 'Volume of Heron, L' }).fill('21');
  await page.getByRole('combobox', { name: 'Style of Heron' }).fill('American IPA');
}

/** Rows of somebody's spreadsheet, with a strange column and two bad cells. */
async function pasteRows(page) {
  const rows = [
    'Beer,OG,fg,yeast,volume_l,ebc,ibu,ferment_c,tank_days,condition_days,value',
    'Late Lantern,1048,1.011,Mill Lane Ale,20,12,30,18,14,14,60',
    'Long Jetty,1.050,1.011,Nobody,20,12,30,18,14,14,60',
    'Low Water,1.044,1.010,Mill Lane Ale,20,9,25,18,14,14,60',
  ];
  await page.getByRole('button', { name: /^Bring in a file/ }).click();
  await page.getByRole('textbox', { name: /^Or paste rows/ }).fill(rows.join('\n'));
  await page.getByRole('button', { name: 'Look at it' }).click();
  await page.getByLabel('Beer', { exact: true }).selectOption('brew');
  await page.getByRole('textbox', { name: 'OG in line 2' }).scrollIntoViewIfNeeded();
}

/** Two groups of rules, one of them softened. */
async function openRules(page) {
  await page.getByRole('button', { name: /^Rules that you may soften/ }).click();
  await page.getByRole('radio', { name: 'costs' }).first().click();
  await page.getByRole('heading', { name: 'Rules and weights' }).scrollIntoViewIfNeeded();
}

/** What is taken: a name, where it stands, and what is done before the shutter. */
function shotsOf(brew) {
  return [
    { name: 'season', hash: '#/' },
    { name: 'season-line', hash: '#/', before: (page) => page.focus(`a[data-brew="${brew}"]`) },
    {
      name: 'season-month',
      hash: '#/',
      before: (page) => page.getByRole('radio', { name: 'Month' }).click(),
    },
    { name: 'season-moving', hash: '#/', before: (page) => carry(page, brew) },
    { name: 'pitch', hash: `#/brews/${encodeURIComponent(brew)}` },
    { name: 'brews', hash: '#/brews', before: writeInPencil },
    { name: 'bring-in', hash: '#/brews', before: pasteRows },
    { name: 'shelf', hash: '#/shelf' },
    { name: 'labels', hash: '#/shelf/labels' },
    { name: 'jar', hash: '#/shelf/jar/J1' },
    { name: 'house', hash: '#/house', before: openRules },
    { name: 'start', hash: '#/start' },
    { name: 'tasks', hash: '#/tasks' },
    { name: 'savings', hash: '#/worth' },
    { name: 'calendar', hash: '#/subscribe' },
    { name: 'doors', hash: '#/doors' },
    { name: 'backups', hash: '#/keeping' },
    { name: 'reckoner', hash: '#/reckoner/jar', before: reckonJar },
  ];
}

async function photograph(browser, base, look, shots) {
  const context = await browser.newContext({ ...LOOKS[look], reducedMotion: 'reduce' });
  for (const { name, hash, before } of shots) {
    const page = await context.newPage();
    await page.goto(`${base}/${hash}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    if (before) await before(page);
    await page.waitForTimeout(250);
    const file = `${name}-${look}.png`;
    await page.screenshot({ path: join(folder, file), fullPage: look !== 'phone' });
    console.log(`docs/pictures/${file}`);
    await page.close();
  }
  await context.close();
}

/** Opens the tasks and, on them, what the first brew slipped to. */
async function openSlip(page, base) {
  await page.goto(`${base}/#/tasks`);
  await page.getByRole('heading', { level: 1 }).waitFor();
  const show = page.getByRole('button', { name: /^Show the/ });
  if (await show.isVisible()) await show.click();
  await page
    .getByRole('button', { name: /^Slipped to/ })
    .first()
    .click();
}

/** A brew slips and the draft is shown; last, for it changes the season. */
async function photographDraft(browser, base) {
  const pages = {};
  for (const look of ['light', 'phone']) {
    const context = await browser.newContext({ ...LOOKS[look], reducedMotion: 'reduce' });
    pages[look] = await context.newPage();
    await openSlip(pages[look], base);
    await pages[look].screenshot({ path: join(folder, `slip-${look}.png`) });
    console.log(`docs/pictures/slip-${look}.png`);
  }
  await pages.light.getByRole('button', { name: 'Plan around it' }).click();
  await pages.light.locator('#draft').waitFor({ timeout: 120_000 });
  await pages.phone.reload();
  for (const [look, page] of Object.entries(pages)) {
    await page.locator('#draft').waitFor();
    await page.evaluate(() => window.scrollTo(0, 0));
    await page.screenshot({ path: join(folder, `draft-${look}.png`) });
    console.log(`docs/pictures/draft-${look}.png`);
    await page.context().close();
  }
}

mkdirSync(folder, { recursive: true });
const server = await startRealServer(TODAY);
const browser = await chromium.launch({
  executablePath: await findOrGetBrowser(),
  args: BROWSER_ARGS,
});
try {
  const { plan } = await server.read('/api/plan');
  const fed = plan.brews.filter((brew) => brew.source.kind === 'harvest');
  const shots = shotsOf(fed[Math.floor(fed.length / 2)]?.brew ?? plan.brews[0]?.brew ?? '');
  for (const look of Object.keys(LOOKS)) await photograph(browser, server.base, look, shots);
  await photographDraft(browser, server.base);
} finally {
  await browser.close();
  await server.stop();
}
