// Checks of the brews: amounts and days of one row, and whether the house can hold it at all.

import { dayNumber, isoDay } from '../../timeline/calendar.ts';
import type { Brew } from '../house.ts';
import { resolveSettings } from '../settings.ts';
import type { Loose } from './draft.ts';
import type { Report } from './report.ts';
import { checkYeastIsKnown } from './rows.ts';
import { isSearchable, nextBrewDay } from './season.ts';

type Row = Loose<Brew>;

function checkGravities(report: Report, brew: Row, at: number): void {
  const { og, fg } = brew;
  const row = report.row('brews', at);
  if (og !== undefined && og <= 1) {
    report.say({
      code: 'gravity-without-extract',
      at: ['brews', at, 'og'],
      value: og,
      bound: 'above 1.000',
      message: `${report.field('brews', at, 'og')} of ${row} is ${og}: a wort is heavier than water.`,
      remedy: 'Write the gravity before fermentation, such as 1.048.',
    });
  } else if (og !== undefined && fg !== undefined && fg >= og) {
    const ogField = report.field('brews', at, 'og');
    const fgField = report.field('brews', at, 'fg');
    report.say({
      code: 'gravities-reversed',
      at: ['brews', at, 'fg'],
      value: fg,
      bound: `below ${og} (${ogField})`,
      message: `${fgField} of ${row} is ${fg}, not below its ${ogField} of ${og}: nothing would ferment.`,
      remedy: `Exchange ${ogField} and ${fgField}, or correct one of them.`,
    });
  }
}

/** Days after the pitch lie within the days in the tank. */
function checkTankDays(report: Report, brew: Row, at: number): void {
  const { tankDays } = brew;
  if (tankDays === undefined) return;
  const limits = [
    ['dryHopDay', brew.dryHopDay, tankDays - 1],
    ['harvestDay', brew.harvestDay, tankDays],
  ] as const;
  for (const [key, day, limit] of limits) {
    if (day === null || day === undefined || day <= limit) continue;
    const field = report.field('brews', at, key);
    const tankField = report.field('brews', at, 'tankDays');
    report.say({
      code: 'day-after-the-tank',
      at: ['brews', at, key],
      value: day,
      bound: `at most ${limit} (${tankField} is ${tankDays})`,
      message: `${field} of ${report.row('brews', at)} is ${day} days after the pitch, but the beer leaves the tank after ${tankDays}.`,
      remedy: `Give at most ${limit}, or more ${tankField}.`,
    });
  }
}

function sayOutOfOrder(
  report: Report,
  at: number,
  [key, day]: readonly [string, string],
  [otherKey, other]: readonly [string, string],
  relation: 'before' | 'after',
): void {
  const field = report.field('brews', at, key);
  const inRow = otherKey === 'notBefore' || otherKey === 'readyBy';
  const otherField = inRow ? report.field('brews', at, otherKey) : report.field(otherKey);
  const whose = inRow ? `its ${otherField}` : `the season’s “${otherField}”`;
  report.say({
    code: 'days-out-of-order',
    at: ['brews', at, key],
    value: day,
    bound: `${other} (${otherField}) or ${relation === 'before' ? 'later' : 'earlier'}`,
    message: `${field} of ${report.row('brews', at)} is ${day}, ${relation} ${whose} of ${other}.`,
    remedy: inRow
      ? `Correct ${field} or ${otherField}.`
      : `Correct ${field}, or move the season’s “${otherField}”.`,
  });
}

/** The brew's own days stand in order and inside the season. True when they do. */
function checkDayOrder(report: Report, brew: Row, at: number): boolean {
  const { from, to } = report.draft.head;
  const { notBefore, readyBy, brewOn } = brew;
  const pairs = [
    [['notBefore', notBefore], ['readyBy', readyBy], 'after'],
    [['brewOn', brewOn], ['notBefore', notBefore], 'before'],
    [['brewOn', brewOn], ['readyBy', readyBy], 'after'],
    [['brewOn', brewOn], ['from', from], 'before'],
    [['brewOn', brewOn], ['to', to], 'after'],
    [['notBefore', notBefore], ['to', to], 'after'],
    [['readyBy', readyBy], ['from', from], 'before'],
  ] as const;
  let sound = true;
  for (const [[key, day], [otherKey, other], relation] of pairs) {
    if (!day || !other) continue;
    if (relation === 'before' ? day >= other : day <= other) continue;
    sound = false;
    sayOutOfOrder(report, at, [key, day], [otherKey, other], relation);
  }
  return sound;
}

/** The days that the brew allows hold a brew day, and one that is early enough. */
function checkWindow(report: Report, brew: Row, at: number): void {
  const { from, to, kind, rules } = report.draft.head;
  const { notBefore, readyBy, brewOn, tankDays, conditionDays } = brew;
  if (!from || !to || !isSearchable(from, to)) return;
  if (notBefore === undefined || readyBy === undefined) return;
  const row = report.row('brews', at);
  if (brewOn) {
    if (nextBrewDay(report, brewOn, brewOn) === null) {
      report.say({
        code: 'fixed-day-no-brew-day',
        at: ['brews', at, 'brewOn'],
        value: brewOn,
        bound: 'an open brew day',
        message: `${report.field('brews', at, 'brewOn')} of ${row} is ${brewOn}, which is no brew day of this house or is closed.`,
        remedy: 'Move it to a brew day; otherwise it stays and the plan shows the rule as broken.',
        level: 'warning',
      });
    }
    return;
  }
  const start = notBefore !== null && notBefore > from ? notBefore : from;
  const end = readyBy !== null && readyBy < to ? readyBy : to;
  const first = nextBrewDay(report, start, end);
  if (first === undefined) return;
  if (first === null) {
    // a season without any brew day is said once, not for every brew
    if (nextBrewDay(report, from, to) === null) return;
    const key = notBefore !== null ? 'notBefore' : 'readyBy';
    report.say({
      code: 'no-brew-day',
      at: ['brews', at, key],
      value: `${start} to ${end}`,
      bound: 'a stretch with an open brew day',
      message: `The days on which ${row} may be brewed, ${start} to ${end}, hold no open brew day of this house.`,
      remedy: `Give it an earlier ${report.field('brews', at, 'notBefore')} or a later ${report.field('brews', at, 'readyBy')}, or open a day.`,
    });
    return;
  }
  if (readyBy === null || kind === undefined || !tankDays || conditionDays === undefined) return;
  const limit = resolveSettings(kind, rules ?? {}).maxLateDays;
  const ready = dayNumber(first) + tankDays + conditionDays;
  const late = ready - dayNumber(readyBy);
  if (late <= limit) return;
  report.say({
    code: 'ready-too-late',
    at: ['brews', at, 'readyBy'],
    value: readyBy,
    bound: `${isoDay(ready - limit)} or later`,
    message: `${row} cannot be ready before ${isoDay(ready)}, ${late} days after its ${report.field('brews', at, 'readyBy')} of ${readyBy}; this house allows ${limit}, so it will be left out.`,
    remedy: `Want it by ${isoDay(ready)}, or brew it earlier or shorter.`,
    level: 'warning',
  });
}

type Temperatures = { minC?: number | undefined; maxC?: number | undefined };

/** Certainly outside a range; false while the range is not known or is reversed. */
const isTooFar = ({ minC, maxC }: Temperatures, fermentC: number) =>
  minC !== undefined && maxC !== undefined && minC <= maxC && (fermentC < minC || fermentC > maxC);

/** Some tank takes the volume; and one of those holds the temperature. */
function checkTankFits(report: Report, brew: Row, at: number): void {
  const { volumeL, fermentC } = brew;
  const { tanks } = report.draft;
  const known = tanks.flatMap(({ minFillL, maxFillL, minC, maxC }) =>
    minFillL === undefined || maxFillL === undefined || minFillL > maxFillL
      ? []
      : [{ minFillL, maxFillL, minC, maxC }],
  );
  if (volumeL === undefined || known.length === 0 || known.length < tanks.length) return;
  const row = report.row('brews', at);
  const field = report.field('brews', at, 'volumeL');
  const fitting = known.filter((tank) => tank.minFillL <= volumeL && volumeL <= tank.maxFillL);
  if (fitting.length === 0) {
    const largest = Math.max(...known.map((tank) => tank.maxFillL));
    const smallest = Math.min(...known.map((tank) => tank.minFillL));
    const between = volumeL >= smallest && volumeL <= largest;
    const fills = known.map((tank) => `${tank.minFillL}–${tank.maxFillL}`);
    report.say({
      code: 'fits-no-tank',
      at: ['brews', at, 'volumeL'],
      value: volumeL,
      bound: between ? `one of ${[...new Set(fills)].join(', ')} L` : `${smallest} to ${largest} L`,
      message: between
        ? `${field} of ${row} is ${volumeL} L; no tank takes just that.`
        : `${field} of ${row} is ${volumeL} L; the tanks of this house take ${smallest} to ${largest} L.`,
      remedy: `Correct ${field}, split the batch, or correct the fills of a tank.`,
    });
    return;
  }
  if (fermentC === undefined || fitting.some((tank) => !isTooFar(tank, fermentC))) return;
  report.say({
    code: 'no-tank-holds-temperature',
    at: ['brews', at, 'fermentC'],
    value: fermentC,
    bound: fitting.map((tank) => `${tank.minC} to ${tank.maxC} °C`).join(', '),
    message: `${row} wants ${fermentC} °C; no tank that takes ${volumeL} L holds it, so it will be left out.`,
    remedy: `Correct ${report.field('brews', at, 'fermentC')}, or the temperatures of a tank.`,
    level: 'warning',
  });
}

function checkBrewYeasts(report: Report, brew: Row, at: number): void {
  const { yeasts, fermentC } = brew;
  if (yeasts === undefined) return;
  const row = report.row('brews', at);
  yeasts.forEach((yeast, index) => {
    checkYeastIsKnown(report, yeast, ['brews', at, 'yeasts', index], row);
    if (yeasts.indexOf(yeast) === index) return;
    report.say({
      code: 'doubled-yeast',
      at: ['brews', at, 'yeasts', index],
      value: yeast,
      message: `${row} names the yeast “${yeast}” twice.`,
      remedy: 'Name each yeast once, best liked first.',
      level: 'warning',
    });
  });
  if (fermentC === undefined) return;
  const ranges = yeasts.map((name) => report.draft.yeasts.find((yeast) => yeast.yeast === name));
  if (!ranges.every((range) => range !== undefined && isTooFar(range, fermentC))) return;
  const bound = ranges.map((range) => `${range?.minC} to ${range?.maxC} °C (${range?.yeast})`);
  report.say({
    code: 'outside-yeasts-temperature',
    at: ['brews', at, 'fermentC'],
    value: fermentC,
    bound: bound.join(', '),
    message: `${row} ferments at ${fermentC} °C, outside the range of every yeast it accepts, so it will be left out.`,
    remedy: `Correct ${report.field('brews', at, 'fermentC')}, or accept another yeast.`,
    level: 'warning',
  });
}

/** Everything about each brew. */
export function checkBrews(report: Report): void {
  report.draft.brews.forEach((brew, at) => {
    checkGravities(report, brew, at);
    checkTankDays(report, brew, at);
    if (checkDayOrder(report, brew, at)) checkWindow(report, brew, at);
    checkTankFits(report, brew, at);
    checkBrewYeasts(report, brew, at);
  });
}
