// A subscriber of the calendar: polls the feed, reads it with ical.js, and holds it to what calendars may count on.
import { type ReadEvent, readCalendar } from '../builders/calendar.ts';

/** Done tasks stay for 180 days; the look is taken at some time of the last of them. */
const HISTORY_DAYS = 179;
const DAY_MS = 86_400_000;

/** Entries that differ between two looks, by the link of their task. */
export type Differences = {
  added: string[];
  gone: string[];
  /** Anything about it, its words included. */
  changed: string[];
  /** Of these, the ones that stand at another time now. */
  moved: string[];
};

/** Everything that a calendar program shows of an entry. */
const shown = (event: ReadEvent): string =>
  JSON.stringify([event.summary, event.description, event.start, event.end, event.alarms]);

export class Subscriber {
  /** By the link to the task, which names it. */
  private held = new Map<string, ReadEvent>();
  /** The last that was seen of every task, those that left the calendar included. */
  private readonly ever = new Map<string, ReadEvent>();
  readonly violations: string[] = [];
  polls = 0;
  /** Tasks that left the calendar and came back. */
  returned = 0;

  constructor(private readonly fetchText: () => Promise<string>) {}

  /** Looks at the feed and at what differs from the look before. @param when begins with the day */
  async poll(when: string): Promise<Differences> {
    const { events } = readCalendar(await this.fetchText());
    this.polls += 1;
    const now = new Map(events.map((event) => [linkOf(event), event]));
    const say = (text: string) => this.violations.push(`${when}: ${text}`);
    if (now.size !== events.length) say('two entries of one task');
    if (new Set(events.map(({ uid }) => uid)).size !== events.length) say('a UID twice');
    const differences: Differences = { added: [], gone: [], changed: [], moved: [] };
    for (const [link, event] of now) {
      const before = this.held.get(link);
      if (before === undefined) {
        differences.added.push(link);
        const left = this.ever.get(link);
        if (left !== undefined) {
          this.returned += 1;
          if (left.uid !== event.uid) say(`${link} came back under another UID`);
          if (event.sequence <= left.sequence) say(`${link} came back under its old SEQUENCE`);
          if (event.lastModified < left.lastModified) say(`${link} came back under an old stamp`);
        }
      } else {
        if (before.uid !== event.uid) say(`the UID of ${link} changed`);
        if (event.sequence < before.sequence) say(`the SEQUENCE of ${link} went back`);
        if (event.lastModified < before.lastModified) say(`LAST-MODIFIED of ${link} went back`);
        const moved = before.start !== event.start || before.end !== event.end;
        if (moved && event.sequence <= before.sequence) say(`${link} moved under its old SEQUENCE`);
        if (moved) differences.moved.push(link);
        if (shown(before) !== shown(event)) differences.changed.push(link);
        else if (before.sequence !== event.sequence || before.lastModified !== event.lastModified)
          say(`${link} did not change, its marks did`);
      }
      this.ever.set(link, event);
    }
    for (const [link, event] of this.held) {
      if (now.has(link)) continue;
      differences.gone.push(link);
      const young = Date.parse(when.slice(0, 10)) - event.startUnix * 1000 < HISTORY_DAYS * DAY_MS;
      if (event.summary.startsWith('Done: ') && young) say(`${link} was done and is gone`);
    }
    this.held = now;
    return differences;
  }

  /** How many entries there are of the tasks of these brews. */
  countOf(brews: ReadonlySet<string>): number {
    return [...this.held.keys()].filter((link) => brews.has(brewOf(link))).length;
  }
}

/** The task's key, as the entry's last line links to it. */
function linkOf({ description }: ReadEvent): string {
  return decodeURIComponent(description.split('/#/tasks/').at(-1) ?? '');
}

/** The brew that a task's key names; generated names hold no colon. */
export const brewOf = (key: string): string => key.split(':')[1] ?? '';
