// The marks in two layers: all of them, which pales as one while a beer is looked at, and over it the line of that beer.
import { memo, type ReactNode } from 'react';
import { type Active, useActive } from './active.ts';
import { ActiveWindow } from './active-window.tsx';
import { KinMarks, type Marked, WovenMarks } from './woven-marks.tsx';

export const Layers = memo(function Layers(props: {
  marked: Marked;
  active: Active;
  /** The beer that is being moved: it is looked at, wherever the pointer is. */
  carried: string | null;
  windowY: number;
  children: ReactNode;
}) {
  const { marked, carried } = props;
  const pointed = useActive(props.active);
  const active = carried ?? pointed;
  const { width, height } = marked.picture;
  return (
    <>
      <svg
        className={active === null ? 'marks' : 'marks pale'}
        width={width}
        height={height}
        aria-hidden="true"
      >
        <WovenMarks {...marked} />
      </svg>
      <svg className="over" width={width} height={height} aria-hidden="true">
        {active !== null && (
          <>
            <ActiveWindow picture={marked.picture} active={active} y={props.windowY} />
            <KinMarks {...marked} active={active} />
          </>
        )}
        {props.children}
      </svg>
    </>
  );
});
