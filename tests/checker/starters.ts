// Rule 11: starters fit their vessels in number and size, on days on which they may be tended.
import type { Case, Placed } from './case.ts';
import { iso, num } from './days.ts';

type Starter = NonNullable<Placed['plan']['starter']>;

function checkOne(c: Case, p: Placed, starter: Starter): void {
  const name = p.plan.brew;
  const { S, calendar } = c;
  const start = num(starter.startOn);
  const chill = starter.chillOn === null ? null : num(starter.chillOn);
  if (starter.litres > c.house.starterGear.maxLitres + 1e-9)
    c.report(
      '11 size',
      name,
      starter.litres - c.house.starterGear.maxLitres,
      'L',
      `A starter of ${starter.litres} L fits no vessel.`,
    );
  if (p.plan.source.kind === 'fresh' && p.yeast?.form === 'dry')
    c.report('11 dry', name, 1, 'starters', `${name} gets dry packs, which take no starter.`);
  if (start < c.today && !p.begun)
    c.report(
      '11 past',
      name,
      c.today - start,
      'days',
      `The starter for ${name} begins on a day that is over.`,
    );
  const days: [string, number | null][] = [
    ['started', start],
    ['chilled', chill],
    ['decanted', chill === null ? null : p.D],
  ];
  for (const [what, day] of days)
    if (
      day !== null &&
      !calendar.isStarterDay(day) &&
      !(what === 'decanted' && calendar.isBrewDay(day))
    )
      c.report(
        '11 day',
        name,
        1,
        'days',
        `The starter for ${name} is ${what} on ${iso(day)}, a day not permitted.`,
      );
  if (starter.growDays < 1 || starter.growDays > 2)
    c.report(
      'dates starter-grows',
      name,
      1,
      'days',
      `A starter grows for one or two days, not ${starter.growDays}.`,
    );
  const decanted = starter.litres > S.decantFromShare * p.brew.volumeL + 1e-9;
  if (decanted !== (chill !== null))
    c.report(
      'dates starter-decant',
      name,
      1,
      'days',
      `The starter for ${name} is ${decanted ? 'not ' : ''}chilled and decanted.`,
    );
  const settles = p.yeast?.flocculation === 'low' ? S.starterSettleDaysLow : S.starterSettleDays;
  const grown = start + starter.growDays;
  if (chill === null ? p.D !== grown : chill < grown || p.D < chill + settles)
    c.report(
      'dates starter-days',
      name,
      1,
      'days',
      `The starter for ${name} has not the days that it takes.`,
    );
  if (starter.initialB < S.starterMinSeedShare * starter.finalB * 0.99)
    c.report(
      'amounts starter-seed',
      name,
      1,
      'B',
      `The starter for ${name} begins with too few cells.`,
    );
  const grams = starter.litres * S.starterGramsPerL;
  if (Math.abs(grams - starter.extractG) > 0.01 * grams)
    c.report(
      'amounts starter-extract',
      name,
      Math.abs(grams - starter.extractG),
      'g',
      `It takes ${grams} g of extract.`,
    );
  const most = starter.initialB + 1.01 * grams * S.starterStirredBPerG;
  if (starter.finalB > most)
    c.report(
      'amounts starter-growth',
      name,
      starter.finalB - most,
      'B',
      `The starter for ${name} cannot grow so much.`,
    );
}

/** A starter holds its vessel from its first day up to the pitch, when the vessel is free again. */
export function checkStarters(c: Case): void {
  const held: { from: number; to: number }[] = [];
  for (const p of c.placed) {
    const { starter } = p.plan;
    if (starter === null || p.plan.done) continue;
    checkOne(c, p, starter);
    held.push({ from: num(starter.startOn), to: p.D });
  }
  for (const day of new Set(held.map((stay) => stay.from))) {
    const over =
      held.filter((stay) => stay.from <= day && day < stay.to).length - c.house.starterGear.vessels;
    if (over > 0)
      c.report(
        '11 vessels',
        iso(day),
        over,
        'starters',
        `${over} starters too many on ${iso(day)}.`,
      );
  }
}
