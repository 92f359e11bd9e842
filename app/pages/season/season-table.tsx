// The same season as a table: for screen readers, for print, and for those who would rather read.
import type { Plan } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';
import type { Units } from '../../parts/units.ts';
import { percent, sourceWords } from '../../parts/words.ts';
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
                <td>{shortDay(brew.day)}</td>
                <th scope="row">
                  <a href={hashOf({ page: 'pitch', brew: brew.brew })}>{brew.brew}</a>
                  {brew.style && <span className="quiet">, {brew.style}</span>}
                </th>
                <td>
                  {brew.tank}, {shortDay(brew.emptiedOn)}
                </td>
                <td>{brew.yeast}</td>
                <td>{sourceWords(brew, units)}</td>
                <td>{brew.generation}</td>
                <td>
                  {percent(brew.viability.likely)}{' '}
                  <span className="quiet">
                    ({percent(brew.viability.low)}–{percent(brew.viability.high)})
                  </span>
                </td>
                <td>
                  {shortDay(brew.readyOn)}
                  {brew.daysLate > 0 && <span className="red"> {brew.daysLate} days late</span>}
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
