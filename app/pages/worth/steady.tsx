// How much bad luck the plan bears: tried on many drawn seasons, the least steady brews first.
import type { BrewSteadiness, Plan } from '../../../planner/index.ts';
import { Scroller } from '../../parts/scroller.tsx';
import { percent } from '../../parts/words.ts';
import { useSurvey } from '../../queries/surveys.ts';
import { hashOf } from '../../router.ts';
import { Asking } from './asking.tsx';

const WEAK: Record<NonNullable<BrewSteadiness['weakestPoint']>, string> = {
  late: 'too late',
  short: 'too little',
  weak: 'too weak',
  lost: 'lost',
  old: 'too old',
};

const mean = ({ keepsDay, keepsSource }: BrewSteadiness): number => keepsDay * (keepsSource ?? 1);

export function Steady(props: { plan: Plan }) {
  const survey = useSurvey('steadiness');
  const steady = survey?.result?.kind === 'steadiness' ? survey.result.steadiness : null;
  const known = new Set(props.plan.brews.map(({ brew }) => brew));
  const brews = [...(steady?.brews ?? [])]
    .filter(({ brew }) => known.has(brew))
    .sort((a, z) => mean(a) - mean(z));
  return (
    <section aria-labelledby="steady">
      <h2 id="steady">How much it bears</h2>
      <p className="lead-text">
        Brew days slip, beers take longer, harvests fall short, jars break. The plan is lived
        through a thousand such seasons, drawn by guessed chances, without planning again.
      </p>
      <Asking
        kind="steadiness"
        survey={survey}
        ask="Try it on a thousand seasons"
        again="Try it again"
      >
        {steady && (
          <>
            <p className="lead-text">{steady.says}</p>
            {brews.length > 0 && (
              <Scroller label="How steady each brew is" className="scroll-x">
                <table className="figures steady-table">
                  <caption className="quiet">The least steady first.</caption>
                  <thead>
                    <tr>
                      <th scope="col">Brew</th>
                      <th scope="col">Keeps its day</th>
                      <th scope="col">Keeps its yeast</th>
                      <th scope="col">Its yeast is then mostly</th>
                    </tr>
                  </thead>
                  <tbody>
                    {brews.map((one) => (
                      <tr key={one.brew}>
                        <th scope="row">
                          <a href={hashOf({ page: 'pitch', brew: one.brew })}>{one.brew}</a>
                        </th>
                        <td>
                          <Part share={one.keepsDay} />
                        </td>
                        <td>
                          {one.keepsSource === null ? (
                            'fresh packs'
                          ) : (
                            <Part share={one.keepsSource} />
                          )}
                        </td>
                        <td>{one.weakestPoint === null ? '' : WEAK[one.weakestPoint]}</td>
                      </tr>
                    ))}
                  </tbody>
                </table>
              </Scroller>
            )}
          </>
        )}
      </Asking>
    </section>
  );
}

/** A share as a short thread beside its figure. */
function Part(props: { share: number }) {
  return (
    <>
      <svg className="part" viewBox="0 0 60 8" width="60" height="8" aria-hidden="true">
        <line className="whole" x1="0" x2="60" y1="4" y2="4" />
        <line className="done" x1="0" x2={60 * props.share} y1="4" y2="4" />
      </svg>{' '}
      {percent(props.share)}
    </>
  );
}
