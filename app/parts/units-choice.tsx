// The switch of units at the foot of every sheet.
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import { useUnits } from './units.ts';

/** One choice of two or more words. */
export function Choices<T extends string>(props: {
  label: string;
  /** null: none of them. */
  value: T | null;
  options: readonly { value: T; says: string }[];
  choose: (value: T) => void;
}) {
  return (
    <ToggleButtonGroup
      aria-label={props.label}
      className="choices"
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={props.value === null ? [] : [props.value]}
      onSelectionChange={(keys) => {
        const chosen = props.options.find((option) => keys.has(option.value));
        if (chosen) props.choose(chosen.value);
      }}
    >
      {props.options.map((option) => (
        <ToggleButton key={option.value} id={option.value}>
          {option.says}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}

export function UnitsChoice() {
  const [units, keep] = useUnits();
  return (
    <>
      <Choices
        label="Volumes and temperatures"
        value={units.volume}
        options={[
          { value: 'metric', says: 'litres, °C' },
          { value: 'us', says: 'gallons, °F' },
        ]}
        choose={(volume) => keep({ ...units, volume })}
      />
      <Choices
        label="Gravities"
        value={units.gravity}
        options={[
          { value: 'sg', says: 'SG' },
          { value: 'plato', says: '°P' },
        ]}
        choose={(gravity) => keep({ ...units, gravity })}
      />
      <Choices
        label="Colours"
        value={units.colour}
        options={[
          { value: 'ebc', says: 'EBC' },
          { value: 'srm', says: 'SRM' },
        ]}
        choose={(colour) => keep({ ...units, colour })}
      />
    </>
  );
}
