// What the season is drawn on: hatchings, the band of the cold store, the calendar, a line for each tank.
import { memo } from 'react';
import type { House } from '../../../planner/index.ts';
import { temperature, type Units } from '../../parts/units.ts';
import { Axis } from './axis.tsx';
import type { Picture } from './geometry.ts';
import type { Sight } from './sight.ts';

export const Ground = memo(function Ground(props: {
  picture: Picture;
  house: House;
  axisHeight: number;
  today: number;
  sight: Sight;
}) {
  const { picture, house, sight } = props;
  const half = (picture.bars[0]?.height ?? 30) / 2;
  return (
    <>
      <Patterns />
      <rect
        className="store"
        x="0"
        y={picture.store.top}
        width={picture.width}
        height={picture.store.bottom - picture.store.top}
      />
      <Axis
        picture={picture}
        house={house}
        axisHeight={props.axisHeight}
        today={props.today}
        sight={sight}
      />
      {picture.rows.map((row) => (
        <line
          key={row.tank}
          className="row-line"
          x1="0"
          x2={picture.width}
          y1={row.barTop + half}
          y2={row.barTop + half}
        />
      ))}
    </>
  );
});

/** The names of the rows, beside what scrolls. */
export const RowNames = memo(function RowNames(props: {
  picture: Picture;
  house: House;
  units: Units;
}) {
  const { picture, house, units } = props;
  const middle = (picture.store.top + picture.store.bottom) / 2;
  return (
    <div className="row-names" aria-hidden="true">
      <svg width="100%" height={picture.height} aria-hidden="true">
        {picture.rows.map((row) => (
          <g key={row.tank}>
            <text className="tank" x="0" y={row.barTop + 15}>
              {row.tank}
            </text>
            <text className="tank-size" x="0" y={row.barTop + 29}>
              {tankSize(house, row.tank)}
            </text>
          </g>
        ))}
        <text className="tank" x="0" y={middle - 2}>
          cold store
        </text>
        <text className="tank-size" x="0" y={middle + 12}>
          {temperature(house.store.tempC, units)}
        </text>
      </svg>
    </div>
  );
});

/** Hatchings that bars and closed days refer to. */
function Patterns() {
  return (
    <defs>
      <pattern
        id="hatch-closed"
        width="5"
        height="5"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <line className="hatch-line" x1="0" x2="0" y1="0" y2="5" />
      </pattern>
      <pattern
        id="hatch-crash"
        width="4"
        height="4"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(-45)"
      >
        <line className="crash-line" x1="0" x2="0" y1="0" y2="4" />
      </pattern>
    </defs>
  );
}

function tankSize(house: House, name: string): string {
  const tank = house.tanks.find((one) => one.tank === name);
  return tank ? `${tank.minFillL}–${tank.maxFillL} L` : '';
}
