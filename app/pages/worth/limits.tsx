// Which limit of the house costs most: each widened a little and the season planned again.
import type { Plan } from '../../../planner/index.ts';
import { useSurvey } from '../../queries/surveys.ts';
import { Asking } from './asking.tsx';

export function Limits(props: { plan: Plan }) {
  const survey = useSurvey('limits');
  const answer = survey?.result?.kind === 'limits' ? survey.result.limits : null;
  const helps = answer?.limits.filter((one) => one.leftOutFewer > 0 || one.savesMinor > 0) ?? [];
  const others = answer?.limits.filter((one) => !helps.includes(one)) ?? [];
  const most = Math.max(1, ...helps.map(({ savesMinor }) => savesMinor));
  return (
    <section aria-labelledby="limits">
      <h2 id="limits">What holds the season back</h2>
      <p className="lead-text">
        One tank more, one brew day more a week, two jars more: each is tried by planning the season
        again with it. This takes a while.
      </p>
      <Asking kind="limits" survey={survey} ask="Try each limit" again="Try each limit again">
        {answer && (
          <>
            {answer.stopped && <p>It was stopped: not every limit was tried.</p>}
            <ol className="limits">
              {helps.map((one) => (
                <li key={one.id}>
                  <h3>With {one.says}</h3>
                  <svg
                    viewBox="0 0 300 8"
                    className="part"
                    width="300"
                    height="8"
                    aria-hidden="true"
                  >
                    <line
                      className="done"
                      x1="0"
                      x2={(300 * Math.max(0, one.savesMinor)) / most}
                      y1="4"
                      y2="4"
                    />
                  </svg>
                  <p className="figures">{one.verdict}</p>
                </li>
              ))}
            </ol>
            {helps.length === 0 && !answer.stopped && (
              <p>None of them would make {props.plan.house}'s season any better.</p>
            )}
            {others.length > 0 && (
              <p className="quiet">
                Nothing better was found with {others.map(({ says }) => says).join('; ')}.
              </p>
            )}
          </>
        )}
      </Asking>
    </section>
  );
}
