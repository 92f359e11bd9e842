// What part of the picture is seen: its left edge, and the day in its middle, kept there when the zoom changes.
import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { dayAtX, type Picture, xOfDay } from './geometry.ts';

/** Keeps the day in the middle where it is when the zoom changes; at first the picture opens on today. */
export function useSteadyCentre(
  scroller: RefObject<HTMLDivElement | null>,
  picture: Picture,
  today: number,
) {
  const centre = useRef<number | null>(null);
  useEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const remember = () => {
      centre.current = dayAtX(element.scrollLeft + element.clientWidth / 2, picture);
    };
    element.addEventListener('scroll', remember, { passive: true });
    return () => element.removeEventListener('scroll', remember);
  }, [picture, scroller]);
  useLayoutEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const day =
      centre.current ?? today + Math.floor(element.clientWidth / picture.pxPerDay / 2) - 3;
    element.scrollLeft = xOfDay(day, picture) - element.clientWidth / 2;
  }, [picture, scroller, today]);
}

/** How long the picture rests before words follow it, ms: while it moves nothing is drawn anew. */
const REST_MS = 90;

/** Left edge of what is seen, px, once the picture rests; words that would be out of sight move there. */
export function useSeenFrom(scroller: RefObject<HTMLDivElement | null>, picture: Picture): number {
  const [seenFrom, setSeenFrom] = useState(0);
  useEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const look = () => {
      const fits = picture.width <= element.clientWidth + 1;
      setSeenFrom(fits ? 0 : Math.round(element.scrollLeft));
    };
    let rest: ReturnType<typeof setTimeout> | undefined;
    const moved = () => {
      clearTimeout(rest);
      rest = setTimeout(look, REST_MS);
    };
    look();
    element.addEventListener('scroll', moved, { passive: true });
    return () => {
      clearTimeout(rest);
      element.removeEventListener('scroll', moved);
    };
  }, [picture, scroller]);
  return seenFrom;
}

/** Whether the page is being printed: the whole season then has to fit the sheet, whatever is seen on screen. */
export function usePrinting(): boolean {
  const [printing, setPrinting] = useState(false);
  useEffect(() => {
    // The browser takes its picture of the page as soon as these return.
    const begin = () => flushSync(() => setPrinting(true));
    const end = () => setPrinting(false);
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
    };
  }, []);
  return printing;
}
