// What goes in, line by line: packs or slurry, age, generation, starter, cells, and what comes along with it.
import type { PlannedBrew } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';
import { colour, litres, millilitres, type Units } from '../../parts/units.ts';
import { count } from '../../parts/words.ts';
import { hashOf } from '../../router.ts';

export function SourceList(props: { brew: PlannedBrew; units: Units }) {
  const { brew, units } = props;
  const { source, starter } = brew;
  const rows: [string, React.ReactNode][] = [];
  if (source.kind === 'fresh') {
    const bought = source.packs - source.packsFromHand;
    rows.push([
      'Packs',
      `${source.packs}${source.packsFromHand > 0 ? `, ${source.packsFromHand} of them on hand` : ''}`,
    ]);
    if (bought > 0 && source.orderOn && source.arrivesOn) {
      rows.push([
        'Order',
        `by ${shortDay(source.orderOn)}; they arrive by ${shortDay(source.arrivesOn)}`,
      ]);
    }
    rows.push(['Age', `${count(source.packAgeDays, 'day')} since they were made`]);
  } else {
    rows.push(['Slurry', `${millilitres(source.drawMl, units)}, settled`]);
    rows.push([
      'Out of',
      source.kind === 'jar' ? (
        `jar ${source.jar}, harvested ${shortDay(source.harvestedOn)}`
      ) : (
        <>
          {source.ofStarter && 'the starter of '}
          <a href={hashOf({ page: 'pitch', brew: source.brew })}>{source.brew}</a>,{' '}
          {source.ofStarter ? 'kept' : 'harvested'} {shortDay(source.harvestedOn)} into{' '}
          {count(source.jars, 'jar')}
        </>
      ),
    ]);
    const since =
      source.kind === 'harvest' && source.ofStarter ? 'since it was kept' : 'since the harvest';
    rows.push(['Age', `${count(source.ageDays, 'day')} ${since}`]);
  }
  rows.push([
    'Generation',
    `${brew.generation} (a fresh pack is 0; slurry out of its first beer is 1)`,
  ]);
  if (starter) {
    const chill = starter.chillOn ? `, chilled ${shortDay(starter.chillOn)} and decanted` : '';
    rows.push([
      'Starter',
      `${litres(starter.litres, units)} with ${Math.round(starter.extractG)} g of extract, from ${shortDay(starter.startOn)}${chill}`,
    ]);
  }
  const billion = (cells: number) => Math.round(cells).toLocaleString('en-GB');
  rows.push([
    'Living cells',
    `${billion(brew.pitchedB)} billion, where ${billion(brew.needB)} are needed`,
  ]);
  if (brew.carried) {
    const { volumeL, ebc, ibu } = brew.carried;
    rows.push([
      'Comes along',
      `${millilitres(volumeL * 1000, units)} of the old beer: ${ebc < 0.05 && ibu < 0.05 ? 'nothing to see or taste' : `${colour(ebc, units, 1)} and ${ibu.toFixed(1)} IBU more`}`,
    ]);
  }
  return (
    <dl className="facts figures">
      {rows.map(([name, says]) => (
        <div key={name}>
          <dt className="field-name">{name}</dt>
          <dd>{says}</dd>
        </div>
      ))}
    </dl>
  );
}
