// Prediction against what happened: a stroke from low to high for each figure that came in, a knot where it really was.
import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import type { Hindsight, Outcome } from '../../../planner/index.ts';
import { Drawing } from '../../parts/drawing.tsx';
import { ErrorNotice } from '../../parts/failed.tsx';
import type { StrainLook } from '../../parts/strains.ts';
import { count } from '../../parts/words.ts';
import { hindsightQuery } from '../../queries/hindsight.ts';
import { hashOf } from '../../router.ts';
import { byStrain, DRAWN, type Drawn, heightOf, outcomeWords, rulesOf } from './foresight.ts';
import { Lags } from './lags.tsx';

type Looks = Map<string, StrainLook>;

const WIDTH = 640;
const HEIGHT = 170;
const FRAME = { left: 44, right: WIDTH - 10, top: 12, bottom: HEIGHT - 26 };
/** A season's first figures do not fill the width: strokes stand no farther apart than this. */
const WIDEST_STEP = 34;

export function HindsightSection(props: { looks: Looks }) {
  const asked = useQuery(hindsightQuery);
  const hindsight = asked.data?.hindsight;
  return (
    <section aria-labelledby="hindsight">
      <h2 id="hindsight">Looking back: what was expected, and what came</h2>
      {asked.isError && <ErrorNotice error={asked.error} />}
      {hindsight && <Told hindsight={hindsight} looks={props.looks} />}
    </section>
  );
}

function Told(props: { hindsight: Hindsight; looks: Looks }) {
  const { hindsight, looks } = props;
  if (hindsight.outcomes.length + hindsight.lags.length === 0) {
    return (
      <p className="lead-text">
        Nothing yet. When a harvest is told with its mL, slurry is counted, a gravity or the first
        foam is told, it stands here beside what the plan expected of it.
      </p>
    );
  }
  const gravities = hindsight.outcomes.filter((one) => one.within === null);
  return (
    <>
      {DRAWN.map(({ figure, title }) => {
        const outcomes = byStrain(hindsight, figure);
        if (outcomes.length === 0) return null;
        return (
          <Picture key={figure} figure={figure} title={title} outcomes={outcomes} looks={looks} />
        );
      })}
      <Lags hindsight={hindsight} looks={looks} />
      {hindsight.strains.length > 0 && (
        <ul className="strain-sums figures">
          {[...new Set(hindsight.strains.map((one) => one.yeast))].map((yeast) => (
            <li key={yeast} className={`hue-${looks.get(yeast)?.hue ?? 1}`}>
              {yeast}:{' '}
              {hindsight.strains
                .filter((one) => one.yeast === yeast)
                .map((one) => `${one.within} of ${one.told} ${WHAT[one.figure]} within`)
                .join('; ')}
            </li>
          ))}
        </ul>
      )}
      {gravities.length > 0 && (
        <details>
          <summary>Gravities, planned and found ({gravities.length})</summary>
          <ul className="figures">
            {gravities.map((one) => (
              <li key={`${one.entry} ${one.figure}`}>
                {outcomeWords(one)} ({one.figure === 'og' ? 'the wort' : 'at the end'})
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

const WHAT: Readonly<Record<Outcome['figure'], string>> = {
  settledMl: 'harvests',
  viability: 'counts of the living',
  millionPerMl: 'counts of cells',
  og: 'gravities',
  fg: 'gravities',
};

function Picture(props: { figure: Drawn; title: string; outcomes: Outcome[]; looks: Looks }) {
  const { figure, title, outcomes, looks } = props;
  const step = Math.min(WIDEST_STEP, (FRAME.right - FRAME.left) / outcomes.length);
  const y = (height: number) => FRAME.bottom - (FRAME.bottom - FRAME.top) * height;
  const within = outcomes.filter((one) => one.within).length;
  return (
    <figure className="alive hindsight">
      <figcaption>
        <h3>{title}</h3>
        <p className="quiet figures">
          {within} of {count(outcomes.length, 'figure')} within the interval; about four in five
          should be.
        </p>
      </figcaption>
      <Drawing label={title} width={WIDTH} height={HEIGHT} scaled="strokes">
        {rulesOf(figure).map(({ height, says }) => (
          <g key={says}>
            <line className="rule" x1={FRAME.left} x2={FRAME.right} y1={y(height)} y2={y(height)} />
            <text x={FRAME.left - 6} y={y(height) + 4} textAnchor="end">
              {says}
            </text>
          </g>
        ))}
        {outcomes.map((outcome, at) => {
          const look = looks.get(outcome.yeast);
          const place = (value: number) => y(heightOf(value, outcome));
          const x = FRAME.left + (at + 0.5) * step;
          const first = outcomes[at - 1]?.yeast !== outcome.yeast;
          const { low, high, likely, happened, within: on, of } = outcome;
          const ends = [place(low ?? likely), place(high ?? likely)] as const;
          return (
            <Mark key={outcome.entry} says={outcomeWords(outcome)} of={of} hue={look?.hue}>
              <rect
                className="reach"
                x={x - step / 2}
                y={FRAME.top}
                width={step}
                height={FRAME.bottom - FRAME.top}
              />
              <line className="span" x1={x} x2={x} y1={ends[0]} y2={ends[1]} />
              <line className="span" x1={x - 4} x2={x + 4} y1={place(likely)} y2={place(likely)} />
              <circle
                className={on ? 'knot' : 'knot is-off'}
                cx={x}
                cy={place(happened)}
                r={Math.min(5, step / 3)}
              />
              {first && (
                <text x={x} y={HEIGHT - 8} textAnchor="middle">
                  {look?.letter ?? ''}
                </text>
              )}
            </Mark>
          );
        })}
      </Drawing>
      <p className="quiet">
        A stroke from low to high as the plan had it when the figure was told, its tick the likely
        one; the knot is what came, ringed in red where it lies off the stroke.
      </p>
    </figure>
  );
}

/** A figure leads to what it is about: the beer's pitch, or the jar on the shelf. */
function Mark(props: {
  says: string;
  of: Outcome['of'];
  hue: number | undefined;
  children: ReactNode;
}) {
  const { says, of, hue, children } = props;
  const href =
    of.kind === 'jar'
      ? `#/shelf/jar/${encodeURIComponent(of.jar)}`
      : hashOf({ page: 'pitch', brew: of.brew });
  return (
    <a href={href} aria-label={says} className={hue === undefined ? '' : `hue-${hue}`}>
      {children}
    </a>
  );
}
