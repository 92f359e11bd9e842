// Clocks that change, move or stand elsewhere: daylight saving both ways, leap day, year's end, half-hour zones, a clock set wrong.
//
// Dates of change: Ireland, EU Directive 2000/84/EC (01:00 UTC on the last Sundays of March and October); South Australia,
// Lord Howe, India and Nepal, the IANA time zone database. What a time means that comes twice or never: RFC 5545 §3.3.5.
import { afterEach, describe, expect, test, vi } from 'vitest';
import { calendarText } from '../../../api/feed/calendar.ts';
import { todayIn } from '../../../api/runs/planning.ts';
import { openApp } from '../../builders/app.ts';
import { aTask, readCalendar } from '../../builders/calendar.ts';
import { aPlan, quill } from '../../builders/plan.ts';

type When = { day: string; time?: string; minutes?: number };

/** Start and end of one task as ical.js reads them. */
function shown(timeZone: string, when: When): [string, string] {
  const text = calendarText({
    name: 'Clocks',
    timeZone,
    base: 'http://127.0.0.1:8642',
    entries: [
      {
        uid: '6f0a6a52-6a6a-4d3c-9d5a-0123456789ab',
        sequence: 0,
        changedAt: new Date('2027-01-01T00:00:00Z'),
        task: aTask({ time: null, minutes: 60, ...when }),
      },
    ],
  });
  const [event] = readCalendar(text).events;
  return [event?.start ?? '', event?.end ?? ''];
}

describe('daylight saving in Dublin', () => {
  test('spring: the same clock time is an hour earlier in UTC from the day of the change on', () => {
    const at = (day: string) => shown('Europe/Dublin', { day, time: '09:00' })[0];
    expect(['2027-03-27', '2027-03-28'].map(at)).toEqual([
      '2027-03-27T09:00:00Z',
      '2027-03-28T08:00:00Z',
    ]);
  });

  test('spring: the hour that is left out is read by the offset before the gap', () => {
    // 01:30 does not come; before the gap Dublin is at UTC, so it is 01:30Z, which clocks there show as 02:30.
    expect(shown('Europe/Dublin', { day: '2027-03-28', time: '01:30' })).toEqual([
      '2027-03-28T01:30:00Z',
      '2027-03-28T02:30:00Z',
    ]);
  });

  test('autumn: the same clock time is an hour later in UTC from the day of the change on', () => {
    const at = (day: string) => shown('Europe/Dublin', { day, time: '09:00' })[0];
    expect(['2027-10-30', '2027-10-31'].map(at)).toEqual([
      '2027-10-30T08:00:00Z',
      '2027-10-31T09:00:00Z',
    ]);
  });

  test('autumn: in the hour that comes twice the first is meant, and the end stays after the start', () => {
    // 01:30 comes at 00:30Z (summer time) and again at 01:30Z.
    expect(shown('Europe/Dublin', { day: '2027-10-31', time: '01:30' })).toEqual([
      '2027-10-31T00:30:00Z',
      '2027-10-31T01:30:00Z',
    ]);
  });

  afterEach(() => {
    vi.useRealTimers();
  });
  test.each(['2027-01-15T12:00:00Z', '2027-07-15T12:00:00Z'])(
    'autumn: the first is meant whatever the season is that asks, here on %s',
    (now) => {
      vi.useFakeTimers({ now: new Date(now), toFake: ['Date'] });
      expect(shown('Europe/Dublin', { day: '2027-10-31', time: '01:30' })[0]).toBe(
        '2027-10-31T00:30:00Z',
      );
    },
  );

  test.each(['2027-03-28', '2027-10-31'])(
    'a whole day stays one day on %s, 23 or 25 hours long',
    (day) => {
      const next = day === '2027-03-28' ? '2027-03-29' : '2027-11-01';
      expect(shown('Europe/Dublin', { day })).toEqual([day, next]);
    },
  );
});

describe('daylight saving of the south, where spring is in October', () => {
  test('Adelaide goes from +09:30 to +10:30 on 3 October 2027, and back on 4 April', () => {
    const at = (day: string) => shown('Australia/Adelaide', { day, time: '09:00' })[0];
    expect(['2027-10-02', '2027-10-03', '2027-04-03', '2027-04-04'].map(at)).toEqual([
      '2027-10-01T23:30:00Z',
      '2027-10-02T22:30:00Z',
      '2027-04-02T22:30:00Z',
      '2027-04-03T23:30:00Z',
    ]);
  });

  test('Lord Howe moves by half an hour, from +10:30 to +11:00', () => {
    const at = (day: string) => shown('Australia/Lord_Howe', { day, time: '09:00' })[0];
    expect(['2027-10-02', '2027-10-03'].map(at)).toEqual([
      '2027-10-01T22:30:00Z',
      '2027-10-02T22:00:00Z',
    ]);
  });
});

describe('a zone with half an hour', () => {
  test.each([
    ['Asia/Kolkata', '2027-01-23T03:30:00Z'],
    // a quarter of an hour
    ['Asia/Kathmandu', '2027-01-23T03:15:00Z'],
  ])('09:00 in %s is %s', (zone, start) => {
    expect(shown(zone, { day: '2027-01-23', time: '09:00' })[0]).toBe(start);
  });

  test("the house's day begins at its own midnight, 18:30 in UTC for India", () => {
    expect(todayIn('Asia/Kolkata', new Date('2027-01-03T18:29:59Z'))).toBe('2027-01-03');
    expect(todayIn('Asia/Kolkata', new Date('2027-01-03T18:30:00Z'))).toBe('2027-01-04');
  });
});

describe('leap day', () => {
  test('28 February ends with the 29th, the 29th with 1 March, and only in a leap year', () => {
    const end = (day: string) => shown('Europe/Dublin', { day })[1];
    expect(['2028-02-28', '2028-02-29', '2027-02-28'].map(end)).toEqual([
      '2028-02-29',
      '2028-03-01',
      '2027-03-01',
    ]);
  });

  test('a task over its midnight ends on it', () => {
    expect(shown('Europe/Dublin', { day: '2028-02-28', time: '23:30' })).toEqual([
      '2028-02-28T23:30:00Z',
      '2028-02-29T00:30:00Z',
    ]);
  });
});

describe("year's end", () => {
  test('31 December ends with 1 January, as a day and over midnight', () => {
    expect(shown('Europe/Dublin', { day: '2027-12-31' })).toEqual(['2027-12-31', '2028-01-01']);
    expect(shown('Europe/Dublin', { day: '2027-12-31', time: '23:30' })).toEqual([
      '2027-12-31T23:30:00Z',
      '2028-01-01T00:30:00Z',
    ]);
  });

  test("the new year begins where the house stands, not where the clock's zone is", () => {
    const moment = new Date('2027-12-31T10:30:00Z');
    // Auckland has summer time, +13:00; Honolulu is at -10:00 all year
    expect(todayIn('Pacific/Auckland', moment)).toBe('2027-12-31');
    expect(todayIn('Pacific/Auckland', new Date('2027-12-31T11:00:00Z'))).toBe('2028-01-01');
    expect(todayIn('Pacific/Honolulu', new Date('2028-01-01T09:59:59Z'))).toBe('2027-12-31');
  });
});

describe('the clock of the machine moved', () => {
  const later = () =>
    aPlan({
      brews: [quill({ day: '2027-02-06', emptiedOn: '2027-02-20', dryHopOn: '2027-02-14' })],
    });

  const BEFORE = '11111111-1111-4111-8111-111111111111';
  const AFTER = '22222222-2222-4222-8222-222222222222';

  test.each([
    ['ten years back', '2017-01-04T08:00:00Z'],
    ['ten years on', '2037-01-04T08:00:00Z'],
  ])('%s and right again: plans stand in the order in which they came', async (_, wrong) => {
    const open = await openApp();
    try {
      open.setNow(wrong);
      await open.putInForce(later(), BEFORE);
      open.setNow('2027-01-04T08:05:00Z');
      await open.putInForce(aPlan(), AFTER);
      const history = await open.ask('GET', '/api/history');
      const { plans } = history.json as { plans: { id: string; inForce: boolean }[] };
      expect(plans.map(({ id }) => id).slice(0, 2)).toEqual([AFTER, BEFORE]);
      expect(plans.map(({ inForce }) => inForce)).toEqual([true, false, false]);
    } finally {
      await open.close();
    }
  });

  test.each([
    ['ten years back', '2017-01-04T08:00:00Z'],
    ['ten years on', '2037-01-04T08:00:00Z'],
  ])('%s: the newest plans are kept, and the feed still reads', async (_, wrong) => {
    const open = await openApp();
    try {
      type Feed = { made: { address: string } };
      const { made } = (await open.ask('POST', '/api/feeds', {})).json as Feed;
      open.setNow(wrong);
      // As many as are kept to look back at, and some more: those that go are the oldest.
      for (let at = 0; at < 55; at += 1) await open.putInForce(at % 2 === 0 ? later() : aPlan());
      open.setNow('2027-01-04T08:05:00Z');
      await open.putInForce(aPlan(), BEFORE);
      await open.putInForce(later(), AFTER);
      const history = await open.ask('GET', '/api/history');
      const { plans } = history.json as { plans: { id: string }[] };
      expect(plans.map(({ id }) => id).slice(0, 2)).toEqual([AFTER, BEFORE]);
      expect(plans).toHaveLength(51);
      const feed = await open.ask('GET', new URL(made.address).pathname);
      expect(readCalendar(feed.text).events.length).toBeGreaterThan(5);
    } finally {
      await open.close();
    }
  });
});
