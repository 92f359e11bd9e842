// The strip below the calendar that tells of one beer when it may be brewed, is ready and is wanted.
import { type Picture, xOfDay } from './geometry.ts';

/** When the brew under the pointer may be brewed, is ready and is wanted: a strip below the calendar. */
export function ActiveWindow(props: { picture: Picture; active: string | null; y: number }) {
  const { picture, y } = props;
  const placed = picture.bars.find((one) => one.bar.brew === props.active);
  if (!placed) return null;
  const { bar } = placed;
  const mid = (day: number) => xOfDay(day, picture) + picture.pxPerDay / 2;
  const from = bar.notBefore === null ? null : mid(bar.notBefore);
  const by = bar.readyBy === null ? null : mid(bar.readyBy);
  const ready = mid(bar.ready);
  return (
    <svg className="window" aria-hidden="true">
      {from !== null && by !== null && (
        <rect
          className="window-band"
          x={from}
          y={y}
          width={Math.max(0, by - from)}
          height={picture.height - y}
        />
      )}
      <path className="window-line" d={`M${placed.x} ${y}H${ready}`} />
      {from !== null && <path className="window-mark" d={`M${from + 4} ${y - 6}h-4v12h4`} />}
      {by !== null && <path className="window-mark" d={`M${by} ${y - 7}l5 7l-5 7l-5 -7z`} />}
      <circle className="window-ready" cx={ready} cy={y} r="4" />
    </svg>
  );
}
