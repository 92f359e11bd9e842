// One pitch, explained: what goes in, how alive it is, what could go wrong and what that is worth, and what else there was.
import { useSuspenseQueries } from '@tanstack/react-query';
import type { House, Plan, PlannedBrew, Range } from '../../../planner/index.ts';
import { longDay, shortDay } from '../../parts/days.ts';
import { money } from '../../parts/money.ts';
import { strainLooks } from '../../parts/strains.ts';
import {
  colour,
  gravity,
  litres,
  millilitres,
  temperature,
  type Units,
  useUnits,
} from '../../parts/units.ts';
import { count, percent } from '../../parts/words.ts';
import { houseQuery } from '../../queries/house.ts';
import { planQuery } from '../../queries/plan.ts';
import { hashOf } from '../../router.ts';
import { ThreadSample } from '../season/notes.tsx';
import { SomethingElse } from '../tasks/something-else.tsx';
import { Decide } from './decide.tsx';
import { SourceList } from './source-list.tsx';
import { ageingOf } from './viability.ts';
import { ViabilityPicture } from './viability-picture.tsx';

export function PitchPage(props: { brew: string }) {
  const [plan, house] = useSuspenseQueries({ queries: [planQuery, houseQuery] });
  const brew = plan.data.plan?.brews.find((one) => one.brew === props.brew);
  if (plan.data.plan && house.data.house && brew) {
    return (
      <Pitch brew={brew} plan={plan.data.plan} planId={plan.data.id} house={house.data.house} />
    );
  }
  const left = plan.data.plan?.leftOut.find((one) => one.brew === props.brew);
  return (
    <>
      <h1 className="season-title">{props.brew}</h1>
      <p>
        {left
          ? `${props.brew} is left out of the plan. ${left.wayOut}`
          : 'The plan in force has no brew of this name.'}
      </p>
      <p>
        <a href="#/">Back to the season</a>
      </p>
    </>
  );
}

function Pitch(props: { brew: PlannedBrew; plan: Plan; planId: string | null; house: House }) {
  const { brew, plan, house } = props;
  const [units] = useUnits();
  const look = strainLooks(plan, house).get(brew.yeast);
  const ageing = ageingOf(brew, plan, house);
  return (
    <article className="pitch">
      <p className="back">
        <a href="#/">← The season</a>
      </p>
      <h1 className="season-title">{brew.brew}</h1>
      <p className="lead">
        {brew.style && `${brew.style}. `}
        {brew.done ? 'Brewed' : 'To be brewed'} <span className="red">{longDay(brew.day)}</span>{' '}
        into {brew.tank}, emptied {longDay(brew.emptiedOn)}, ready {longDay(brew.readyOn)}
        {brew.daysLate > 0 ? `, ${count(brew.daysLate, 'day')} late` : ''}.
      </p>
      <BeerLine brew={brew} house={house} units={units} />
      <div className="pitch-columns">
        <section aria-labelledby="source">
          <h2 id="source">What is pitched</h2>
          <p className={`strain hue-${look?.hue ?? 1}`}>
            {look && <ThreadSample look={look} />} <span>{brew.yeast}</span>
          </p>
          <SourceList brew={brew} units={units} />
        </section>
        <section aria-labelledby="alive">
          <h2 id="alive">How much of it is alive</h2>
          {ageing && look ? (
            <ViabilityPicture ageing={ageing} look={look} />
          ) : (
            <p>
              Likely {percent(brew.viability.likely)}; {percent(brew.viability.low)} to{' '}
              {percent(brew.viability.high)}.
            </p>
          )}
          {brew.pitchedViability && (
            <p className="figures">
              That is what goes into the starter. Out of it, into the wort: likely{' '}
              {percent(brew.pitchedViability.likely)} alive, {percent(brew.pitchedViability.low)} to{' '}
              {percent(brew.pitchedViability.high)}; most of its cells are new.
            </p>
          )}
          <CountsLine brew={brew} />
        </section>
        <section aria-labelledby="why">
          <h2 id="why">Why this way</h2>
          <ul className="reasons">
            {brew.why.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </section>
        <Hazards brew={brew} plan={plan} />
        <Alternative brew={brew} plan={plan} />
        <section aria-labelledby="fallback">
          <h2 id="fallback">If it fails the check</h2>
          <p>
            {brew.checkOn ? (
              <>
                The jar is checked on <span className="red">{longDay(brew.checkOn)}</span>.{' '}
              </>
            ) : (
              'Fresh packs need no check of a jar. '
            )}
            {brew.fallback.says}
            {brew.fallback.decideBy ? ` Decide by ${shortDay(brew.fallback.decideBy)}.` : ''}
          </p>
        </section>
      </div>
      {!brew.done && (
        <Decide
          key={`${brew.day} ${brew.tank}`}
          brew={brew}
          plan={plan}
          planId={props.planId}
          house={house}
        />
      )}
      <p className="tell-other">
        <SomethingElse
          subject={{ brew: brew.brew }}
          says={`Something happened with ${brew.brew}`}
        />
      </p>
      <Family brew={brew} plan={plan} units={units} />
    </article>
  );
}

/** What the prediction rests on, and what it was before the house counted. */
function CountsLine(props: { brew: PlannedBrew }) {
  const { counts, beforeCounts, viability, source } = props.brew;
  if (source.kind === 'fresh') return null;
  if (counts === 0 || beforeCounts === null) {
    return <p className="quiet">No counts of this strain yet: the default.</p>;
  }
  const words = (range: Range) =>
    `${percent(range.likely)}, ${percent(range.low)} to ${percent(range.high)}`;
  return (
    <p className="quiet figures">
      From {count(counts, 'count')} of this strain. Before them: {words(beforeCounts)}. With them:{' '}
      {words(viability)}.
    </p>
  );
}

function BeerLine(props: { brew: PlannedBrew; house: House; units: Units }) {
  const { units } = props;
  const beer = props.house.brews.find((one) => one.brew === props.brew.brew);
  if (!beer) return null;
  return (
    <p className="quiet figures">
      {litres(beer.volumeL, units)} at {gravity(beer.og, units)}, to {gravity(beer.fg, units)};{' '}
      {colour(beer.ebc, units)}, {beer.ibu} IBU; fermented at {temperature(beer.fermentC, units)}
    </p>
  );
}

function Hazards(props: { brew: PlannedBrew; plan: Plan }) {
  const { brew, plan } = props;
  return (
    <section aria-labelledby="hazards">
      <h2 id="hazards">What could go wrong, and what that is worth</h2>
      {brew.hazards.length === 0 ? (
        <p>Nothing that the plan reckons with.</p>
      ) : (
        <table className="sums">
          <thead>
            <tr>
              <th scope="col">Hazard</th>
              <th scope="col" className="amount">
                Guessed cost
              </th>
            </tr>
          </thead>
          <tbody>
            {brew.hazards.map((hazard) => (
              <tr key={hazard.rule}>
                <td>{hazard.says}</td>
                <td className="amount">{money(hazard.costMinor, plan)}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">Together, a guess and no cash</th>
              <td className="amount">{money(brew.riskMinor, plan)}</td>
            </tr>
          </tfoot>
        </table>
      )}
    </section>
  );
}

function Alternative(props: { brew: PlannedBrew; plan: Plan }) {
  const { alternative } = props.brew;
  return (
    <section aria-labelledby="alternative">
      <h2 id="alternative">The best other way, and why it lost</h2>
      {alternative === null ? (
        <p>There was no other way.</p>
      ) : (
        <p>
          <strong>{alternative.source}</strong>, {shortDay(alternative.day)} in {alternative.tank}.{' '}
          {alternative.says}
        </p>
      )}
    </section>
  );
}

function Family(props: { brew: PlannedBrew; plan: Plan; units: Units }) {
  const { brew, plan } = props;
  const ml = (amount: number) => millilitres(amount, props.units);
  const harvest = plan.harvests.find((one) => one.brew === brew.brew);
  const chains = plan.chains.filter((chain) => chain.brews.includes(brew.brew));
  return (
    <section className="below" aria-labelledby="family">
      <h2 id="family">Its yeast afterwards</h2>
      {harvest ? (
        <p className="figures">
          Harvested {longDay(harvest.day)}: likely {ml(harvest.settledMl.likely)} settled (
          {ml(harvest.settledMl.low)} to {ml(harvest.settledMl.high)}), to be used by{' '}
          {shortDay(harvest.discardBy)}.
        </p>
      ) : (
        <p>It is not harvested.</p>
      )}
      <ul className="chains">
        {chains.map((chain) => (
          <li key={`${chain.root} ${chain.brews.join(' ')}`}>
            {chain.root}
            {chain.brews.map((name) => (
              <span key={name}>
                {' → '}
                {name === brew.brew ? (
                  <strong>{name}</strong>
                ) : (
                  <a href={hashOf({ page: 'pitch', brew: name })}>{name}</a>
                )}
              </span>
            ))}
            . <em>{chain.endsBecause}</em>
          </li>
        ))}
      </ul>
    </section>
  );
}
