// What part of the picture is seen: its left edge, and the day in its middle, kept there when the zoom changes.
import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
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

/** Left edge of what is seen, px, in steps that spare re-drawing; words that would be out of sight move there. */
export function useSeenFrom(scroller: RefObject<HTMLDivElement | null>, picture: Picture): number {
  const [seenFrom, setSeenFrom] = useState(0);
  useEffect(() => {
    const element = scroller.current;
    if (!element) return;
    let frame = 0;
    const look = () => {
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(() => {
        const fits = picture.width <= element.clientWidth + 1;
        setSeenFrom(fits ? 0 : Math.round(element.scrollLeft / 4) * 4);
      });
    };
    look();
    element.addEventListener('scroll', look, { passive: true });
    return () => {
      cancelAnimationFrame(frame);
      element.removeEventListener('scroll', look);
    };
  }, [picture, scroller]);
  return seenFrom;
}
