// Measures a slipped Saturday as a brewer meets it: from opening the page on a phone to the changed calendar, on the demo house.
import type { PlanAnswer } from '../../api/routes/shapes.ts';
import { openBrowser, openPage, PHONE } from '../browser/a-page.ts';
import { type RealServer, startRealServer } from '../browser/real-server.mjs';
import { readCalendar } from '../builders/calendar.ts';
import type { Row } from './measure.ts';

const PLANNED_ON = '2027-01-02';
const SATURDAY = 6;
/** Longer than a minute the wait is no wait but a fault. */
const PATIENCE_MS = 60_000;

const row = (what: string, value: number, target: number | null, note: string): Row => ({
  what,
  value,
  unit: 's',
  target,
  better: 'less',
  note,
});

async function post(server: RealServer, path: string, body: object): Promise<unknown> {
  const answer = await fetch(`${server.base}${path}`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
  return answer.json();
}

export async function slipRows(): Promise<Row[]> {
  const [server, browser] = await Promise.all([startRealServer(PLANNED_ON), openBrowser()]);
  try {
    const { plan } = await server.read<PlanAnswer>('/api/plan');
    const brew = plan?.brews.find(
      ({ day }) => new Date(`${day}T00:00:00Z`).getUTCDay() === SATURDAY,
    );
    if (brew === undefined) throw new Error('the plan brews on no Saturday');
    const { made } = (await post(server, '/api/feeds', {})) as { made: { address: string } };
    const { address } = made;
    const entry = async () => {
      const { events } = readCalendar(await (await fetch(address)).text());
      const found = events.find(({ summary }) => summary.startsWith(`Brew ${brew.brew}:`));
      if (found === undefined) throw new Error(`no entry to brew ${brew.brew}`);
      return found;
    };
    const before = await entry();
    const { page, close } = await openPage(browser, PHONE);
    page.setDefaultTimeout(PATIENCE_MS);
    const began = performance.now();
    await page.goto(`${server.base}/#/tasks`);
    await page
      .getByRole('button', { name: /^(Slipped to …|Show the)/ })
      .first()
      .waitFor();
    // tasks of later weeks are folded away
    const show = page.getByRole('button', { name: /^Show the/ });
    if (await show.isVisible()) await show.tap();
    await page.getByRole('button', { name: new RegExp(`^Slipped to …: Brew ${brew.brew}:`) }).tap();
    await page.getByRole('button', { name: 'Plan around it' }).tap();
    const told = performance.now();
    await page.getByRole('heading', { name: 'What would change' }).waitFor();
    const drafted = performance.now();
    await page.getByRole('button', { name: 'Adopt' }).tap();
    let after = await entry();
    while (after.start === before.start && performance.now() - began < PATIENCE_MS) {
      await new Promise((resolve) => setTimeout(resolve, 50));
      after = await entry();
    }
    const ended = performance.now();
    await close();
    if (after.uid !== before.uid || after.sequence <= before.sequence)
      throw new Error('the entry did not move in place');
    const about = `${brew.brew} of ${plan?.brews.length ?? 0} brews, ${before.start} to ${after.start}`;
    return [
      row(
        'a slipped Saturday: from opening the page on a phone to the changed calendar',
        (ended - began) / 1000,
        60,
        `${about}; wall clock, taps without thinking, same UID, higher SEQUENCE`,
      ),
      row('of it: from the tap to what would change', (drafted - told) / 1000, null, ''),
    ];
  } finally {
    await browser.close();
    await server.stop();
  }
}
