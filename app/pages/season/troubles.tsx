// What the plan could not do: rules that are broken and brews that were left out, in the planner's own words.
import type { Plan } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';

export function Broken(props: { plan: Plan }) {
  return (
    <>
      {props.plan.broken.map((finding) => (
        <p className="notice" key={`${finding.rule} ${finding.subject}`}>
          {finding.says} <span className="quiet">{finding.remedy}</span>
        </p>
      ))}
    </>
  );
}

export function LeftOut(props: { plan: Plan }) {
  const { leftOut } = props.plan;
  if (leftOut.length === 0) return null;
  return (
    <section className="below" aria-labelledby="left-out">
      <h2 id="left-out">Left out</h2>
      {leftOut.map((brew) => (
        <div className="left-out" key={brew.brew}>
          <h3>{brew.brew}</h3>
          <ul>
            {brew.blockedBy.map((block) => (
              <li key={`${block.rule} ${block.says}`}>{block.says}</li>
            ))}
          </ul>
          <p>
            {brew.wayOut}
            {brew.nearestDay && (
              <span className="quiet">
                {' '}
                Nearest day that would work: {shortDay(brew.nearestDay)}.
              </span>
            )}
          </p>
        </div>
      ))}
    </section>
  );
}

/** What the brewer should know about the input. */
export function PlanNotes(props: { plan: Plan }) {
  const { notes } = props.plan;
  if (notes.length === 0) return null;
  return (
    <section className="below" aria-labelledby="plan-notes">
      <h2 id="plan-notes">To know about this season</h2>
      <ul className="plan-notes">
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </section>
  );
}
