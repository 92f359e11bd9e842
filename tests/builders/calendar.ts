// Reads calendars with a parser that the project did not write (ical.js), and tasks for entries by hand.
import ICAL from 'ical.js';
import type { Task } from '../../planner/index.ts';

export function aTask(part: Partial<Task> = {}): Task {
  return {
    key: 'harvest:Millrace',
    kind: 'harvest',
    day: '2027-01-23',
    minutes: 30,
    time: null,
    brew: 'Millrace',
    title: 'Harvest Millrace: about 290 mL into 2 jars',
    steps: ['Chill.', 'Rinse the jars; keep them loose.'],
    amounts: [{ what: 'Settled slurry', value: 288, unit: 'mL' }],
    haveReady: ['2 jars'],
    goodLooksLike: 'Creamy, not brown.',
    why: 'Quill takes it on 30 January.',
    caution: 'Never close a jar tightly: it can burst.',
    done: false,
    ...part,
  };
}

export type ReadEvent = {
  uid: string;
  sequence: number;
  summary: string;
  description: string;
  /** As written: `2027-01-23` or `2027-01-23T08:00:00Z`. */
  start: string;
  end: string;
  allDay: boolean;
  /** Of the start, seconds since 1970. */
  startUnix: number;
  stamp: string;
  lastModified: string;
  categories: string;
  url: string;
  alarms: string[];
};

/** Parses a calendar strictly and reads its events. @throws what ical.js throws */
export function readCalendar(text: string): { calendar: ICAL.Component; events: ReadEvent[] } {
  const calendar = new ICAL.Component(ICAL.parse(text));
  const events = calendar.getAllSubcomponents('vevent').map((component) => {
    const event = new ICAL.Event(component, { strictExceptions: true });
    const value = (name: string) => String(component.getFirstPropertyValue(name) ?? '');
    return {
      uid: event.uid,
      sequence: Number(value('sequence')),
      summary: event.summary,
      description: event.description,
      start: event.startDate.toString(),
      end: event.endDate.toString(),
      allDay: event.startDate.isDate,
      startUnix: event.startDate.toUnixTime(),
      stamp: value('dtstamp'),
      lastModified: value('last-modified'),
      categories: value('categories'),
      url: value('url'),
      alarms: component
        .getAllSubcomponents('valarm')
        .map((alarm) => String(alarm.getFirstPropertyValue('trigger'))),
    };
  });
  return { calendar, events };
}
