// Measures everything and writes docs/benchmarks.md. `--quick` takes fewer seeds.
import { type Row, writeTable } from './measure.ts';
import { predictionRows } from './predictions.ts';
import { seasonRows } from './seasons.ts';
import { servingRows } from './serving.ts';

const quick = process.argv.includes('--quick');
const rows: Row[] = [];
const add = async (what: string, more: Promise<Row[]>) => {
  process.stdout.write(`${what} …\n`);
  for (const row of await more) {
    rows.push(row);
    process.stdout.write(`  ${row.what}: ${row.value.toFixed(2)} ${row.unit}\n`);
  }
};

await add('Predicting pitches', Promise.resolve(predictionRows()));
await add('Planning the shared seasons', seasonRows(quick ? 2 : 10));
await add('Serving', servingRows());
writeTable(rows, [
  'Run `npm run bench` to measure anew, `npm run bench -- --quick` for a first look.',
]);
