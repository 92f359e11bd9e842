// The living share of a pitch's yeast, drawn small: likely as a line, low to high as a band.
import { bareDay } from '../../parts/days.ts';
import type { StrainLook } from '../../parts/strains.ts';
import { count, percent } from '../../parts/words.ts';
import { type Ageing, ageingPaths, apart } from './viability.ts';

const BEGINNINGS: Record<Ageing['begins'], string> = {
  harvested: 'Harvested',
  kept: 'Kept of a starter',
  made: 'Packs made',
  counted: 'Counted',
  today: 'Reckoned from today,',
};

const FRAME = { left: 40, right: 300, top: 12, bottom: 132 };

export function ViabilityPicture(props: { ageing: Ageing; look: StrainLook }) {
  const { ageing, look } = props;
  const { band, line } = ageingPaths(ageing, FRAME);
  const y = (share: number) => FRAME.bottom - (FRAME.bottom - FRAME.top) * share;
  const ends = [
    { says: 'high', share: ageing.end.high },
    { says: 'likely', share: ageing.end.likely },
    { says: 'low', share: ageing.end.low },
  ];
  const labelYs = apart(
    ends.map((one) => y(one.share)),
    15,
  );
  const drawn = ageing.into === 'starter' ? 'into its starter' : 'pitched';
  const words =
    `${BEGINNINGS[ageing.begins]} ${bareDay(ageing.fromDay)}, ${drawn} ${count(ageing.days, 'day')} later: ` +
    `likely ${percent(ageing.end.likely)} alive, ${percent(ageing.end.low)} to ${percent(ageing.end.high)} with 4 chances in 5.`;
  return (
    <figure className="ageing">
      <svg viewBox="0 0 400 158" role="img" aria-label={words} className={`hue-${look.hue}`}>
        {[0, 0.5, 1].map((share) => (
          <g key={share}>
            <line className="rule" x1={FRAME.left} x2={FRAME.right} y1={y(share)} y2={y(share)} />
            <text x={FRAME.left - 6} y={y(share) + 4} textAnchor="end">
              {percent(share)}
            </text>
          </g>
        ))}
        <path className="band" d={band} />
        <path className="likely" d={line} />
        <circle className="begin" cx={FRAME.left} cy={y(ageing.start.likely)} r="3.5" />
        <circle className="end" cx={FRAME.right} cy={y(ageing.end.likely)} r="3.5" />
        {ends.map((one, at) => (
          <text
            key={one.says}
            className={one.says === 'likely' ? 'strong' : ''}
            x={FRAME.right + 10}
            y={(labelYs[at] ?? 0) + 4}
          >
            {percent(one.share)} {one.says}
          </text>
        ))}
        <text x={FRAME.left} y={FRAME.bottom + 20}>
          {ageing.begins} {bareDay(ageing.fromDay)}
        </text>
        <text x={FRAME.right} y={FRAME.bottom + 20} textAnchor="end">
          {drawn} {bareDay(ageing.drawnOn)}
        </text>
      </svg>
      <figcaption className="quiet">{words}</figcaption>
    </figure>
  );
}
