// How a feed shows its tasks, in words.
import type { Alarm, Feed, FeedLook } from '../../../api/routes/feed-shapes.ts';

export const PLAIN_ALARM: Alarm = { minutesBefore: 30, daysBefore: 1, atTime: '18:00' };

function alarmWords(alarm: Alarm | null, look: FeedLook): string {
  if (alarm === null) return 'no alarms';
  const days =
    alarm.daysBefore === 0
      ? 'on the day'
      : `${alarm.daysBefore} day${alarm.daysBefore === 1 ? '' : 's'} before`;
  const whole = `an alarm at ${alarm.atTime} ${days}`;
  return look.allDay ? whole : `${whole}, or ${alarm.minutesBefore} min before a clock time`;
}

/** `clock times where a task has one · no alarms · litres, °C, SG`. */
export function lookWords({ alarm, look }: Pick<Feed, 'alarm' | 'look'>): string {
  return [
    look.allDay ? 'every task as one of the whole day' : 'clock times where a task has one',
    alarmWords(alarm, look),
    `${look.volume === 'us' ? 'gallons, °F' : 'litres, °C'}, ${look.gravity === 'plato' ? '°P' : 'SG'}`,
  ].join(' · ');
}
