// The day that stays where it is when the zoom changes; panning by hand; print.
import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { dayUnder, type Picture, xOfDay } from './geometry.ts';

type Scroller = RefObject<HTMLDivElement | null>;

/** A day (with its fraction) and where in the window it stands, px from the left edge. */
export type Hold = { day: number; offset: number };

/** Keeps a day where it is when the zoom changes: the middle one, or what was put into the returned hold. At first the picture opens on today. */
export function useSteadyView(
  scroller: Scroller,
  picture: Picture,
  today: number,
): RefObject<Hold | null> {
  const hold = useRef<Hold | null>(null);
  useEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const remember = () => {
      const offset = element.clientWidth / 2;
      hold.current = { day: dayUnder(element.scrollLeft + offset, picture), offset };
    };
    element.addEventListener('scroll', remember, { passive: true });
    return () => element.removeEventListener('scroll', remember);
  }, [picture, scroller]);
  useLayoutEffect(() => {
    const element = scroller.current;
    if (!element) return;
    // what was stretched by a zoom is drawn anew now
    const drawing = drawingIn(element);
    if (drawing) drawing.style.transform = '';
    const margin = picture.pxPerDay * 3;
    const { day, offset } = hold.current ?? { day: today, offset: margin };
    element.scrollLeft = xOfDay(day, picture) - offset;
  }, [picture, scroller, today]);
  return hold;
}

/** All that is drawn within what scrolls. */
export function drawingIn(element: HTMLElement | null): HTMLElement | null {
  return element?.querySelector<HTMLElement>('.weave') ?? null;
}

/** Pans while the mouse (`byTouch`: or a finger) holds the picture where no beer is. */
export function usePanByHand(scroller: Scroller, byTouch: boolean): void {
  useEffect(() => {
    const element = scroller.current;
    if (!element) return;
    let last: number | null = null;
    const take = (event: PointerEvent) => {
      const onBeer = event.target instanceof Element && event.target.closest('a') !== null;
      const hand = event.pointerType === 'mouse' || byTouch;
      if (hand && event.button === 0 && !onBeer) last = event.clientX;
    };
    const carry = (event: PointerEvent) => {
      if (last === null) return;
      element.scrollLeft -= event.clientX - last;
      last = event.clientX;
    };
    const leave = () => {
      last = null;
    };
    element.addEventListener('pointerdown', take);
    window.addEventListener('pointermove', carry);
    window.addEventListener('pointerup', leave);
    window.addEventListener('pointercancel', leave);
    return () => {
      element.removeEventListener('pointerdown', take);
      window.removeEventListener('pointermove', carry);
      window.removeEventListener('pointerup', leave);
      window.removeEventListener('pointercancel', leave);
    };
  }, [scroller, byTouch]);
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
