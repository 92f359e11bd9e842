// Cash and work as lengths along one rule, for this plan and the two plain ways; the guessed risk below and apart.
import { scaleLinear } from 'd3-scale';
import type { House, Plan } from '../../../planner/index.ts';
import { money } from '../../parts/money.ts';
import { Scroller } from '../../parts/scroller.tsx';
import { count } from '../../parts/words.ts';
import { type Way, waysOf } from './weighing.ts';

const WIDTH = 640;
const ROW = 46;
const LEFT = 4;

export function ThreeWays(props: { plan: Plan; house: House }) {
  const { plan } = props;
  const ways = waysOf(plan, props.house);
  const [own, fresh] = ways;
  if (!own || !fresh) return null;
  const say = (minor: number) => money(minor, plan);
  const saved = fresh.cashMinor - own.cashMinor;
  return (
    <section aria-labelledby="ways">
      <p className="lead-text">
        {saved >= 0
          ? `This plan spends ${say(saved)} less in cash on yeast than fresh packs for everything would.`
          : `This plan spends ${say(-saved)} more in cash on yeast than fresh packs for everything would.`}
      </p>
      <h2 id="ways">Beside two plain ways</h2>
      <WaysPicture ways={ways} say={say} />
      <Scroller label="The three ways in figures" className="scroll-x">
        <table className="ways-table figures">
          <thead>
            <tr>
              <th scope="col">Way</th>
              <th scope="col">Cash</th>
              <th scope="col">Work</th>
              <th scope="col">Late days</th>
              <th scope="col">Packs</th>
              <th scope="col">Deliveries</th>
              <th scope="col">Left out</th>
              <th scope="col">Risk, a guess</th>
            </tr>
          </thead>
          <tbody>
            {ways.map((way) => (
              <tr key={way.id}>
                <th scope="row">{way.says}</th>
                <td>{say(way.cashMinor)}</td>
                <td>
                  {say(way.workMinor)}
                  {way.workMinutes === null ? '' : `, ${count(way.workMinutes, 'minute')}`}
                </td>
                <td>{way.lateDays}</td>
                <td>{way.packs}</td>
                <td>{way.deliveries}</td>
                <td>{way.leftOut}</td>
                <td>{say(way.riskMinor)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </Scroller>
      <p className="quiet lead-text">
        Cash is packs, deliveries and starter wort. Work is the minutes of harvests, jars, checks
        and starters at the house's price. Risk counts what might go wrong, late beer and beer past
        its best; it is made of guesses, and no saving is claimed from it. The two plain ways keep
        every rule that this plan keeps.
      </p>
      <p className="figures">{plan.bound?.says ?? plan.noBound}</p>
    </section>
  );
}

function WaysPicture(props: { ways: readonly Way[]; say: (minor: number) => string }) {
  const { ways, say } = props;
  const most = Math.max(1, ...ways.map((way) => Math.max(0, way.cashMinor) + way.workMinor));
  const x = scaleLinear([0, most], [LEFT, WIDTH - 4]);
  const ticks = x.ticks(5);
  const height = ways.length * ROW + 24;
  const words = ways
    .map((way) => `${way.says}: cash ${say(way.cashMinor)}, work ${say(way.workMinor)}`)
    .join('; ');
  return (
    <figure className="ways">
      <svg viewBox={`0 0 ${WIDTH} ${height}`} role="img" aria-label={words}>
        {ticks.map((tick) => (
          <g key={tick}>
            <line className="rule" x1={x(tick)} x2={x(tick)} y1="0" y2={height - 18} />
            <text
              className="tick"
              x={x(tick)}
              y={height - 4}
              textAnchor={tick === 0 ? 'start' : 'middle'}
            >
              {say(Math.round(tick))}
            </text>
          </g>
        ))}
        {ways.map((way, i) => {
          const y = i * ROW + 30;
          const cash = x(Math.max(0, way.cashMinor));
          const end = x(Math.max(0, way.cashMinor) + way.workMinor);
          return (
            <g key={way.id} className={way.id === 'plan' ? 'own' : 'plain'}>
              <text x={LEFT} y={y - 9}>
                {way.says}
              </text>
              <line className="cash" x1={LEFT} x2={cash} y1={y} y2={y} />
              <line className="work" x1={cash} x2={end} y1={y} y2={y} />
              <line className="stop" x1={end} x2={end} y1={y - 6} y2={y + 6} />
            </g>
          );
        })}
      </svg>
      <figcaption className="quiet">
        The full line is cash, the beaded line behind it the price of the work.
      </figcaption>
    </figure>
  );
}
