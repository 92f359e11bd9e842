// Never more turns of the kettle in a day than the house can.
import { isoDay } from '../timeline/calendar.ts';
import { type HardRule, plural } from './rule.ts';

export const kettleTurns: HardRule = {
  id: 'kettle-turns',
  title: 'Turns of the kettle',
  level: 'hard',
  unit: 'turns',
  says: 'No day takes more turns of the kettle than the house can; a large brew may run on to the next brew day.',
  check(t, found) {
    if (t.turnsOver > 0) found(t.turnsOver, 0, t.turnsOverDay);
  },
  subject: (_t, f) => isoDay(f.other),
  explain: (t, f) =>
    `${plural(f.amount, 'turn')} more than the kettle's ${t.problem.house.brewsPerDay} a day, first on ${isoDay(f.other)}.`,
  remedy: () => 'Move one of the brews of that day, or raise the turns a day in the house.',
};
