// What a brew on another day or in another tank would break or cost, in the planner's own words.
import type { Plan, Trial } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';
import { ErrorNotice } from '../../parts/failed.tsx';
import { money, moneyDifference } from '../../parts/money.ts';
import { count } from '../../parts/words.ts';

/** Lines of cost that are written out; the rest is in the sum. */
const SHOWN = 4;

export type TrialAsked = {
  brew: string;
  day: string;
  tank: string;
  trial: Trial | null;
  error: unknown;
};

/** @param remedies whether each broken rule comes with what to do about it */
export function TrialWords(props: {
  asked: TrialAsked;
  plan: Plan;
  stays: boolean;
  remedies: boolean;
}) {
  const { asked, plan, stays } = props;
  const { trial } = asked;
  // While the next answer is on its way the last one stands, under its own day and tank.
  const { day, tank } = trial ?? asked;
  const where = `${asked.brew} on ${shortDay(day)} in ${tank}`;
  if (stays) return <p>{where}: where it stands in the plan.</p>;
  if (asked.error !== null) return <ErrorNotice error={asked.error} />;
  if (trial === null) return <p>{where} …</p>;
  const says = (minor: number) => moneyDifference(minor, plan);
  return (
    <>
      <p>
        <strong>{where}</strong>, emptied {shortDay(trial.emptiedOn)}, ready{' '}
        {shortDay(trial.readyOn)}
        {trial.daysLate > 0 ? `, ${count(trial.daysLate, 'day')} late` : ''}:{' '}
        <strong className={trial.breaks.length > 0 ? 'red' : ''}>{breakWords(trial)}</strong>{' '}
        <span className="figures">
          {trial.costMinor === 0
            ? 'It costs the same.'
            : `${says(trial.costMinor)}${partWords(trial, plan)}.`}
        </span>
      </p>
      {(trial.breaks.length > 0 || trial.lines.length > 0) && (
        <ul className="trial-lines">
          {trial.breaks.map((finding) => (
            <li key={`${finding.rule} ${finding.subject}`}>
              <span className="red">{finding.says}</span>
              {props.remedies && <span className="quiet"> {finding.remedy}</span>}
            </li>
          ))}
          {trial.lines.slice(0, SHOWN).map((line) => (
            <li key={`${line.rule} ${line.subject}`} className="figures">
              {line.says} <span className="quiet">{line.title}:</span> {says(line.differenceMinor)}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function breakWords(trial: Trial): string {
  const mended = trial.mends.length > 0 ? ` It mends ${count(trial.mends.length, 'rule')}.` : '';
  if (trial.breaks.length === 0) return `breaks no rule.${mended}`;
  return `breaks ${count(trial.breaks.length, 'rule')}, all else as it stands.${mended}`;
}

/** Where the difference lies: ' (cash €3 less, risk €4.20 more)'; '' where it is one part alone and that is said. */
function partWords(trial: Trial, plan: Plan): string {
  const parts = [
    { says: 'cash', minor: trial.cashMinor },
    { says: 'work', minor: trial.workMinor },
    { says: 'guessed risk', minor: trial.riskMinor },
  ].filter((part) => part.minor !== 0);
  if (parts.length === 1) return `, all of it ${parts[0]?.says}`;
  const words = parts.map(
    ({ says, minor }) => `${says} ${money(Math.abs(minor), plan)} ${minor > 0 ? 'more' : 'less'}`,
  );
  return ` (${words.join(', ')})`;
}
