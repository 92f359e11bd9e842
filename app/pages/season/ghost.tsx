// A beer that is being moved: where it would lie, and how long, over the picture that stays as it is.
import type { Trial } from '../../../planner/index.ts';
import { dayNumber, isoDay, shortDay } from '../../parts/days.ts';
import { type Picture, xOfDay } from './geometry.ts';
import type { Moving } from './moving.ts';

export function Ghost(props: {
  picture: Picture;
  moving: Moving;
  trial: Trial | null;
  hue: number;
}) {
  const { picture, moving, trial } = props;
  const placed = picture.bars.find((one) => one.bar.brew === moving.brew);
  const row = picture.rows.find((one) => one.tank === moving.to.tank);
  if (!placed || !row) return null;
  const x = xOfDay(moving.to.day, picture) + picture.pxPerDay / 2;
  const told = trial !== null && dayNumber(trial.day) === moving.to.day ? trial : null;
  const width = told
    ? (dayNumber(told.emptiedOn) - moving.to.day) * picture.pxPerDay
    : placed.width;
  const breaks = (trial?.breaks.length ?? 0) > 0;
  return (
    <svg
      className={`ghost hue-${props.hue} ${breaks ? 'breaks' : ''}`}
      data-tank={moving.to.tank}
      aria-hidden="true"
    >
      <rect
        className="left-behind"
        x={placed.x}
        y={placed.y}
        width={placed.width}
        height={placed.height}
      />
      <rect className="carried" x={x} y={row.barTop} width={width} height={placed.height} />
      <rect className="edge" x={x} y={row.barTop} width={3} height={placed.height} />
      <text className="name" x={x + 8} y={row.barTop + placed.height / 2 - 2.5}>
        {breaks ? '! ' : ''}
        {moving.brew}
      </text>
      <text className="when" x={x + 8} y={row.barTop + placed.height - 6.5}>
        {shortDay(isoDay(moving.to.day))}
      </text>
    </svg>
  );
}
