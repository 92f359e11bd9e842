// The house that comes along, to look around in: one season of a home brewery, moved to begin soon.
import { DateTime } from 'luxon';
import { House, type IsoDay } from '../../planner/index.ts';
import document from './lantern-shed.json' with { type: 'json' };

const NOTICE_DAYS = 7;
const DAY = /^\d{4}-\d{2}-\d{2}$/;

function day(text: IsoDay): DateTime {
  return DateTime.fromISO(text, { zone: 'utc' });
}

/** Every day in a document, moved by so many weeks. */
function moved(value: unknown, weeks: number): unknown {
  if (typeof value === 'string' && DAY.test(value)) {
    return day(value).plus({ weeks }).toFormat('yyyy-MM-dd');
  }
  if (Array.isArray(value)) return value.map((inner) => moved(inner, weeks));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => [key, moved(inner, weeks)]),
  );
}

/**
 * The demo house, moved by whole weeks as one: weekdays stay, and its first day (a brew day) is the
 * first one at least a week after today.
 */
export function demoHouse(today: IsoDay): House {
  const daysToGo = day(today).plus({ days: NOTICE_DAYS }).diff(day(document.from), 'days').days;
  return House.parse(moved(document, Math.ceil(daysToGo / 7)));
}
