// What the brewer may decide of a pitch: hold its source or rule it out, and hold the brew to another day or tank.
import { useQuery } from '@tanstack/react-query';
import { useId, useState } from 'react';
import { Button } from 'react-aria-components';
import type { House, News, Plan, PlannedBrew, SourceRef } from '../../../planner/index.ts';
import { dayNumber, isoDay, longDay } from '../../parts/days.ts';
import { type Decision, DecisionNotice, useDecision } from '../../parts/decision.tsx';
import { recordQuery, type Told } from '../../queries/record.ts';
import { useTrial } from '../../queries/trial.ts';
import { reachOf } from '../season/moving.ts';
import { TrialWords } from '../season/trial-words.tsx';
import { newsWords, standing } from '../tasks/told.ts';

type Props = { brew: PlannedBrew; plan: Plan; planId: string | null; house: House };

/** The source of a planned pitch as a decision names it. */
export function sourceRefOf({ source }: PlannedBrew): SourceRef {
  if (source.kind === 'jar') return { kind: 'jar', jar: source.jar };
  if (source.kind === 'harvest') return { kind: 'harvest', brew: source.brew };
  return { kind: 'fresh' };
}

/** A source in the middle of a sentence. */
export function sourceRefWords(source: SourceRef): string {
  if (source.kind === 'jar') return `jar ${source.jar}`;
  return source.kind === 'harvest' ? `slurry from ${source.brew}` : 'fresh packs';
}

const KINDS: readonly News['kind'][] = ['pinned', 'source-forbidden'];

/** Decisions on this brew that still hold, oldest first: a later letting go ends those before it. */
export function decisionsOn(brew: string, entries: readonly Told[]): Told[] {
  const own = standing(entries).filter(({ news }) => 'brew' in news && news.brew === brew);
  const freed = own.findLastIndex(({ news }) => news.kind === 'unpinned' && news.what === null);
  return own.filter(
    ({ news }, at) => KINDS.includes(news.kind) && (news.kind !== 'pinned' || at > freed),
  );
}

export function Decide(props: Props) {
  const { brew } = props;
  const decision = useDecision();
  const entries = useQuery(recordQuery).data?.entries ?? [];
  const held = decisionsOn(brew.brew, entries);
  const source = sourceRefOf(brew);
  const words =
    brew.source.kind === 'harvest' && brew.source.ofStarter
      ? `yeast kept from the starter of ${brew.source.brew}`
      : sourceRefWords(source);
  return (
    <section className="below decide" aria-labelledby="decide">
      <h2 id="decide">Decide otherwise</h2>
      <p className="lead-text">
        What you decide is kept; the planner lays the rest around it and shows you what would
        change.
      </p>
      {held.length > 0 && (
        <ul className="told" aria-label="Decided">
          {held.map((entry) => (
            <HeldItem key={entry.no} entry={entry} decision={decision} />
          ))}
        </ul>
      )}
      <div className="decide-acts">
        <Button
          className="button"
          isDisabled={decision.isPending}
          onPress={() => decision.decide({ kind: 'pinned', brew: brew.brew, source })}
        >
          Hold it to {words}
        </Button>
        <Button
          className="button"
          isDisabled={decision.isPending}
          onPress={() => decision.decide({ kind: 'source-forbidden', brew: brew.brew, source })}
        >
          Rule out {words}
        </Button>
      </div>
      <Elsewhere {...props} decision={decision} />
      <DecisionNotice decision={decision} />
    </section>
  );
}

function HeldItem(props: { entry: Told; decision: Decision }) {
  const { entry, decision } = props;
  const words = newsWords(entry, () => null);
  return (
    <li>
      <span>{words}</span>
      <Button
        className="button small"
        isDisabled={decision.isPending}
        aria-label={`Take back: ${words}`}
        onPress={() => decision.decide({ kind: 'undone', entry: entry.no })}
      >
        Take back
      </Button>
    </li>
  );
}

/** Another day or tank, chosen from lists: the same as carrying the beer there in the season's picture. */
function Elsewhere(props: Props & { decision: Decision }) {
  const { brew, plan, planId, house, decision } = props;
  const [day, setDay] = useState(brew.day);
  const [tank, setTank] = useState(brew.tank);
  const ids = useId();
  const reach = reachOf(house, dayNumber(plan.today));
  const days: string[] = [];
  for (let at = reach.first; at <= reach.last; at += 1) {
    if (reach.brewDay(at) || isoDay(at) === brew.day) days.push(isoDay(at));
  }
  const stays = day === brew.day && tank === brew.tank;
  const move = { brew: brew.brew, day, tank };
  const { trial, error } = useTrial(planId, stays ? null : move);
  return (
    <div className="elsewhere">
      <p className="decide-acts">
        <span className="decide-field">
          <label htmlFor={`${ids}day`} className="field-name">
            Brew day
          </label>
          <select id={`${ids}day`} value={day} onChange={(event) => setDay(event.target.value)}>
            {days.map((one) => (
              <option key={one} value={one}>
                {longDay(one)}
              </option>
            ))}
          </select>
        </span>
        <span className="decide-field">
          <label htmlFor={`${ids}tank`} className="field-name">
            Tank
          </label>
          <select id={`${ids}tank`} value={tank} onChange={(event) => setTank(event.target.value)}>
            {house.tanks.map((one) => (
              <option key={one.tank}>{one.tank}</option>
            ))}
          </select>
        </span>
        <Button
          className="button"
          isDisabled={decision.isPending || error !== null}
          onPress={() => decision.decide({ kind: 'pinned', ...move })}
        >
          Hold it there
        </Button>
      </p>
      <div className="trial" role="status">
        <TrialWords asked={{ ...move, trial, error }} plan={plan} stays={stays} remedies />
      </div>
    </div>
  );
}
