// Days of the week of the house: which it brews on, works on, begins starters on.
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { Checked } from './check.ts';
import { headSpec } from './head-fields.ts';
import { HeadProblems, headValue, isPencil, writePlace } from './head-line.tsx';
import type { OpenBook } from './store.ts';

const DAYS = [
  ['mon', 'Mon'],
  ['tue', 'Tue'],
  ['wed', 'Wed'],
  ['thu', 'Thu'],
  ['fri', 'Fri'],
  ['sat', 'Sat'],
  ['sun', 'Sun'],
] as const;

export function WeekDays(props: { open: OpenBook; checked: Checked; place: string }) {
  const { open, checked, place } = props;
  const spec = headSpec(place);
  if (spec === null) return null;
  const value = headValue(open.book.head, place);
  const days = Array.isArray(value) ? value.map(String) : [];
  const put = (to: readonly string[] | null) => writePlace(place, to, spec.label);
  return (
    <div className="head-line">
      <span className="head-label" aria-hidden="true">
        {spec.label}
      </span>
      <span className={isPencil(open, place) ? 'week pencil-week' : 'week'}>
        {spec.blank !== undefined && (
          <label className="week-blank">
            <input
              type="checkbox"
              checked={value === null || value === undefined}
              aria-label={`${spec.label}: ${spec.blank}`}
              onChange={(event) => put(event.target.checked ? null : brewDaysOf(open))}
            />
            {spec.blank}
          </label>
        )}
        {(spec.blank === undefined || Array.isArray(value)) && (
          <ToggleButtonGroup
            className="choices"
            aria-label={spec.label}
            selectionMode="multiple"
            selectedKeys={days}
            onSelectionChange={(keys) => put(DAYS.flatMap(([day]) => (keys.has(day) ? [day] : [])))}
          >
            {DAYS.map(([day, says]) => (
              <ToggleButton key={day} id={day}>
                {says}
              </ToggleButton>
            ))}
          </ToggleButtonGroup>
        )}
      </span>
      <HeadProblems checked={checked} place={place} />
    </div>
  );
}

function brewDaysOf({ book }: OpenBook): string[] {
  const { brewDays } = book.head;
  return Array.isArray(brewDays) ? brewDays.map(String) : [];
}
