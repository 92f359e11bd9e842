// The server's own time zone must not show in the calendar: the same bytes wherever it stands.
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { readCalendar } from '../../builders/calendar.ts';

const script = fileURLToPath(new URL('./print-calendar.ts', import.meta.url));

function calendarIn(zone: string): string {
  return execFileSync(process.execPath, ['--import', 'tsx', script], {
    env: { ...process.env, TZ: zone },
    encoding: 'utf8',
  });
}

test('a server in Auckland and one in Los Angeles give the same calendar of a house in Dublin', () => {
  const auckland = calendarIn('Pacific/Auckland');
  expect(calendarIn('America/Los_Angeles')).toBe(auckland);
  expect(readCalendar(auckland).events.map(({ start, end }) => [start, end])).toEqual([
    ['2027-03-28', '2027-03-29'],
    // Dublin is an hour ahead of UTC from 01:00 UTC of that day on (EU Directive 2000/84/EC)
    ['2027-03-28T08:00:00Z', '2027-03-28T08:30:00Z'],
    // and back at UTC on 31 October
    ['2027-10-31T23:30:00Z', '2027-11-01T00:00:00Z'],
    ['2027-01-01', '2027-01-02'],
  ]);
});
