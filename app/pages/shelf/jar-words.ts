// Sentences about a jar that list, sheet and label share, and the thread that is drawn for it.
import type { Range, StandingJar } from '../../../planner/index.ts';
import { dayNumber, shortDay } from '../../parts/days.ts';
import { count, percent } from '../../parts/words.ts';

/** '92 % (85 to 96 %)' */
export const shareWords = (share: Range): string =>
  `${percent(share.likely)} (${Math.round(share.low * 100)}\u2013${percent(share.high)})`;

/** How long it has stood: 'filled today', '1 day old', '12 days old'. */
export function ageWords(jar: Pick<StandingJar, 'filledOn'>, today: string): string {
  const days = dayNumber(today) - dayNumber(jar.filledOn);
  return days <= 0 ? 'filled today' : `${count(days, 'day')} old`;
}

/** What becomes of it. */
export function goesWords(jar: StandingJar): string {
  if (jar.state === 'suspect') return 'not pitched';
  if (jar.for !== null && jar.leavesOn !== null) return `for ${jar.for}, ${shortDay(jar.leavesOn)}`;
  if (jar.untilPassed !== undefined) return reserveWords(jar.untilPassed, jar.yeast);
  if (jar.kept) return 'spare';
  return jar.inPlan ? 'for no brew' : 'the plan does not count on it yet';
}

/** Until when a jar of reserve is kept, and what for. */
export const reserveWords = (untilPassed: string, yeast: string): string =>
  `in reserve for ${yeast} until ${untilPassed} is tasted and passed`;

/** Billion cells, in two figures: more is not known. */
export const cellsWords = (cellsB: number): string =>
  `${Number(cellsB.toPrecision(2))}\u00a0billion cells`;

export type Ribbon = { body: string; todayX: number; enters: number | null; ends: number };

const HALF = 6;

/** Half the thickness of a thread by its share alive, as in the season's picture: half dead is a hair. */
const half = (share: number) => Math.max(0.5, HALF * Math.max(0, share * 2 - 1));

/** A jar's time in the cold as a thread that thins with what dies in it: from its filling to its pitch or its last day. */
export function ribbonOf(
  jar: StandingJar,
  today: string,
  width: number,
  middle: number,
): Ribbon | null {
  const { alive } = jar;
  if (alive === null) return null;
  const from = dayNumber(jar.filledOn);
  const now = dayNumber(alive.on);
  const drawn = jar.for !== null && jar.leavesOn !== null ? dayNumber(jar.leavesOn) : null;
  const last = Math.max(dayNumber(jar.useBy), drawn ?? 0, dayNumber(today), from + 1);
  const x = (day: number) => (width * (day - from)) / (last - from);
  const then = jar.aliveThen?.likely ?? null;
  // first-order loss between the two days that are known; before them it is led on backwards, never above all alive
  const rate =
    then !== null && drawn !== null && drawn > now
      ? Math.log(alive.share.likely / Math.max(then, 1e-9)) / (drawn - now)
      : 0;
  const share = (day: number) => Math.min(1, alive.share.likely * Math.exp(-rate * (day - now)));
  const end = drawn ?? last;
  const days = Array.from({ length: 9 }, (_, at) => from + ((end - from) * at) / 8);
  const edge = (side: 1 | -1) => (day: number) =>
    `${x(day).toFixed(1)} ${(middle + side * half(share(day))).toFixed(1)}`;
  const body = `M${days.map(edge(-1)).join('L')}L${days.toReversed().map(edge(1)).join('L')}Z`;
  return {
    body,
    todayX: x(dayNumber(today)),
    enters: drawn === null ? null : x(drawn),
    ends: x(end),
  };
}
