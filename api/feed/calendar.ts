// Entries to the bytes of a calendar (RFC 5545). The library behind it is named here and nowhere else.
import {
  ICalAlarmType,
  type ICalEventData,
  ICalEventStatus,
  ICalEventTransparency,
  default as ical,
} from 'ical-generator';
import { type Task, taskIn } from '../../planner/index.ts';
import { type Alarm, type FeedLook, PLAIN_LOOK } from '../routes/feed-shapes.ts';
import { foldLines } from './fold.ts';
import { momentIn } from './moment.ts';

/** One entry of a calendar: a task with the marks by which a calendar program knows it again. */
export type CalendarEntry = {
  uid: string;
  sequence: number;
  /** When its content last changed; both DTSTAMP and LAST-MODIFIED. */
  changedAt: Date;
  task: Task;
};

export type Calendar = {
  name: string;
  /** Of the house: where clock times of tasks are meant. */
  timeZone: string;
  /** The address that links to tasks are built on, without a slash at its end. */
  base: string;
  entries: readonly CalendarEntry[];
  alarm?: Alarm | null;
  look?: FeedLook;
  /** Names of the house's brews, tanks, yeasts and jars, which no change of units touches. */
  names?: readonly string[];
};

const REFRESH_SECONDS = 4 * 3600;
const MINUTE_MS = 60_000;

/** Control characters and half characters have no place in a calendar; line breaks are escaped later. */
function clean(text: string): string {
  return text
    .replace(/\p{Cc}/gu, (mark) => (mark === '\n' || mark === '\r' ? mark : ' '))
    .replace(/\p{Cs}/gu, '\ufffd');
}

/** TEXT as RFC 5545 §3.3.11 wants it; the library leaves the calendar's own name as it is. */
function escapeText(text: string): string {
  return clean(text)
    .replace(/[\\;,]/g, (mark) => `\\${mark}`)
    .replace(/\r\n|\r|\n/g, '\\n');
}

function list(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [heading, ...lines.map((line) => `- ${line}`), ''];
}

function amountText(amount: Task['amounts'][number]): string {
  return `${amount.what}: ${amount.value} ${amount.unit}`.trim();
}

/** The link to a task's page. */
export function taskAddress(base: string, key: string): string {
  // NOTE: some readers turn %3A back into a colon, and a colon needs no escape here (RFC 3986 §3.5).
  return `${base}/#/tasks/${encodeURIComponent(key).replaceAll('%3A', ':')}`;
}

/** What the entry says when it is opened: all that is needed beside the kettle, without a network. */
export function descriptionOf(task: Task, base: string): string {
  return [
    ...(task.caution === null ? [] : [`Caution: ${task.caution}`, '']),
    ...task.steps.map((step, at) => `${at + 1}. ${step}`),
    ...(task.steps.length === 0 ? [] : ['']),
    ...list('Amounts:', task.amounts.map(amountText)),
    ...list('Have ready:', task.haveReady),
    ...(task.goodLooksLike === '' ? [] : [`Good looks like: ${task.goodLooksLike}`]),
    ...(task.why === '' ? [] : [`Why: ${task.why}`]),
    `Takes about ${task.minutes} min.`,
    '',
    taskAddress(base, task.key),
  ].join('\n');
}

function dayStart(day: string): Date {
  return new Date(`${day}T00:00:00Z`);
}

// NOTE: without a time zone on the calendar the library reads native dates by their UTC fields, so a
// day is handed over as its own midnight in UTC and the zone of the server never shows.
function whenOf(task: Task, timeZone: string): Pick<ICalEventData, 'start' | 'end' | 'allDay'> {
  if (task.time === null) {
    const start = dayStart(task.day);
    return { allDay: true, start, end: new Date(start.getTime() + 24 * 60 * MINUTE_MS) };
  }
  const start = momentIn(timeZone, task.day, task.time);
  const minutes = Math.max(1, task.minutes);
  return { allDay: false, start, end: new Date(start.getTime() + minutes * MINUTE_MS) };
}

/** Seconds before the start (negative: after it) at which an alarm goes off. */
function alarmSeconds(task: Task, alarm: Alarm): number {
  if (task.time !== null) return alarm.minutesBefore * 60;
  const [hours = 0, minutes = 0] = alarm.atTime.split(':').map(Number);
  return alarm.daysBefore * 86_400 - (hours * 3600 + minutes * 60);
}

/** A task as one feed shows it. Told without its clock time, it says the time in words. */
function shownAs(task: Task, look: FeedLook, names: readonly string[]): Task {
  const read = taskIn(task, look, names);
  if (!look.allDay || read.time === null) return read;
  return { ...read, time: null, steps: [`Begin at ${read.time}.`, ...read.steps] };
}

/**
 * The whole calendar as text: CRLF lines folded at 75 octets, no METHOD, the same bytes for the same entries.
 * Source: RFC 5545; the marks that keep an entry in place over updates are §3.8.4.7, §3.8.7.2–4.
 */
export function calendarText(wanted: Calendar): string {
  const { name, timeZone, base, entries, alarm = null, look = PLAIN_LOOK, names = [] } = wanted;
  const calendar = ical({
    name: escapeText(name),
    prodId: { company: 'Barmline', product: 'Yeast tasks', language: 'EN' },
    ttl: REFRESH_SECONDS,
  });
  // NOTE: the library folds a long calendar a hundred times slower than it makes it, so it only ever
  // folds the empty one; the entries go in between unfolded and are folded here.
  const frame = calendar.toString();
  const end = frame.lastIndexOf('END:VCALENDAR');
  const texts: string[] = [];
  for (const entry of entries) {
    const task = shownAs(entry.task, look, names);
    const event = calendar.createEvent({
      id: entry.uid,
      sequence: entry.sequence,
      stamp: entry.changedAt,
      lastModified: entry.changedAt,
      ...whenOf(task, timeZone),
      summary: clean(task.done ? `Done: ${task.title}` : task.title),
      description: { plain: clean(descriptionOf(task, base)) },
      categories: [{ name: task.kind }],
      status: ICalEventStatus.CONFIRMED,
      // A task of a whole day is a reminder: it does not make the brewer look busy.
      transparency:
        task.time === null ? ICalEventTransparency.TRANSPARENT : ICalEventTransparency.OPAQUE,
      url: taskAddress(base, task.key),
    });
    if (alarm !== null && !task.done) {
      event.createAlarm({
        type: ICalAlarmType.display,
        trigger: alarmSeconds(task, alarm),
        description: clean(task.title),
      });
    }
    texts.push(event.toString());
  }
  return foldLines(`${frame.slice(0, end)}${texts.join('')}${frame.slice(end)}\r\n`);
}
