// The same season as a table: for screen readers, for print, and for those who would rather read.
import type { Plan } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';
import type { Units } from '../../parts/units.ts';
import { count, percent, sourceWords } from '../../parts/words.ts';
import { hashOf } from '../../router.ts';
import type { Weave } from './weave.ts';

export function SeasonTable(props: { plan: Plan; woven: Weave; units: Units }) {
  const { plan, woven, units } = props;
  const ends = new Map(woven.ends.map((end) => [end.brew, end]));
  const fed = (brew: string) =>
    plan.brews
      .filter((other) => other.source.kind === 'harvest' && other.source.brew === brew)
      .map((other) => other.brew);
  return (
    <section className="table-scroll" aria-label="The season as a table">
      <table className="sums season-table">
        <thead>
          <tr>
            <th scope="col">Brew day</th>
            <th scope="col">Beer</th>
            <th scope="col">Tank, until</th>
            <th scope="col">Yeast</th>
            <th scope="col">Pitched from</th>
            <th scope="col">Generation</th>
            <th scope="col">Alive, likely</th>
            <th scope="col">Ready</th>
            <th scope="col">Its yeast goes to</th>
          </tr>
        </thead>
        <tbody>
          {plan.brews.map((brew) => {
            const to = fed(brew.brew);
            return (
              <tr key={brew.brew}>
                <td className="one-line">{shortDay(brew.day)}</td>
                <th scope="row">
                  <a href={hashOf({ page: 'pitch', brew: brew.brew })}>{brew.brew}</a>
                  {brew.style && <span className="quiet">, {brew.style}</span>}
                </th>
                <td>
                  {brew.tank}, <span className="one-line">{shortDay(brew.emptiedOn)}</span>
                </td>
                <td>{brew.yeast}</td>
                <td>{sourceWords(brew, units)}</td>
                <td>{brew.generation}</td>
                <td>
                  {percent(brew.viability.likely)}{' '}
                  <span className="quiet">
                    ({Math.round(brew.viability.low * 100)}–{percent(brew.viability.high)})
                  </span>
                </td>
                <td>
                  <span className="one-line">{shortDay(brew.readyOn)}</span>
                  {brew.daysLate > 0 && (
                    <span className="red one-line"> {count(brew.daysLate, 'day')} late</span>
                  )}
                </td>
                <td>
                  {to.length > 0 ? to.join(', ') : <em>{ends.get(brew.brew)?.says ?? '–'}</em>}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}
