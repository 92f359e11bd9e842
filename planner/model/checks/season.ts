// Checks of the season as a whole: its days, its brew days, and that it is not empty.
import { dayNumber, isoDay, weekdayIndex } from '../../timeline/calendar.ts';
import { type IsoDay, WEEKDAYS } from '../common.ts';
import type { ListName } from './draft.ts';
import type { Report } from './report.ts';

const MAX_SEASON_DAYS = 1100;

const shutSets = new WeakMap<readonly IsoDay[], ReadonlySet<IsoDay>>();

/** The closed days as a set, made once a list. */
function shutDays(closed: readonly IsoDay[]): ReadonlySet<IsoDay> {
  const known = shutSets.get(closed);
  if (known) return known;
  const shut = new Set(closed);
  shutSets.set(closed, shut);
  return shut;
}

/** Whether the season is one that can be looked through day by day. */
export function isSearchable(from: IsoDay, to: IsoDay): boolean {
  return from <= to && dayNumber(to) - dayNumber(from) < MAX_SEASON_DAYS;
}

/**
 * The first open brew day from `start` to `end`, both included; null where there is none, undefined
 * while the house's brew days are not known.
 */
export function nextBrewDay(report: Report, start: IsoDay, end: IsoDay): IsoDay | null | undefined {
  const { brewDays, closed } = report.draft.head;
  if (brewDays === undefined || closed === undefined) return undefined;
  const last = dayNumber(end);
  const shut = shutDays(closed);
  for (let day = dayNumber(start); day <= last; day++) {
    const name = WEEKDAYS[weekdayIndex(day)];
    if (name === undefined || !brewDays.includes(name)) continue;
    const text = isoDay(day);
    if (!shut.has(text)) return text;
  }
  return null;
}

const EMPTY: readonly (readonly [ListName, string, string])[] = [
  ['brews', 'The season is empty: there is no brew in it.', 'Add a row for each beer to brew.'],
  ['tanks', 'The house has no tank.', 'Add a row for each fermenter.'],
  ['yeasts', 'The house has no yeast.', 'Add a row for each strain that a brew may take.'],
];

function checkEmpty(report: Report): void {
  for (const [list, message, remedy] of EMPTY) {
    if (!report.draft.given[list] || report.draft[list].length > 0) continue;
    report.say({ code: `no-${list}`, at: [list], bound: 'at least one', message, remedy });
  }
}

/** The season's own days: in order, not absurdly far apart, and holding at least one brew day. */
export function checkSeason(report: Report): void {
  checkEmpty(report);
  const { from, to, workDays } = report.draft.head;
  if (workDays?.length === 0) {
    report.say({
      code: 'no-work-day',
      at: ['workDays'],
      value: '[]',
      bound: 'at least one day of the week',
      message: `${report.field('workDays')} names no day: nothing could be harvested or packaged.`,
      remedy: `Name the days, or leave ${report.field('workDays')} out to take the brew days.`,
    });
  }
  if (from === undefined || to === undefined) return;
  const fromField = report.field('from');
  const toField = report.field('to');
  if (to < from) {
    report.say({
      code: 'days-out-of-order',
      at: ['to'],
      value: to,
      bound: `${from} (${fromField}) or later`,
      message: `The season’s “${toField}” is ${to}, before its “${fromField}” of ${from}.`,
      remedy: 'Exchange the two, or correct one of them.',
    });
    return;
  }
  const days = dayNumber(to) - dayNumber(from) + 1;
  if (days > MAX_SEASON_DAYS) {
    report.say({
      code: 'season-too-long',
      at: ['to'],
      value: to,
      bound: `${isoDay(dayNumber(from) + MAX_SEASON_DAYS - 1)} or earlier`,
      message: `The season from ${from} to ${to} has ${days} days; at most ${MAX_SEASON_DAYS} can be planned at once.`,
      remedy: `Correct the year of “${toField}”, or split the season.`,
    });
    return;
  }
  if (nextBrewDay(report, from, to) === null) {
    report.say({
      code: 'no-brew-day',
      at: ['brewDays'],
      value: (report.draft.head.brewDays ?? []).join(', '),
      bound: `a brew day from ${from} to ${to}`,
      message: `No day from ${from} to ${to} is an open brew day of this house.`,
      remedy: 'Name more brew days, open a closed day, or lengthen the season.',
    });
  }
}
