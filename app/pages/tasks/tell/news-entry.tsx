// One field of a form of news: a list where it names something, else a line to write on, with what was refused beside it.
import { useId } from 'react';
import type { Units } from '../../../parts/units.ts';
import { type NewsField, unitOfField } from './news-form.ts';
import type { Choice } from './offers.ts';

export function NewsEntry(props: {
  field: NewsField;
  text: string;
  choices: readonly Choice[];
  units: Units;
  wrong: readonly string[];
  write: (text: string) => void;
}) {
  const { field, text, choices, units, wrong, write } = props;
  const { spec } = field;
  const id = useId();
  const unit = unitOfField(field, units);
  const shared = {
    id,
    className: 'input',
    value: text,
    'aria-required': field.required,
    ...(wrong.length === 0 ? {} : { 'aria-invalid': true, 'aria-describedby': `${id}wrong` }),
  };
  const listed =
    field.names !== null
      ? choices
      : spec.options?.map((value) => ({ value, says: value.replaceAll('-', ' ') }));
  return (
    <div className="field">
      <label htmlFor={id}>
        {unit === '' ? spec.label : `${spec.label}, ${unit}`}
        {!field.required && spec.blank !== undefined && (
          <span className="quiet"> (blank: {spec.blank === '' ? 'not known' : spec.blank})</span>
        )}
      </label>
      {listed !== undefined ? (
        <select {...shared} onChange={(event) => write(event.target.value)}>
          {(!field.required || text === '') && (
            <option value="">{field.required ? 'choose' : ''}</option>
          )}
          {listed.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.says}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          type={spec.kind === 'day' ? 'date' : 'text'}
          inputMode={spec.kind === 'number' ? 'decimal' : undefined}
          autoComplete="off"
          onChange={(event) => write(event.target.value)}
        />
      )}
      {wrong.length > 0 && (
        <p id={`${id}wrong`} className="red">
          {wrong.join(' ')}
        </p>
      )}
    </div>
  );
}
