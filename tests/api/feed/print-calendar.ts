// Run by server-zone.test.ts under other time zones: prints a calendar made from fixed tasks.
import { calendarText } from '../../../api/feed/calendar.ts';
import { aTask } from '../../builders/calendar.ts';

const entries = [
  aTask({ key: 'a', day: '2027-03-28' }),
  aTask({ key: 'b', day: '2027-03-28', time: '09:00' }),
  aTask({ key: 'c', day: '2027-10-31', time: '23:30' }),
  aTask({ key: 'd', day: '2027-01-01' }),
].map((task, index) => ({
  uid: `00000000-0000-4000-8000-00000000000${index}`,
  sequence: index,
  changedAt: new Date('2027-01-04T08:00:00Z'),
  task,
}));

process.stdout.write(
  calendarText({
    name: 'Slate Yard',
    timeZone: 'Europe/Dublin',
    base: 'http://127.0.0.1:8642',
    entries,
  }),
);
