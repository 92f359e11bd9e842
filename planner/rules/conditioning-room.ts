// No more beer conditioning at once than there is room for, where the house gives one.
import { isoDay } from '../timeline/calendar.ts';
import type { HardRule } from './rule.ts';

export const conditioningRoom: HardRule = {
  id: 'conditioning-room',
  title: 'Conditioning room',
  level: 'hard',
  unit: 'litres',
  says: 'No more beer conditions at once than the house has room for.',
  check(t, found) {
    const room = t.problem.house.conditioningRoomL;
    if (room === null) return;
    let worst = 0;
    let onDay = 0;
    // the load can only peak on a day on which some beer comes in
    for (let i = 0; i < t.orderCount; i++) {
      const day = t.emptied[t.order[i] as number] as number;
      if (day < t.problem.today) continue;
      let load = 0;
      for (let j = 0; j < t.orderCount; j++) {
        const b = t.order[j] as number;
        if ((t.emptied[b] as number) <= day && day < (t.ready[b] as number)) {
          load += t.problem.brews[b]?.volumeL ?? 0;
        }
      }
      if (load - room > worst) {
        worst = load - room;
        onDay = day;
      }
    }
    if (worst > 1e-9) found(Math.ceil(worst), 0, onDay);
  },
  subject: (_t, f) => isoDay(f.other),
  explain: (t, f) =>
    `On ${isoDay(f.other)} there are ${f.amount} L more to condition than the room of ${t.problem.house.conditioningRoomL} L.`,
  remedy: () => 'Spread the brews, or give the house more conditioning room.',
};
