// How strong each pitch is expected to be: one stroke a brew from low to high, the likely share as a knot, a row a strain.
import { scaleLinear } from 'd3-scale';
import type { Plan } from '../../../planner/index.ts';
import { Drawing } from '../../parts/drawing.tsx';
import type { StrainLook } from '../../parts/strains.ts';
import { percent } from '../../parts/words.ts';
import { hashOf } from '../../router.ts';

const WIDTH = 640;
const HEIGHT = 190;
const FRAME = { left: 44, right: WIDTH - 10, top: 14, bottom: HEIGHT - 14 };

export function AliveStrip(props: { plan: Plan; looks: Map<string, StrainLook> }) {
  const { brews } = props.plan;
  if (brews.length === 0) return null;
  const y = scaleLinear([0, 1], [FRAME.bottom, FRAME.top]);
  const step = (FRAME.right - FRAME.left) / brews.length;
  const likely = brews.map(({ viability }) => viability.likely).sort((a, z) => a - z);
  const [weakest, strongest] = [likely[0] ?? 0, likely.at(-1) ?? 0];
  const middle = likely[Math.floor((likely.length - 1) / 2)] ?? 0;
  return (
    <section aria-labelledby="alive">
      <h2 id="alive">How much of the yeast is alive</h2>
      <p className="lead-text figures">
        Likely {percent(weakest)} to {percent(strongest)} alive when it is drawn, {percent(middle)}{' '}
        in the middle pitch.
      </p>
      <figure className="alive">
        <Drawing
          label={`Share alive of ${brews.length} pitches in order of their days`}
          width={WIDTH}
          height={HEIGHT}
          scaled="strokes"
        >
          {[0, 0.5, 1].map((share) => (
            <g key={share}>
              <line className="rule" x1={FRAME.left} x2={FRAME.right} y1={y(share)} y2={y(share)} />
              <text x={FRAME.left - 6} y={y(share) + 4} textAnchor="end">
                {percent(share)}
              </text>
            </g>
          ))}
          {brews.map((brew, i) => {
            const { low, likely: mid, high } = brew.viability;
            const x = FRAME.left + (i + 0.5) * step;
            const look = props.looks.get(brew.yeast);
            const says = `${brew.brew}: ${percent(mid)} alive, ${percent(low)} to ${percent(high)}`;
            return (
              <a
                key={brew.brew}
                href={hashOf({ page: 'pitch', brew: brew.brew })}
                aria-label={says}
                className={look ? `hue-${look.hue}` : ''}
              >
                <rect
                  x={x - step / 2}
                  y={FRAME.top}
                  width={step}
                  height={FRAME.bottom - FRAME.top}
                  className="reach"
                />
                <line className="span" x1={x} x2={x} y1={y(low)} y2={y(high)} />
                <circle className="knot" cx={x} cy={y(mid)} r={Math.min(4, step / 3)} />
              </a>
            );
          })}
        </Drawing>
        <figcaption className="quiet">
          One stroke a pitch, in order of their days: from low to high with 4 chances in 5, the knot
          at the likely share.
        </figcaption>
      </figure>
    </section>
  );
}
