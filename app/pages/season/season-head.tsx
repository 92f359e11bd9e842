// The three lines above the picture: the next step, the money, and how the plan stands.
import type { House, Plan } from '../../../planner/index.ts';
import { distance, longDay } from '../../parts/days.ts';
import { money } from '../../parts/money.ts';
import { count } from '../../parts/words.ts';
import type { PlanInForce } from '../../queries/plan.ts';

export function SeasonHead(props: { plan: Plan; house: House; inForce: PlanInForce }) {
  const { plan, inForce } = props;
  const next = inForce.tasks.next[0];
  return (
    <div className="season-head">
      <section aria-labelledby="head-next">
        <h2 className="field-name" id="head-next">
          Next
        </h2>
        {next ? (
          <>
            <p className="lead">
              <a href="#/tasks">{next.title}</a>
            </p>
            <p>
              <span className="red">{longDay(next.day)}</span>
              {next.time ? ` at ${next.time}` : ''}, {distance(inForce.today, next.day)}
              {next.minutes > 0 ? `; takes ${next.minutes} minutes` : ''}
            </p>
          </>
        ) : (
          <p className="lead">Nothing is left to do in this season.</p>
        )}
        {inForce.tasks.overdue > 0 && (
          <p>
            <a href="#/tasks">{count(inForce.tasks.overdue, 'task')}</a> of earlier days{' '}
            {inForce.tasks.overdue === 1 ? 'is' : 'are'} not ticked off.
          </p>
        )}
      </section>
      <MoneyLine plan={plan} />
      <StatusLine plan={plan} inForce={inForce} />
    </div>
  );
}

function MoneyLine(props: { plan: Plan }) {
  const { totals, baselines } = props.plan;
  const saved = baselines.freshOnly.cashMinor - totals.cashMinor;
  const say = (minor: number) => money(minor, props.plan);
  return (
    <section aria-labelledby="head-money">
      <h2 className="field-name" id="head-money">
        Cash for yeast
      </h2>
      <p className="lead figures">
        {saved >= 0
          ? `${say(saved)} less than buying fresh`
          : `${say(-saved)} more than buying fresh`}
      </p>
      <p className="figures">
        {say(totals.cashMinor)} instead of {say(baselines.freshOnly.cashMinor)} with fresh packs for
        every brew.
      </p>
      <p className="quiet figures">
        Risk, a guess and kept apart: {say(totals.riskMinor)}, against{' '}
        {say(baselines.freshOnly.riskMinor)} with fresh packs.
      </p>
    </section>
  );
}

/** How the plan stands, in words. */
export function statusWords(plan: Plan): string {
  const troubles = [
    plan.broken.length > 0 ? `${count(plan.broken.length, 'rule')} cannot be kept` : '',
    plan.leftOut.length > 0 ? `${count(plan.leftOut.length, 'brew')} would not fit` : '',
  ].filter((words) => words !== '');
  return troubles.length > 0 ? troubles.join(', ') : 'Every brew has its day and its yeast';
}

function StatusLine(props: { plan: Plan; inForce: PlanInForce }) {
  const { plan, inForce } = props;
  const late = plan.brews.filter((brew) => brew.daysLate > 0).length;
  return (
    <section aria-labelledby="head-status">
      <h2 className="field-name" id="head-status">
        The plan
      </h2>
      <p className="lead">{statusWords(plan)}</p>
      <p className="figures">
        {count(plan.brews.length, 'brew')}, {count(plan.totals.packs, 'pack')} in{' '}
        {count(plan.totals.deliveries, 'delivery', 'deliveries')};{' '}
        {late === 0
          ? 'none ready late'
          : `${late} ready later than wanted, ${count(plan.totals.lateDays, 'day')} in all`}
        .
      </p>
      <p className="quiet figures">{plan.bound?.says ?? plan.noBound}</p>
      {inForce.behind.says && <p className="red">{inForce.behind.says}</p>}
    </section>
  );
}
