// How long beers took to foam: a stalk of hours for each, strain by strain, with the generation at its foot. Nothing is foretold of it.
import type { Hindsight } from '../../../planner/index.ts';
import { Drawing } from '../../parts/drawing.tsx';
import type { StrainLook } from '../../parts/strains.ts';
import { hashOf } from '../../router.ts';
import { lagsByStrain, lagWords } from './foresight.ts';

const WIDTH = 640;
const HEIGHT = 150;
const FRAME = { left: 44, right: WIDTH - 10, top: 12, bottom: HEIGHT - 26 };
const WIDEST_STEP = 34;
const DAY_HOURS = 24;

export function Lags(props: { hindsight: Hindsight; looks: Map<string, StrainLook> }) {
  const lags = lagsByStrain(props.hindsight);
  if (lags.length === 0) return null;
  const days = Math.max(2, Math.ceil(Math.max(...lags.map(({ hours }) => hours)) / DAY_HOURS));
  const step = Math.min(WIDEST_STEP, (FRAME.right - FRAME.left) / lags.length);
  const y = (hours: number) =>
    FRAME.bottom - ((FRAME.bottom - FRAME.top) * hours) / (days * DAY_HOURS);
  return (
    <figure className="alive hindsight">
      <figcaption>
        <h3>Hours to the first foam</h3>
        <p className="quiet">
          No published figure foretells them, so nothing was expected: they stand by strain, with
          the generation that was pitched below.
        </p>
      </figcaption>
      <Drawing label="Hours to the first foam" width={WIDTH} height={HEIGHT} scaled="stalks">
        {Array.from({ length: days + 1 }, (_, day) => day * DAY_HOURS).map((hours) => (
          <g key={hours}>
            <line className="rule" x1={FRAME.left} x2={FRAME.right} y1={y(hours)} y2={y(hours)} />
            <text x={FRAME.left - 6} y={y(hours) + 4} textAnchor="end">
              {hours}&nbsp;h
            </text>
          </g>
        ))}
        {lags.map((lag, at) => {
          const look = props.looks.get(lag.yeast);
          const x = FRAME.left + (at + 0.5) * step;
          return (
            <a
              key={lag.entry}
              href={hashOf({ page: 'pitch', brew: lag.brew })}
              aria-label={lagWords(lag)}
              className={look === undefined ? '' : `hue-${look.hue}`}
            >
              <line className="span" x1={x} x2={x} y1={FRAME.bottom} y2={y(lag.hours)} />
              <circle className="knot" cx={x} cy={y(lag.hours)} r={Math.min(5, step / 3)} />
              <text x={x} y={HEIGHT - 8} textAnchor="middle">
                {lag.generation}
              </text>
            </a>
          );
        })}
      </Drawing>
      <details>
        <summary>In words ({lags.length})</summary>
        <ul className="figures">
          {lags.map((lag) => (
            <li key={lag.entry}>{lagWords(lag)}</li>
          ))}
        </ul>
      </details>
    </figure>
  );
}
