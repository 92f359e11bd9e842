// A clock time where the house stands, as a moment: also on the two days a year on which clocks change.
import { IANAZone } from 'luxon';

const MINUTE_MS = 60_000;
const DAY_MS = 24 * 60 * MINUTE_MS;

/** Offsets of whole days, by zone and day: those of a season are asked for with every entry of every feed. */
const kept = new Map<string, readonly [before: number, after: number]>();
const MAX_KEPT = 20_000;

/** Minutes ahead of UTC the day before and the day after a day; alike but where clocks change near it. */
function offsetsAbout(zone: IANAZone, day: string): readonly [before: number, after: number] {
  const key = `${zone.name} ${day}`;
  const found = kept.get(key);
  if (found !== undefined) return found;
  const start = Date.parse(`${day}T00:00:00Z`);
  const offsets = [zone.offset(start - DAY_MS), zone.offset(start + 2 * DAY_MS)] as const;
  if (kept.size >= MAX_KEPT) kept.clear();
  kept.set(key, offsets);
  return offsets;
}

/**
 * The moment of a clock time. One that comes twice is the first of the two, one that is left out is read by the
 * offset before the gap (RFC 5545 §3.3.5).
 * @param day ISO day
 * @param time `HH:MM`
 */
export function momentIn(timeZone: string, day: string, time: string): Date {
  const zone = IANAZone.create(timeZone);
  const asUtc = Date.parse(`${day}T${time}Z`);
  const [before, after] = offsetsAbout(zone, day);
  const moments = [before, after]
    .map((offset) => ({ offset, at: asUtc - offset * MINUTE_MS }))
    .filter(({ offset, at }) => before === after || zone.offset(at) === offset)
    .map(({ at }) => at);
  return new Date(moments.length > 0 ? Math.min(...moments) : asUtc - before * MINUTE_MS);
}
