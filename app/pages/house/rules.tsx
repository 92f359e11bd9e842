// The rules of the house as sentences, each with one thing to turn, and the way back to what is normal.
import { useState } from 'react';
import {
  Button,
  Disclosure,
  DisclosurePanel,
  Input,
  Label,
  SearchField,
} from 'react-aria-components';
import type { InBook } from '../../parts/book/book-frame.tsx';
import { Cell } from '../../parts/book/cell.tsx';
import { unitOf, valueWords } from '../../parts/book/cells.ts';
import { ruleSpec } from '../../parts/book/head-fields.ts';
import { HeadProblems, headValue, isPencil, writePlace } from '../../parts/book/head-line.tsx';
import { write } from '../../parts/book/store.ts';
import { useUnits } from '../../parts/units.ts';
import { Choices } from '../../parts/units-choice.tsx';
import { count } from '../../parts/words.ts';
import { hasWord, type Kind, type RuleGroup, type RuleLine, ruleGroups } from './rule-lines.ts';

export function Rules(props: InBook) {
  const { open } = props;
  const [word, setWord] = useState('');
  const kind: Kind = open.book.head.kind === 'nano' ? 'nano' : 'home';
  const groups = ruleGroups(kind);
  const own = ownPlaces(open.book.head);
  return (
    <section className="below" aria-labelledby="rules">
      <h2 id="rules">Rules and weights</h2>
      <p className="lead-text">
        Every rule that the plan follows, in a sentence. What you turn here stands in pencil; 'See
        what the plan makes of it' shows what it does before you save.
      </p>
      <div className="ledger-head">
        <SearchField className="field find" value={word} onChange={setWord}>
          <Label>Find a rule by a word</Label>
          <Input className="input" />
        </SearchField>
        {own.length > 0 && (
          <Button
            className="button"
            onPress={() =>
              write(
                (book) => ({
                  ...book,
                  head: { ...book.head, rules: {}, weights: {}, relaxed: [] },
                }),
                'all rules as they come',
              )
            }
          >
            Set all {count(own.length, 'turned line')} back
          </Button>
        )}
      </div>
      {groups.map((group) => (
        <Group
          key={group.says}
          group={group}
          word={word}
          turned={group.lines.filter((line) => own.includes(line.id)).length}
          {...props}
        />
      ))}
    </section>
  );
}

/** The rules and settings that the house has turned. */
function ownPlaces(head: InBook['open']['book']['head']): string[] {
  const keys = (part: unknown) =>
    typeof part === 'object' && part !== null ? Object.keys(part) : [];
  const relaxed = Array.isArray(head.relaxed) ? head.relaxed.map(String) : [];
  return [...new Set([...keys(head.rules), ...keys(head.weights), ...relaxed])];
}

function Group(props: InBook & { group: RuleGroup; word: string; turned: number }) {
  const { group, word, turned } = props;
  const [opened, setOpened] = useState(false);
  const lines =
    word.trim() === '' ? group.lines : group.lines.filter((line) => hasWord(line, word));
  if (lines.length === 0) return null;
  const shown = opened || word.trim() !== '';
  return (
    <Disclosure className="rule-group" isExpanded={shown} onExpandedChange={setOpened}>
      <h3>
        <Button slot="trigger" className="rule-group-title">
          <span>{group.says}</span>
          <span className="quiet">
            {count(lines.length, 'line')}
            {turned > 0 ? `, ${turned} turned` : ''}
          </span>
        </Button>
      </h3>
      <DisclosurePanel>
        {group.about !== '' && <p className="quiet">{group.about}</p>}
        <ul className="lines">
          {shown && lines.map((line) => <Line key={line.id} {...props} line={line} />)}
        </ul>
      </DisclosurePanel>
    </Disclosure>
  );
}

function Line(props: InBook & { line: RuleLine }) {
  const { open, line } = props;
  const { relaxed } = open.book.head;
  const soft = Array.isArray(relaxed) && relaxed.includes(line.id);
  return (
    <li className="rule-line">
      <p>
        {line.says}
        {line.turning !== '' && (!line.relaxable || soft) && (
          <span className="quiet"> {line.turning}</span>
        )}
      </p>
      {line.relaxable && <Soften {...props} soft={soft} />}
      {line.dial && (!line.relaxable || soft) && <Turn {...props} dial={line.dial} />}
      {line.dial && (
        <HeadProblems
          checked={props.checked}
          place={line.dial.place}
          id={`wrong-${line.dial.place}`}
        />
      )}
    </li>
  );
}

function Soften(props: InBook & { line: RuleLine; soft: boolean }) {
  const { open, line, soft } = props;
  const { relaxed } = open.book.head;
  const others = Array.isArray(relaxed) ? relaxed.filter((id) => id !== line.id) : [];
  return (
    <Choices
      label={line.says}
      value={soft ? 'costs' : 'forbids'}
      options={[
        { value: 'forbids', says: 'forbids' },
        { value: 'costs', says: 'costs' },
      ]}
      choose={(how) =>
        writePlace('relaxed', how === 'costs' ? [...others, line.id] : others, line.says)
      }
    />
  );
}

function Turn(props: InBook & { line: RuleLine; dial: NonNullable<RuleLine['dial']> }) {
  const { open, checked, line, dial } = props;
  const [units] = useUnits();
  const currency = String(open.book.head.currency ?? '');
  const spec = ruleSpec(dial.place, line.says, dial.unit);
  const own = headValue(open.book.head, dial.place);
  const turned = own !== undefined;
  const unit = unitOf(spec, units, currency);
  return (
    <div className="turn">
      <Cell
        spec={spec}
        value={turned ? own : dial.normal}
        name={line.says}
        units={units}
        currency={currency}
        yeasts={[]}
        pencil={isPencil(open, dial.place)}
        wrong={checked.at(dial.place).length > 0 ? `wrong-${dial.place}` : undefined}
        write={(value) =>
          writePlace(dial.place, value === dial.normal ? undefined : value, line.says)
        }
      />
      <span className="quiet">{unit === 'SG' ? '' : unit}</span>
      {turned && (
        <button
          type="button"
          className="word"
          aria-label={`Set back to ${valueWords(spec, dial.normal, units, currency)}: ${line.says}`}
          onClick={() => writePlace(dial.place, undefined, line.says)}
        >
          set back to {valueWords(spec, dial.normal, units, currency)}
        </button>
      )}
      <span className="rule-source quiet">{dial.source}</span>
    </div>
  );
}
