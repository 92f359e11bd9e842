// Checks of the house's own counts: that a row counts something, and that its figures can all be true.
import type { YeastCount } from '../house.ts';
import type { Loose } from './draft.ts';
import type { Report } from './report.ts';
import { checkYeastIsKnown } from './rows.ts';

type Row = Loose<YeastCount>;

function checkStain(report: Report, { stained, total }: Row, at: number): void {
  const row = report.row('counts', at);
  const stainedField = report.field('counts', at, 'stained');
  const totalField = report.field('counts', at, 'total');
  if (typeof stained === 'number' && typeof total === 'number' && stained > total) {
    report.say({
      code: 'contradiction',
      at: ['counts', at, 'stained'],
      value: stained,
      bound: `at most ${total} (${totalField})`,
      message: `${stainedField} of ${row} is ${stained}, more than the ${total} cells that were looked at.`,
      remedy: `Give the dead cells in ${stainedField} and all cells, living and dead, in ${totalField}.`,
    });
  } else if (typeof stained === 'number' && total === null) {
    report.say({
      code: 'half-a-count',
      at: ['counts', at, 'total'],
      bound: 'a whole number from 1',
      message: `${row} has ${stained} stained cells, but ${totalField} is blank: of how many?`,
      remedy: `Write in ${totalField} how many cells, living and dead, were looked at.`,
    });
  }
}

/** Everything about each count. */
export function checkCounts(report: Report): void {
  report.draft.counts.forEach((count, at) => {
    const row = report.row('counts', at);
    if (count.yeast !== undefined)
      checkYeastIsKnown(report, count.yeast, ['counts', at, 'yeast'], row);
    checkStain(report, count, at);
    if (count.stained === null && count.millionPerMl === null) {
      const stainedField = report.field('counts', at, 'stained');
      const cellsField = report.field('counts', at, 'millionPerMl');
      report.say({
        code: 'half-a-count',
        at: ['counts', at, 'stained'],
        bound: `${stainedField} or ${cellsField}`,
        message: `${row} has neither ${stainedField} nor ${cellsField}: nothing was counted.`,
        remedy: 'Fill in what was counted, or remove the row.',
      });
    }
    const { countedOn, harvestedOn } = count;
    if (countedOn === undefined || harvestedOn === undefined || countedOn >= harvestedOn) return;
    const countedField = report.field('counts', at, 'countedOn');
    const harvestedField = report.field('counts', at, 'harvestedOn');
    report.say({
      code: 'days-out-of-order',
      at: ['counts', at, 'countedOn'],
      value: countedOn,
      bound: `${harvestedOn} (${harvestedField}) or later`,
      message: `${countedField} of ${row} is ${countedOn}, before it was harvested on ${harvestedOn}.`,
      remedy: `Correct ${countedField} or ${harvestedField}.`,
    });
  });
}
