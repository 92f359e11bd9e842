// One cell of the book: a line to write on, in pencil while it is not saved.
import { useState } from 'react';
import type { Units } from '../units.ts';
import { cellText, cellValue, unitOf } from './cells.ts';
import type { FieldSpec } from './fields.ts';

export const STYLES_LIST = 'known-styles';

export type CellProps = {
  spec: FieldSpec;
  value: unknown;
  /** The cell's whole name, as a screen reader says it: 'OG of Heron'. */
  name: string;
  units: Units;
  currency: string;
  yeasts: readonly string[];
  /** Not saved yet. */
  pencil: boolean;
  /** The id of what is wrong with it. */
  wrong?: string | undefined;
  write: (value: unknown) => void;
};

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

export function Cell(props: CellProps) {
  const { spec, value, units, currency, pencil, wrong } = props;
  const unit = unitOf(spec, units, currency);
  const name = unit === '' || unit === 'SG' ? props.name : `${props.name}, ${unit}`;
  const shared = {
    'aria-label': name,
    className: pencil ? 'cell pencil' : 'cell',
    ...(wrong === undefined ? {} : { 'aria-invalid': true, 'aria-describedby': wrong }),
  };
  const text = cellText(spec, value, units);
  const put = (written: string) => props.write(cellValue(spec, written, units));
  if (spec.kind === 'choice' || spec.kind === 'strain') {
    const options = spec.kind === 'strain' ? props.yeasts : (spec.options ?? []);
    return <Choice {...shared} spec={spec} text={text} options={options} put={put} />;
  }
  if (spec.kind === 'yesno' || spec.kind === 'maybe') {
    return <Choice {...shared} spec={spec} text={text} options={['yes', 'no']} put={put} />;
  }
  if (spec.kind === 'strains') {
    return <FirstStrain {...shared} {...props} strains={Array.isArray(value) ? value : []} />;
  }
  if (spec.kind === 'day' && (text === '' || ISO_DAY.test(text))) {
    return (
      <input
        {...shared}
        className={text === '' ? `${shared.className} empty` : shared.className}
        type="date"
        value={text}
        onChange={(event) => put(event.target.value)}
      />
    );
  }
  return <Line {...shared} spec={spec} text={text} put={put} />;
}

type Shared = { 'aria-label': string; className: string };

/** Text as it is typed; while it is, it is not written anew in the form in which it is kept. */
function Line(props: Shared & { spec: FieldSpec; text: string; put: (text: string) => void }) {
  const { spec, text, put, ...shared } = props;
  const [typed, setTyped] = useState<string | null>(null);
  const shown = typed ?? text;
  return (
    <input
      {...shared}
      type="text"
      value={shown}
      title={shown.length > spec.wide ? shown : undefined}
      inputMode={spec.kind === 'number' ? 'decimal' : 'text'}
      placeholder={spec.blank}
      autoComplete="off"
      spellCheck={false}
      {...(spec.kind === 'style' ? { list: STYLES_LIST } : {})}
      onChange={(event) => {
        setTyped(event.target.value);
        put(event.target.value);
      }}
      onBlur={() => setTyped(null)}
    />
  );
}

function Choice(
  props: Shared & {
    spec: FieldSpec;
    text: string;
    options: readonly string[];
    put: (text: string) => void;
  },
) {
  const { spec, text, options, put, ...shared } = props;
  const blank = spec.blank ?? (text === '' ? 'choose' : null);
  return (
    <select {...shared} value={text} onChange={(event) => put(event.target.value)}>
      {blank !== null && <option value="">{blank}</option>}
      {text !== '' && !options.includes(text) && <option value={text}>{text}</option>}
      {options.map((option) => (
        <option key={option} value={option}>
          {option}
        </option>
      ))}
    </select>
  );
}

/** The best liked strain; the others are named below it, and chosen in the fold. */
function FirstStrain(props: Shared & Omit<CellProps, 'value'> & { strains: unknown[] }) {
  const { strains, write, spec, yeasts, className } = props;
  const [first, ...others] = strains.map(String);
  const { 'aria-label': label } = props;
  return (
    <>
      <Choice
        aria-label={label}
        className={className}
        {...(props.wrong === undefined
          ? {}
          : { 'aria-invalid': true, 'aria-describedby': props.wrong })}
        spec={spec}
        text={first ?? ''}
        options={yeasts}
        put={(text) =>
          write([...(text === '' ? [] : [text]), ...others.filter((one) => one !== text)])
        }
      />
      {others.length > 0 && <span className="cell-more quiet">or {others.join(', ')}</span>}
    </>
  );
}

/** All the strains that a brew accepts, best liked first. */
export function Strains(props: {
  strains: readonly string[];
  yeasts: readonly string[];
  brew: string;
  write: (strains: string[]) => void;
}) {
  const { strains, yeasts, brew, write } = props;
  const free = yeasts.filter((yeast) => !strains.includes(yeast));
  return (
    <fieldset className="strains" aria-label={`Strains that ${brew} accepts`}>
      <span className="field-name">Accepts, best liked first</span>
      <ol>
        {strains.map((strain, at) => (
          <li key={strain}>
            {strain}
            {at > 0 && (
              <button
                type="button"
                className="word"
                aria-label={`Like ${strain} better`}
                onClick={() => write(strains.toSpliced(at, 1).toSpliced(at - 1, 0, strain))}
              >
                better
              </button>
            )}
            {strains.length > 1 && (
              <button
                type="button"
                className="word"
                aria-label={`Do not accept ${strain}`}
                onClick={() => write(strains.toSpliced(at, 1))}
              >
                strike out
              </button>
            )}
          </li>
        ))}
      </ol>
      {free.length > 0 && (
        <select
          className="cell"
          aria-label={`A further strain that ${brew} accepts`}
          value=""
          onChange={(event) => write([...strains, event.target.value])}
        >
          <option value="">or another …</option>
          {free.map((yeast) => (
            <option key={yeast}>{yeast}</option>
          ))}
        </select>
      )}
    </fieldset>
  );
}
