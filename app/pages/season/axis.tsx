// The calendar along the top of the picture: months, brew days in red, closed days, today.
import { memo, useMemo } from 'react';
import type { House } from '../../../planner/index.ts';
import { bareMonth, dayNumber, isoDay, monthName, weekdayKey } from '../../parts/days.ts';
import { type Picture, xOfDay } from './geometry.ts';
import { inSight, type Sight } from './sight.ts';

export type CalendarDay = { day: number; x: number; brewDay: boolean; closed: boolean };

/** The days of a picture and what kind of day each is. */
export function calendarDays(picture: Picture, house: House): CalendarDay[] {
  const closed = new Set(house.closed);
  const from = dayNumber(house.from);
  const to = dayNumber(house.to);
  const days: CalendarDay[] = [];
  for (let day = picture.firstDay; day <= picture.lastDay; day += 1) {
    const shut = closed.has(isoDay(day));
    days.push({
      day,
      x: xOfDay(day, picture),
      brewDay: !shut && day >= from && day <= to && house.brewDays.includes(weekdayKey(day)),
      closed: shut,
    });
  }
  return days;
}

/** First days of months within the picture, the first of them cut to where the picture begins. */
export function monthStarts(picture: Picture): { day: number; x: number; width: number }[] {
  const starts: number[] = [picture.firstDay];
  for (let day = picture.firstDay + 1; day <= picture.lastDay; day += 1) {
    if (isoDay(day).endsWith('-01')) starts.push(day);
  }
  return starts.map((day, at) => {
    const end = starts[at + 1] ?? picture.lastDay + 1;
    return { day, x: xOfDay(day, picture), width: (end - day) * picture.pxPerDay };
  });
}

/** The days whose number is written: all, or the first brew day of each week (or of every other), as the room allows. */
export function writtenDays(days: readonly CalendarDay[], pxPerDay: number): CalendarDay[] {
  if (pxPerDay >= 22) return [...days];
  const room = pxPerDay * 7 >= 20 ? 1 : 2;
  const weeks = new Map<number, CalendarDay>();
  for (const one of days.filter((day) => day.brewDay)) {
    // Day 0 was a Thursday: weeks begin on Monday.
    const week = Math.floor((one.day + 3) / 7);
    if (week % room === 0 && !weeks.has(week)) weeks.set(week, one);
  }
  return [...weeks.values()];
}

const WEEKDAY_SHORT = new Intl.DateTimeFormat('en-GB', { weekday: 'short', timeZone: 'UTC' });

export const Axis = memo(function Axis(props: {
  picture: Picture;
  house: House;
  axisHeight: number;
  today: number;
  sight: Sight;
}) {
  const { picture, house, axisHeight, sight } = props;
  const calendar = useMemo(() => calendarDays(picture, house), [picture, house]);
  const days = calendar.filter((one) => inSight(sight, one.x, picture.pxPerDay));
  const todayX = xOfDay(props.today, picture) + picture.pxPerDay / 2;
  const wide = picture.pxPerDay >= 46;
  return (
    <svg className="axis" aria-hidden="true">
      {days
        .filter((one) => one.closed)
        .map((one) => (
          <rect
            key={one.day}
            className="closed-day"
            x={one.x}
            y={axisHeight - 14}
            width={picture.pxPerDay}
            height={picture.height - axisHeight + 14}
          />
        ))}
      {monthStarts(picture).map((month) => (
        <line
          key={month.day}
          className="month-line"
          x1={month.x}
          x2={month.x}
          y1={0}
          y2={picture.height}
        />
      ))}
      {writtenDays(calendar, picture.pxPerDay)
        .filter((one) => inSight(sight, one.x, picture.pxPerDay))
        .map((one) => (
          <text
            key={one.day}
            className={one.closed ? 'day shut' : one.brewDay ? 'day brew-day' : 'day'}
            x={one.x + picture.pxPerDay / 2}
            y={32}
            textAnchor="middle"
          >
            {wide ? `${WEEKDAY_SHORT.format(one.day * 86_400_000)} ` : ''}
            {Number(isoDay(one.day).slice(8))}
          </text>
        ))}
      <line
        className="axis-line"
        x1={0}
        x2={picture.width}
        y1={axisHeight - 14}
        y2={axisHeight - 14}
      />
      <line className="today" x1={todayX} x2={todayX} y1={axisHeight - 14} y2={picture.height} />
      <text
        className="today-word"
        x={todayX}
        y={axisHeight - 4}
        textAnchor={todayX < 30 ? 'start' : 'middle'}
      >
        today
      </text>
    </svg>
  );
});

/** The names of the months; that of the month at the left edge stays in sight. */
export const MonthNames = memo(function MonthNames(props: { picture: Picture; seenFrom: number }) {
  return (
    <svg className="axis" aria-hidden="true">
      {monthStarts(props.picture).map((month) => {
        const x = Math.max(month.x, props.seenFrom) + 6;
        const room = month.x + month.width - x;
        return (
          <text key={month.day} className="month" x={x} y={15}>
            {monthWords(isoDay(month.day), room)}
          </text>
        );
      })}
    </svg>
  );
});

/** A month's name as long as the room allows; '' where not even three letters fit. */
function monthWords(day: string, room: number): string {
  if (room > 110) return monthName(day);
  if (room > 70) return bareMonth(day);
  return room > 30 ? bareMonth(day).slice(0, 3) : '';
}
