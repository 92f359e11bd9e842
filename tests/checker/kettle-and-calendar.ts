// Rule 1: brew days, turns of the kettle, windows, fixed days; and the dates that follow from the brew day.
import type { Case, Placed } from './case.ts';
import { iso, num } from './days.ts';

function turnsWanted(c: Case, p: Placed): number {
  const length = c.house.brewLengthL;
  return length === null ? 1 : Math.max(1, Math.ceil(p.brew.volumeL / length - 1e-9));
}

function checkKettle(c: Case, p: Placed): void {
  const name = p.plan.brew;
  const kettle = p.plan.kettle.map((k) => ({ day: num(k.day), turns: k.turns }));
  const wanted = turnsWanted(c, p);
  const given = kettle.reduce((sum, k) => sum + k.turns, 0);
  if (given !== wanted)
    c.report(
      '1 turns',
      name,
      Math.abs(given - wanted),
      'turns',
      `${name} takes ${wanted} turns, not ${given}.`,
    );
  if (kettle[0]?.day !== p.D)
    c.report('1 first-turn', name, 1, 'brews', `The first turn of ${name} is not on its brew day.`);
  for (const [at, turn] of kettle.entries()) {
    if (!c.calendar.isBrewDay(turn.day))
      c.report(
        '1 brew-day',
        name,
        1,
        'days',
        `${name} is in the kettle on ${iso(turn.day)}, no brew day.`,
      );
    if (turn.day < num(c.house.from) || turn.day > num(c.house.to))
      c.report(
        '1 season',
        name,
        1,
        'days',
        `${name} is in the kettle on ${iso(turn.day)}, outside the season.`,
      );
    const before = kettle[at - 1];
    if (before !== undefined && c.calendar.brewDayAfter(before.day) !== turn.day)
      c.report(
        '1 consecutive',
        name,
        1,
        'days',
        `The turns of ${name} are not on consecutive brew days.`,
      );
  }
}

function checkWindow(c: Case, p: Placed): void {
  const { brew } = p;
  const name = brew.brew;
  const early = (day: string | null | undefined, why: string) => {
    if (day != null && p.D < num(day))
      c.report(
        '1 window',
        name,
        num(day) - p.D,
        'days',
        `${name} is brewed on ${iso(p.D)}; ${why} ${day}.`,
      );
  };
  early(brew.notBefore, 'it may not be brewed before');
  for (const slip of c.facts.notBefore) if (slip.brew === name) early(slip.day, 'it slipped to');
  if (p.D < c.today)
    c.report(
      '1 past',
      name,
      c.today - p.D,
      'days',
      `${name} would be brewed on a day that is over.`,
    );
  if (brew.brewOn !== null && p.D !== num(brew.brewOn))
    c.report(
      '1 fixed-day',
      name,
      Math.abs(p.D - num(brew.brewOn)),
      'days',
      `${name} is fixed on ${brew.brewOn}.`,
    );
  if (brew.readyBy !== null && p.R !== null) {
    const late = p.R - num(brew.readyBy) - c.S.maxLateDays;
    if (late > 0)
      c.report('1 too-late', name, late, 'days', `${name} is later than the house allows.`);
  }
}

/** The dates of the plan against those that the model gives from the brew day. */
function checkDates(c: Case, p: Placed): void {
  const name = p.plan.brew;
  const same = (clause: string, given: string | null, wanted: number | null) => {
    if (wanted !== null && (given === null || num(given) !== wanted))
      c.report(
        `dates ${clause}`,
        name,
        given === null ? 1 : Math.abs(num(given) - wanted),
        'days',
        `${name}: ${clause} is ${given}, by the model ${iso(wanted)}.`,
      );
  };
  same('emptied', p.plan.emptiedOn, p.E);
  same('tank-free', p.plan.tankFreeOn, p.free);
  same('ready', p.plan.readyOn, p.R);
  same('dry-hop', p.plan.dryHopOn, p.brew.dryHopDay === null ? null : p.D + p.brew.dryHopDay);
  if (p.R !== null) {
    const late = p.brew.readyBy === null ? 0 : Math.max(0, p.R - num(p.brew.readyBy));
    if (p.plan.daysLate !== late)
      c.report(
        'dates late',
        name,
        Math.abs(p.plan.daysLate - late),
        'days',
        `${name} is ${late} days late.`,
      );
  }
  const { crashOn } = p.plan;
  if (crashOn === null || p.E === null) return;
  if (num(crashOn) <= p.D || num(crashOn) > p.E)
    c.report('dates crash', name, 1, 'days', `The crash of ${name} is not inside its tank days.`);
  if (p.tank !== undefined && p.tank.minC > c.S.crashC)
    c.report(
      'dates crash-tank',
      name,
      p.tank.minC - c.S.crashC,
      '°C',
      `${p.tank.tank} cannot be crashed.`,
    );
}

/** Rule 1 and the dates of every brew; a brew already brewed counts in the kettle but is not judged. */
export function checkCalendar(c: Case): void {
  const turns = new Map<string, number>();
  const open = new Set<string>();
  for (const p of c.placed) {
    for (const k of p.plan.kettle) {
      turns.set(k.day, (turns.get(k.day) ?? 0) + k.turns);
      if (!p.plan.done) open.add(k.day);
    }
    checkDates(c, p);
    if (p.plan.done) continue;
    checkKettle(c, p);
    checkWindow(c, p);
  }
  for (const [day, count] of turns) {
    const over = count - c.house.brewsPerDay;
    if (over > 0 && open.has(day))
      c.report(
        '1 turns-a-day',
        day,
        over,
        'turns',
        `${count} turns on ${day}; the house can do ${c.house.brewsPerDay}.`,
      );
  }
}
