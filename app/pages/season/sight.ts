// Which part of the picture is drawn: what is seen and a window's width on either side, in steps, so that panning draws little anew.
import { type RefObject, startTransition, useEffect, useLayoutEffect, useState } from 'react';
import { type Picture, xOfDay } from './geometry.ts';
import type { Hold } from './view.ts';

export type Sight = {
  /** From where to where marks are drawn, px. */
  from: number;
  to: number;
  /** Left edge of what is seen, px, when the picture last rested: words that would be out of sight begin there. */
  edge: number;
};

/** Steps in which the drawn part follows, as a share of the window. */
const STEP_SHARE = 1 / 4;
/** How long the picture rests before words follow it, ms. */
const REST_MS = 90;

/** What is drawn while so much is seen from `left` on, px; words begin at `edge`. */
export function sightAt(left: number, room: number, width: number, edge: number): Sight {
  if (width <= room + 1) return { from: 0, to: width, edge: 0 };
  const step = Math.max(1, room * STEP_SHARE);
  const from = Math.floor((left - room) / step) * step;
  const to = Math.ceil((left + 2 * room) / step) * step;
  return { from: Math.max(0, from), to: Math.min(width, to), edge };
}

/** Whether a mark from x to x + width is drawn. */
export const inSight = (sight: Sight, x: number, width: number): boolean =>
  x + width >= sight.from && x <= sight.to;

const same = (a: Sight, b: Sight) => a.from === b.from && a.to === b.to && a.edge === b.edge;

/** @param whole all of it is drawn, as for print */
export function useSight(
  scroller: RefObject<HTMLDivElement | null>,
  picture: Picture,
  hold: RefObject<Hold | null>,
  room: number,
  today: number,
  whole: boolean,
): Sight {
  const { width } = picture;
  // A new zoom is drawn at once where it is going to stand.
  const opened = () => {
    const { day, offset } = hold.current ?? { day: today, offset: picture.pxPerDay * 3 };
    const left = Math.round(
      Math.min(Math.max(0, xOfDay(day, picture) - offset), Math.max(0, width - room)),
    );
    return sightAt(left, room, width, left);
  };
  const [known, setKnown] = useState(() => ({ picture, sight: opened() }));
  const sight = known.picture === picture ? known.sight : opened();

  useLayoutEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const left = Math.round(element.scrollLeft);
    const seen = sightAt(left, element.clientWidth, picture.width, left);
    setKnown((before) =>
      before.picture === picture && same(before.sight, seen) ? before : { picture, sight: seen },
    );
  }, [scroller, picture]);

  useEffect(() => {
    const element = scroller.current;
    if (!element) return;
    let rest: ReturnType<typeof setTimeout> | undefined;
    const follow = (rested: boolean) => {
      const left = Math.round(element.scrollLeft);
      setKnown((before) => {
        const edge = rested || before.picture !== picture ? left : before.sight.edge;
        const seen = sightAt(left, element.clientWidth, picture.width, edge);
        const stays = before.picture === picture && same(before.sight, seen);
        return stays ? before : { picture, sight: seen };
      });
    };
    const moved = () => {
      clearTimeout(rest);
      rest = setTimeout(() => follow(true), REST_MS);
      startTransition(() => follow(false));
    };
    element.addEventListener('scroll', moved, { passive: true });
    return () => {
      clearTimeout(rest);
      element.removeEventListener('scroll', moved);
    };
  }, [scroller, picture]);
  return whole ? { from: 0, to: width, edge: 0 } : sight;
}
