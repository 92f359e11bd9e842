// Checks of tanks, yeasts and jars: each row by itself, and names that stand twice.
import { dayNumber } from '../../timeline/calendar.ts';
import { resolveSettings } from '../settings.ts';
import { LISTS, type ListName, ROW_NOUN } from './draft.ts';
import { nearest, type Report } from './report.ts';

/** The names of a list, as far as they are known. */
export function namesIn(report: Report, list: ListName): (string | undefined)[] {
  return report.draft[list].map((row: { [key: string]: unknown }) => {
    const name = row[ROW_NOUN[list]];
    return typeof name === 'string' ? name : undefined;
  });
}

/** Two rows of one name; and names so alike that one was surely meant. */
export function checkNames(report: Report): void {
  for (const list of LISTS) {
    const noun = ROW_NOUN[list];
    const first = new Map<string, number>();
    const firstPlain = new Map<string, string>();
    namesIn(report, list).forEach((name, at) => {
      if (name === undefined) return;
      const plain = name.toLowerCase().replace(/\s+/g, ' ');
      const alike = firstPlain.get(plain);
      const earlier = first.get(name);
      if (earlier !== undefined) {
        report.say({
          code: 'doubled-name',
          at: [list, at, noun],
          value: name,
          bound: 'a name of its own',
          message: `There are two ${list} named “${name}”: number ${earlier + 1} and number ${at + 1}.`,
          remedy: `Rename one of them, or remove it if it is the same ${noun} twice.`,
        });
      } else if (alike !== undefined) {
        report.say({
          code: 'names-alike',
          at: [list, at, noun],
          value: name,
          message: `The ${list} “${alike}” and “${name}” differ only in capitals or spaces.`,
          remedy: `Leave it if these are two ${list}; otherwise remove one.`,
          level: 'warning',
        });
      }
      if (earlier === undefined) first.set(name, at);
      if (alike === undefined) firstPlain.set(plain, name);
    });
  }
}

/** The yeast is one that a row defines. Says nothing while the yeasts cannot be read. */
export function checkYeastIsKnown(
  report: Report,
  yeast: string,
  at: readonly (string | number)[],
  whose: string,
): void {
  const names = namesIn(report, 'yeasts');
  const known = names.filter((name) => name !== undefined);
  if (known.length === 0 || known.length < names.length || known.includes(yeast)) return;
  const meant = nearest(yeast, known);
  report.say({
    code: 'unknown-yeast',
    at,
    value: yeast,
    bound: `one of ${known.join(', ')}`,
    message: `${whose} names the yeast “${yeast}”, which no row of the yeasts defines.`,
    remedy:
      meant === null
        ? `Add a row for “${yeast}” to the yeasts, or name one of those that are there.`
        : `Write “${meant}” if that is meant, or add a row for “${yeast}” to the yeasts.`,
  });
}

/** The lower bound of a row is not above its upper bound. */
function checkOrder(
  report: Report,
  list: 'tanks' | 'yeasts',
  at: number,
  keys: readonly [string, string],
  values: readonly [number | undefined, number | undefined],
  unit: string,
): void {
  const [low, high] = values;
  if (low === undefined || high === undefined || low <= high) return;
  const lowField = report.field(list, at, keys[0]);
  const highField = report.field(list, at, keys[1]);
  report.say({
    code: 'bounds-reversed',
    at: [list, at, keys[0]],
    value: low,
    bound: `at most ${high} (${highField})`,
    message: `${lowField} of ${report.row(list, at)} is ${low} ${unit}, above its ${highField} of ${high} ${unit}.`,
    remedy: `Exchange ${lowField} and ${highField}, or correct one of them.`,
  });
}

export function checkTanks(report: Report): void {
  report.draft.tanks.forEach((tank, at) => {
    checkOrder(report, 'tanks', at, ['minFillL', 'maxFillL'], [tank.minFillL, tank.maxFillL], 'L');
    checkOrder(report, 'tanks', at, ['minC', 'maxC'], [tank.minC, tank.maxC], '°C');
    tank.outOfUse?.forEach((stretch, index) => {
      if (stretch.from <= stretch.to) return;
      report.say({
        code: 'days-out-of-order',
        at: ['tanks', at, 'outOfUse', index, 'to'],
        value: stretch.to,
        bound: `${stretch.from} or later`,
        message: `${report.row('tanks', at)} is out of use from ${stretch.from} to ${stretch.to}, which is earlier.`,
        remedy: 'Exchange the two days, or correct one of them.',
      });
    });
  });
}

export function checkYeasts(report: Report): void {
  const { from, to, kind, rules } = report.draft.head;
  report.draft.yeasts.forEach((yeast, at) => {
    const row = report.row('yeasts', at);
    checkOrder(report, 'yeasts', at, ['minC', 'maxC'], [yeast.minC, yeast.maxC], '°C');
    const made = yeast.packsMadeOn;
    const onHand = yeast.packsOnHand ?? 0;
    const madeField = report.field('yeasts', at, 'packsMadeOn');
    if (onHand > 0 && made === null) {
      report.say({
        code: 'pack-age-unknown',
        at: ['yeasts', at, 'packsMadeOn'],
        bound: 'a day',
        message: `${madeField} of ${row} is blank although ${onHand} of its packs are on hand: they are taken to be as old as ordered ones are on arrival.`,
        remedy: 'Write the day of making or, if only an expiry day is printed, work back from it.',
        level: 'warning',
      });
    }
    if (made === null || made === undefined) return;
    if (to !== undefined && made > to) {
      report.say({
        code: 'day-after-season',
        at: ['yeasts', at, 'packsMadeOn'],
        value: made,
        bound: `${to} or earlier`,
        message: `${madeField} of ${row} is ${made}, after the season ends on ${to}.`,
        remedy: 'Correct the day: these packs are on hand now.',
      });
    }
    if (from === undefined || kind === undefined || yeast.form === undefined || onHand === 0)
      return;
    const settings = resolveSettings(kind, rules ?? {});
    const keeps = yeast.form === 'dry' ? settings.dryExpiryDays : settings.liquidExpiryDays;
    const age = dayNumber(from) - dayNumber(made);
    if (age <= keeps) return;
    report.say({
      code: 'packs-expired',
      at: ['yeasts', at, 'packsMadeOn'],
      value: made,
      bound: `at most ${keeps} days before ${from}`,
      message: `The packs of ${row} on hand are ${age} days old on ${from} and keep ${keeps}: they are not used.`,
      remedy: `Set ${report.field('yeasts', at, 'packsOnHand')} to 0, or correct the day.`,
      level: 'warning',
    });
  });
}

export function checkJars(report: Report): void {
  const { from, to } = report.draft.head;
  report.draft.jars.forEach((jar, at) => {
    const row = report.row('jars', at);
    const harvested = jar.harvestedOn;
    const harvestedField = report.field('jars', at, 'harvestedOn');
    const measuredField = report.field('jars', at, 'measuredOn');
    const viabilityField = report.field('jars', at, 'measuredViability');
    if (jar.yeast !== undefined) checkYeastIsKnown(report, jar.yeast, ['jars', at, 'yeast'], row);
    if (harvested !== undefined && to !== undefined && harvested > to) {
      report.say({
        code: 'day-after-season',
        at: ['jars', at, 'harvestedOn'],
        value: harvested,
        bound: `${to} or earlier`,
        message: `${harvestedField} of ${row} is ${harvested}, after the season ends on ${to}.`,
        remedy: 'Correct the day: this jar stands in the cold now.',
      });
    } else if (harvested !== undefined && from !== undefined && harvested > from) {
      report.say({
        code: 'jar-from-the-season',
        at: ['jars', at, 'harvestedOn'],
        value: harvested,
        bound: `${from} or earlier`,
        message: `${harvestedField} of ${row} is ${harvested}, after the season begins on ${from}.`,
        remedy: 'Correct the day or, if the season has begun, give today’s day when planning.',
        level: 'warning',
      });
    }
    if (jar.measuredOn && harvested !== undefined && jar.measuredOn < harvested) {
      report.say({
        code: 'days-out-of-order',
        at: ['jars', at, 'measuredOn'],
        value: jar.measuredOn,
        bound: `${harvested} (${harvestedField}) or later`,
        message: `${measuredField} of ${row} is ${jar.measuredOn}, before it was harvested on ${harvested}.`,
        remedy: `Correct ${measuredField} or ${harvestedField}.`,
      });
    }
    if (jar.measuredViability === null && jar.measuredOn) {
      report.say({
        code: 'half-a-measurement',
        at: ['jars', at, 'measuredViability'],
        bound: 'a share from 0 to 1',
        message: `${row} was measured on ${jar.measuredOn}, but ${viabilityField} is blank.`,
        remedy: `Write the share that was alive, such as 0.93, or clear ${measuredField}.`,
        level: 'warning',
      });
    }
    if (jar.measuredOn === null && typeof jar.measuredViability === 'number') {
      report.say({
        code: 'half-a-measurement',
        at: ['jars', at, 'measuredOn'],
        bound: 'a day',
        message: `${viabilityField} of ${row} is ${jar.measuredViability}, but ${measuredField} is blank: the day of the harvest is taken.`,
        remedy: `Write the day of the measurement in ${measuredField}.`,
        level: 'warning',
      });
    }
  });
}
