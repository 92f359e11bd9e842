// Takes a beer up, carries it about and puts it down: with the pointer, or with the keys on the beer that has the focus.
import { type KeyboardEvent, type PointerEvent, type RefObject, useEffect, useRef } from 'react';
import type { Picture } from './geometry.ts';
import {
  type Moving,
  movable,
  placeAfterKey,
  placeUnder,
  type Reach,
  samePlace,
} from './moving.ts';

/** So far a press may stray and still be a press, px. */
const STRAY = 5;
/** Within so much of an edge the picture moves along, px. */
const EDGE = 36;

type Held = { brew: string; startX: number; scrolled: number; pointer: number };

export type MovingProps = {
  scroller: RefObject<HTMLDivElement | null>;
  picture: Picture;
  reach: Reach;
  moving: Moving | null;
  setMoving: (moving: Moving | null) => void;
  drop: (moving: Moving) => void;
  /** Whether a finger moves beers too; else it pans. */
  byTouch: boolean;
};

export function useMoving(props: MovingProps) {
  const { scroller, picture, reach, moving, setMoving, drop } = props;
  const held = useRef<Held | null>(null);
  const justDropped = useRef(false);
  const barOf = (brew: string) => picture.bars.find((one) => one.bar.brew === brew)?.bar;

  const end = (put: boolean) => {
    held.current = null;
    if (moving === null) return;
    setMoving(null);
    if (put && !samePlace(moving.from, moving.to)) drop(moving);
  };

  const cancelled = useRef(end);
  cancelled.current = end;
  const underWay = moving !== null;
  useEffect(() => {
    if (!underWay) return;
    const letGo = (event: globalThis.KeyboardEvent) => {
      if (event.key !== 'Escape') return;
      event.preventDefault();
      justDropped.current = held.current !== null;
      cancelled.current(false);
    };
    window.addEventListener('keydown', letGo, true);
    return () => window.removeEventListener('keydown', letGo, true);
  }, [underWay]);

  return {
    on: {
      onPointerDown: (event: PointerEvent) => {
        const brew = brewOf(event.target);
        justDropped.current = false;
        if (brew === null || event.button !== 0 || !movable(barOf(brew))) return;
        if (event.pointerType !== 'mouse' && !props.byTouch) return;
        const scrolled = scroller.current?.scrollLeft ?? 0;
        held.current = { brew, startX: event.clientX, scrolled, pointer: event.pointerId };
      },
      onPointerMove: (event: PointerEvent) => {
        const now = held.current;
        const element = scroller.current;
        if (now === null || element === null || event.pointerId !== now.pointer) return;
        const bar = barOf(now.brew);
        if (!bar) return;
        const box = element.getBoundingClientRect();
        const y = event.clientY - box.top;
        const from = moving?.from ?? { day: bar.day, tank: bar.tank };
        if (moving === null) {
          const row = picture.rows.find((one) => one.tank === bar.tank);
          const strayed = Math.abs(event.clientX - now.startX) > STRAY;
          const left = row !== undefined && (y < row.top || y > row.bottom);
          if (!strayed && !left) return;
          (event.target as Element).setPointerCapture(event.pointerId);
        }
        const past = event.clientX - box.left;
        if (past > box.width - EDGE) element.scrollLeft += EDGE / 3;
        else if (past < EDGE) element.scrollLeft -= EDGE / 3;
        const dx = event.clientX - now.startX + element.scrollLeft - now.scrolled;
        const to = placeUnder(picture, from, { dx, y }, reach);
        if (moving === null || !samePlace(moving.to, to)) {
          setMoving({ brew: now.brew, from, to, by: 'pointer' });
        }
      },
      onPointerUp: () => {
        // after Escape the press that is still held means nothing any more
        if (held.current === null) return;
        justDropped.current = moving !== null;
        end(true);
      },
      onPointerCancel: () => end(false),
      onClickCapture: (event: { preventDefault: () => void; stopPropagation: () => void }) => {
        if (!justDropped.current) return;
        justDropped.current = false;
        event.preventDefault();
        event.stopPropagation();
      },
      onDragStart: (event: { preventDefault: () => void }) => event.preventDefault(),
    },
    /** Keys while a beer is carried, and the key that takes it up. @returns whether the key was meant for this */
    onKey: (event: KeyboardEvent, brew: string): boolean => {
      if (event.altKey || event.ctrlKey || event.metaKey) return false;
      if (moving === null) {
        const bar = barOf(brew);
        if (event.key.toLowerCase() !== 'm' || !movable(bar)) return false;
        const from = { day: bar.day, tank: bar.tank };
        setMoving({ brew, from, to: from, by: 'keys' });
        return true;
      }
      if (event.key === 'Enter' || event.key === ' ') {
        end(true);
        return true;
      }
      const to = placeAfterKey(moving.to, event.key, picture, reach);
      if (to !== null) setMoving({ ...moving, to });
      return to !== null;
    },
    /** The focus went elsewhere: what was carried by keys goes back. */
    onLeft: () => {
      if (moving?.by === 'keys') end(false);
    },
  };
}

/** The beer whose link an event came from. */
export function brewOf(target: EventTarget | null): string | null {
  const link = target instanceof Element ? target.closest('a[data-brew]') : null;
  return link?.getAttribute('data-brew') ?? null;
}
