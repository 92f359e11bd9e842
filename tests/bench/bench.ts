// Measures and writes docs/benchmarks.md, section by section. Names of sections measure those alone and leave the others as they
// stand; `--quick` takes fewer seeds and less time; `long` and `simulation` are measured only by name.
import { simulationRows } from '../simulation/rows.ts';
import { feedRows } from './feed.ts';
import { type Row, writeSections } from './measure.ts';
import { dragFigures, pagePanFigures } from './page.ts';
import { startFigures } from './page-start.ts';
import { predictionRows } from './predictions.ts';
import { proofRows } from './proof.ts';
import { pureYeastRows } from './pure-yeast.ts';
import { replanRows } from './replanning.ts';
import { schedulingRows } from './scheduling.ts';
import { longRows, searchRows } from './search.ts';
import { seasonRows } from './seasons.ts';
import { servingRows } from './serving.ts';
import { slackRows } from './slack.ts';
import { slipRows } from './slip.ts';
import { smallRows } from './small.ts';

type Section = { title: string; rows(quick: boolean): Row[] | Promise<Row[]>; onlyByName?: true };

const SECTIONS: Record<string, Section> = {
  predictions: { title: 'Predicting pitches', rows: () => predictionRows() },
  shared: { title: 'Planning the shared seasons', rows: (quick) => seasonRows(quick ? 2 : 10) },
  small: { title: 'Small seasons against an exact solver', rows: smallRows },
  search: { title: 'Large seasons', rows: searchRows },
  scheduling: { title: 'Pure scheduling', rows: schedulingRows },
  yeast: { title: 'Pure yeast', rows: pureYeastRows },
  proof: { title: 'The bound against the optimum', rows: proofRows },
  replan: { title: 'Re-planning after news', rows: replanRows },
  slip: { title: 'From a tap to the calendar', rows: () => slipRows() },
  serving: { title: 'Serving', rows: () => servingRows() },
  simulation: {
    title: 'A season lived through',
    rows: () => simulationRows(),
    onlyByName: true,
  },
  calendar: { title: 'Calendar addresses', rows: () => feedRows() },
  page: {
    title: 'The page',
    rows: async () => [
      ...(await startFigures()),
      ...(await dragFigures()),
      ...(await pagePanFigures()),
    ],
  },
  slack: { title: 'Slack', rows: slackRows },
  long: { title: 'Best known, by long runs', rows: () => longRows(), onlyByName: true },
};

const quick = process.argv.includes('--quick');
const named = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const unknown = named.filter((name) => !SECTIONS[name]);
if (unknown.length > 0) {
  process.stderr.write(
    `There is no section ${unknown.join(', ')}. There are: ${Object.keys(SECTIONS).join(', ')}.\n`,
  );
  process.exit(2);
}
const chosen = Object.entries(SECTIONS).filter(([name, section]) =>
  named.length > 0 ? named.includes(name) : !section.onlyByName,
);
for (const [name, { title, rows }] of chosen) {
  process.stdout.write(`${title} …\n`);
  const measured = await rows(quick);
  for (const row of measured)
    process.stdout.write(`  ${row.what}: ${row.value.toFixed(2)} ${row.unit}\n`);
  // written at once: a run that is stopped keeps what it has
  if (measured.length > 0) writeSections(name, title, measured, quick, Object.keys(SECTIONS));
}
