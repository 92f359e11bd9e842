// The bytes of a calendar, read back by a parser of somebody else. Source of every check: RFC 5545, by section.
import { describe, expect, test } from 'vitest';
import { type CalendarEntry, calendarText } from '../../../api/feed/calendar.ts';
import type { Task } from '../../../planner/index.ts';
import { aTask, readCalendar } from '../../builders/calendar.ts';

const base = 'http://127.0.0.1:8642';
const changedAt = new Date('2027-01-04T08:00:00Z');

function entry(part: Partial<Task> = {}, marks: Partial<CalendarEntry> = {}): CalendarEntry {
  return {
    uid: '0b9f6a9e-5f0f-4f0b-9a55-0c6f6f1c2f11',
    sequence: 0,
    changedAt,
    task: aTask(part),
    ...marks,
  };
}

function textOf(entries: CalendarEntry[], part: Partial<Parameters<typeof calendarText>[0]> = {}) {
  return calendarText({ name: 'Slate Yard', timeZone: 'Europe/Dublin', base, entries, ...part });
}

function onlyEvent(text: string) {
  const [event] = readCalendar(text).events;
  if (event === undefined) throw new Error('no event in the calendar');
  return event;
}

describe('lines (§3.1)', () => {
  const long = 'ü🍺‮'.repeat(60);
  const text = textOf([entry({ title: long, why: 'a'.repeat(400) })], { name: long });

  test('all end in CRLF, the last one too', () => {
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  test('none is longer than 75 octets, and no character is broken', () => {
    const lines = text.split('\r\n');
    for (const line of lines) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(lines.some((line) => Buffer.byteLength(line) > 70)).toBe(true);
    expect(onlyEvent(text).summary).toBe(long);
  });
});

function unescaped(text: string): string {
  return text.replace(/\\(.)/g, (_, mark: string) => (mark === 'n' ? '\n' : mark));
}

describe('text (§3.3.11)', () => {
  test.each([
    ['commas, semicolons, backslashes', 'Best; bitter, C:\\new'],
    ['a line break', 'one\ntwo'],
    ['what looks like another property', 'x\nBEGIN:VEVENT\nUID:evil'],
    ['markup', '<script>alert(1)</script>'],
    ['right-to-left marks', '‮gnirts‬'],
  ])('survives: %s', (_what, title) => {
    const text = textOf([entry({ title, why: title })], { name: title });
    expect(readCalendar(text).events).toHaveLength(1);
    expect(onlyEvent(text).summary).toBe(title);
    expect(onlyEvent(text).description).toContain(title);
    // NAME (RFC 7986 §5.1) and its older form: the library leaves their escaping to its caller, and
    // the parser does not take it off again.
    const { calendar } = readCalendar(text);
    for (const property of ['x-wr-calname', 'name']) {
      expect(unescaped(String(calendar.getFirstPropertyValue(property)))).toBe(title);
    }
  });

  test('control characters and half characters do not get through', () => {
    const event = onlyEvent(textOf([entry({ title: 'a\u0000b\u0007c\ud83dd' })]));
    expect(event.summary).toBe('a b c\ufffdd');
  });
});

describe('days and times', () => {
  test('a task of a day is all-day; it ends the day after (§3.6.1)', () => {
    const event = onlyEvent(textOf([entry({ day: '2027-02-28', time: null })]));
    expect(event).toMatchObject({ allDay: true, start: '2027-02-28', end: '2027-03-01' });
  });

  test.each([
    // 28 March 2027 is the last Sunday of March: from 01:00 UTC Dublin is an hour ahead of UTC.
    ['winter', 'Europe/Dublin', '2027-01-23', '08:00', '2027-01-23T08:00:00Z'],
    ['summer', 'Europe/Dublin', '2027-05-22', '08:00', '2027-05-22T07:00:00Z'],
    ['the day before the change', 'Europe/Dublin', '2027-03-27', '23:30', '2027-03-27T23:30:00Z'],
    ['the day of the change', 'Europe/Dublin', '2027-03-28', '09:00', '2027-03-28T08:00:00Z'],
    [
      'a time that the change leaves out',
      'Europe/Dublin',
      '2027-03-28',
      '01:30',
      '2027-03-28T01:30:00Z',
    ],
    // India is 5 h 30 min ahead of UTC all year.
    ['half-hour offset', 'Asia/Kolkata', '2027-01-23', '08:00', '2027-01-23T02:30:00Z'],
    // Auckland in January is 13 h ahead: the day before in UTC.
    ['the day before in UTC', 'Pacific/Auckland', '2027-01-23', '08:00', '2027-01-22T19:00:00Z'],
    ['leap day', 'Europe/Dublin', '2028-02-29', '08:00', '2028-02-29T08:00:00Z'],
    ["year's end", 'America/New_York', '2027-12-31', '20:00', '2028-01-01T01:00:00Z'],
  ])('a clock time is written in UTC: %s', (_what, timeZone, day, time, start) => {
    const text = textOf([entry({ day, time, minutes: 45 })], { timeZone });
    const event = onlyEvent(text);
    expect(event).toMatchObject({ allDay: false, start });
    expect(new Date(event.end).getTime() - new Date(event.start).getTime()).toBe(45 * 60_000);
    expect(text).not.toContain('TZID');
    expect(text).toMatch(/DTSTART:\d{8}T\d{6}Z\r\n/);
  });

  test('a task that takes no time still ends after it starts', () => {
    const event = onlyEvent(textOf([entry({ time: '08:00', minutes: 0 })]));
    expect(event.start).toBe('2027-01-23T08:00:00Z');
    expect(event.end).toBe('2027-01-23T08:01:00Z');
  });
});

describe('marks by which a program knows an entry again', () => {
  test('UID, SEQUENCE and both stamps are those of the entry', () => {
    const event = onlyEvent(textOf([entry({}, { sequence: 3 })]));
    expect(event).toMatchObject({
      uid: '0b9f6a9e-5f0f-4f0b-9a55-0c6f6f1c2f11',
      sequence: 3,
      stamp: '2027-01-04T08:00:00Z',
      lastModified: '2027-01-04T08:00:00Z',
    });
  });

  test('it is a published calendar, not an invitation: no METHOD', () => {
    const { calendar } = readCalendar(textOf([entry()]));
    expect(calendar.getFirstPropertyValue('method')).toBeNull();
    expect(calendar.getFirstPropertyValue('version')).toBe('2.0');
    expect(calendar.getFirstPropertyValue('prodid')).toContain('Barmline');
  });

  test('the same entries are the same bytes', () => {
    expect(textOf([entry()])).toBe(textOf([entry()]));
  });
});

test('an entry carries all that is needed beside the kettle', () => {
  const task = aTask();
  const { description, url } = onlyEvent(textOf([entry()]));
  for (const said of [
    ...task.steps,
    'Settled slurry: 288 mL',
    '2 jars',
    task.goodLooksLike,
    task.why,
    String(task.caution),
    'about 30 min',
    `${base}/#/tasks/harvest:Millrace`,
  ]) {
    expect(description).toContain(said);
  }
  expect(url).toBe(`${base}/#/tasks/harvest:Millrace`);
  // The caution comes before the first step.
  expect(description.indexOf('burst')).toBeLessThan(description.indexOf('Chill.'));
});

test('a done task says so', () => {
  expect(onlyEvent(textOf([entry({ done: true })])).summary).toMatch(/^Done: /);
});

describe('how a feed shows its tasks', () => {
  const timed = entry({ time: '09:00', title: 'Brew: 20 L at 1.040', steps: ['Boil.'] });
  const plain = { allDay: false, volume: 'metric', gravity: 'sg' } as const;

  test('as whole days: no clock time is left but the one that it says in words', () => {
    const text = textOf([timed], { look: { ...plain, allDay: true } });
    const event = onlyEvent(text);
    expect(event).toMatchObject({ allDay: true, start: '2027-01-23', end: '2027-01-24' });
    expect(event.description).toContain('1. Begin at 09:00.\n2. Boil.');
  });

  test('as whole days: the alarm is that of a whole day', () => {
    const alarm = { minutesBefore: 30, daysBefore: 1, atTime: '18:30' };
    const event = onlyEvent(textOf([timed], { alarm, look: { ...plain, allDay: true } }));
    expect(event.alarms).toEqual(['-PT5H30M']);
  });

  test('in other units: 20 L are 5.28 US gallons, SG 1.040 is 10 °P', () => {
    const look = { ...plain, volume: 'us', gravity: 'plato' } as const;
    expect(onlyEvent(textOf([timed], { look })).summary).toBe('Brew: 5.28 gal at 10 °P');
    expect(onlyEvent(textOf([timed], { look })).description).toContain('Settled slurry: 9.7 fl oz');
  });
});

describe('alarms', () => {
  const alarm = { minutesBefore: 30, daysBefore: 1, atTime: '18:30' };

  test('there are none unless they are asked for', () => {
    expect(textOf([entry(), entry({ time: '08:00' })])).not.toContain('VALARM');
  });

  test('with a clock time: so many minutes before', () => {
    expect(onlyEvent(textOf([entry({ time: '08:00' })], { alarm })).alarms).toEqual(['-PT30M']);
  });

  test('of a whole day: at that time, so many days before', () => {
    // from midnight of the day back to 18:30 of the day before: 5 h 30 min
    expect(onlyEvent(textOf([entry()], { alarm })).alarms).toEqual(['-PT5H30M']);
    const sameDay = { ...alarm, daysBefore: 0 };
    expect(onlyEvent(textOf([entry()], { alarm: sameDay })).alarms).toEqual(['PT18H30M']);
  });

  test('not for what is done', () => {
    expect(onlyEvent(textOf([entry({ done: true })], { alarm })).alarms).toEqual([]);
  });
});
