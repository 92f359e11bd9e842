// What the plan could not do: rules that are broken and brews that were left out, in the planner's own words.
import type { Plan } from '../../../planner/index.ts';
import { shortDay } from '../../parts/days.ts';

export function Broken(props: { plan: Plan }) {
  const { broken, notes } = props.plan;
  return (
    <>
      {broken.map((finding) => (
        <p className="notice" key={`${finding.rule} ${finding.subject}`}>
          {finding.says} <span className="quiet">{finding.remedy}</span>
        </p>
      ))}
      {notes.length > 0 && (
        <ul className="plan-notes quiet">
          {notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
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
