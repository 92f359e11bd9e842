// A season of 250 brews for the page's own figures: the shared brewery's beers, five times over a year and a half.
import { readFolder } from '../../api/folder/index.ts';
import { House, type Plan, plan } from '../../planner/index.ts';

export const PAGE_TODAY = '2027-01-02';
const BREWS = 250;
const COPIES = 5;
/** From one copy of the season to the next. */
const SHIFT_DAYS = 84;

const DAY_MS = 86_400_000;
const shifted = (day: string | null, days: number): string | null =>
  day === null ? null : new Date(Date.parse(day) + days * DAY_MS).toISOString().slice(0, 10);

/** The house: the brews of quay-seven again and again, with half as many tanks again. */
export async function largeHouse(): Promise<House> {
  const folder = new URL('../seasons/quay-seven', import.meta.url).pathname;
  const { house } = await readFolder(folder);
  if (!house) throw new Error('quay-seven cannot be read');
  const brews = Array.from({ length: COPIES }, (_, copy) =>
    house.brews.map((brew) => ({
      ...brew,
      brew: `${brew.brew}.${copy + 1}`,
      notBefore: shifted(brew.notBefore, copy * SHIFT_DAYS),
      readyBy: shifted(brew.readyBy, copy * SHIFT_DAYS),
      brewOn: shifted(brew.brewOn, copy * SHIFT_DAYS),
    })),
  ).flat();
  const more = house.tanks.map((tank) => ({ ...tank, tank: `${tank.tank}b` }));
  return House.parse({
    ...house,
    to: shifted(house.to, (COPIES - 1) * SHIFT_DAYS),
    tanks: [...house.tanks, ...more],
    brews: brews.slice(0, BREWS),
  });
}

/** A plan of it, thought over only a little: what is measured is how it is shown. */
export function largePlan(house: House): Plan {
  return plan({ house, today: PAGE_TODAY, steps: 100, seed: 1 });
}
