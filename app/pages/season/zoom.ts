// Zooming by wheel and by two fingers: the picture is stretched while the hand moves, and drawn anew when it rests.
import { type RefObject, useEffect, useRef } from 'react';
import { dayUnder, type Picture } from './geometry.ts';
import { drawingIn, type Hold } from './view.ts';

/** How long the hand rests before the picture is drawn anew, ms. */
const REST_MS = 220;
/** The drawing is stretched down to this before it is drawn anew: a window's width lies drawn on either side. */
const LEAST_STRETCH = 0.4;
/** Zoom for one notch of a common wheel (100 px). */
const PER_NOTCH = 1.25;
/** One press of a key or button. */
export const ZOOM_STEP = 1.5;

export type ZoomRange = { least: number; most: number };

export type View = 'season' | 'month' | 'week';
/** A view by its name, or px per day where the hand chose. */
export type Zoom = View | number;

const VIEW_DAYS = { season: 90, month: 35, week: 9 } as const;
const LEAST_DAYS = 5;

/**
 * Px per day of a zoom in so much room. `fit`: at which the whole season is seen; on a narrow page its view
 * shows three months instead, for less would be a smear.
 */
export function pxAt(zoom: Zoom, room: number, fit: number): number {
  if (typeof zoom === 'number') return Math.max(fit, zoom);
  if (zoom === 'season') return room < 560 ? Math.max(5, room / VIEW_DAYS.season) : fit;
  return Math.max(fit, 20, room / VIEW_DAYS[zoom]);
}

/** From the whole season to a few days. */
export function rangeAt(room: number, fit: number): ZoomRange {
  return { least: fit, most: Math.max(fit, room / LEAST_DAYS) };
}

/** A zoom kept inside its range, px per day. */
export function zoomed(pxPerDay: number, factor: number, range: ZoomRange): number {
  return Math.min(range.most, Math.max(range.least, pxPerDay * factor));
}

/** What a turn of the wheel zooms by. */
export function wheelFactor(deltaY: number, deltaMode: number): number {
  // 0: px, 1: lines, 2: pages (WheelEvent.deltaMode, W3C UI Events)
  const px = deltaMode === 0 ? deltaY : deltaMode === 1 ? deltaY * 33 : deltaY * 300;
  return PER_NOTCH ** (-px / 100);
}

type Gesture = Hold & { scale: number };

export type ZoomProps = {
  scroller: RefObject<HTMLDivElement | null>;
  picture: Picture;
  hold: RefObject<Hold | null>;
  range: ZoomRange;
  choose: (pxPerDay: number) => void;
};

/** Zooms with Ctrl (or ⌘) and the wheel, with a trackpad's pinch, and with two fingers, about the point between them. */
export function useZoom(props: ZoomProps): void {
  const { scroller, picture, hold } = props;
  const latest = useRef(props);
  latest.current = props;
  useEffect(() => {
    const element = scroller.current;
    if (!element) return;
    let gesture: Gesture | null = null;
    let rest: ReturnType<typeof setTimeout> | undefined;
    let spread: number | null = null;

    const settle = () => {
      const drawing = drawingIn(element);
      if (gesture === null || !drawing) return;
      const { day, offset, scale } = gesture;
      gesture = null;
      drawing.style.willChange = '';
      if (Math.abs(scale - 1) < 0.001) drawing.style.transform = '';
      hold.current = { day, offset };
      latest.current.choose(picture.pxPerDay * scale);
    };
    const stretch = (factor: number, clientX: number) => {
      const drawing = drawingIn(element);
      if (!drawing) return;
      const offset = clientX - element.getBoundingClientRect().left;
      const x = element.scrollLeft + offset;
      gesture ??= { day: dayUnder(x, picture), offset, scale: 1 };
      const px = zoomed(picture.pxPerDay * gesture.scale, factor, latest.current.range);
      gesture = { ...gesture, scale: px / picture.pxPerDay };
      const origin = (gesture.day - picture.firstDay) * picture.pxPerDay;
      drawing.style.willChange = 'transform';
      drawing.style.transformOrigin = `${origin}px 0`;
      drawing.style.transform = `scaleX(${gesture.scale})`;
      clearTimeout(rest);
      // Shrunk by more, what is not drawn would come into sight.
      if (gesture.scale < LEAST_STRETCH) settle();
      else rest = setTimeout(settle, REST_MS);
    };
    const wheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      stretch(wheelFactor(event.deltaY, event.deltaMode), event.clientX);
    };
    const touch = (event: TouchEvent) => {
      const [one, two] = event.touches;
      if (!one || !two || event.touches.length !== 2) {
        spread = null;
        return;
      }
      event.preventDefault();
      const apart = Math.hypot(one.clientX - two.clientX, one.clientY - two.clientY);
      if (spread !== null && apart > 0) stretch(apart / spread, (one.clientX + two.clientX) / 2);
      spread = apart;
    };
    const lifted = () => {
      spread = null;
    };
    element.addEventListener('wheel', wheel, { passive: false });
    element.addEventListener('touchmove', touch, { passive: false });
    element.addEventListener('touchend', lifted);
    return () => {
      clearTimeout(rest);
      element.removeEventListener('wheel', wheel);
      element.removeEventListener('touchmove', touch);
      element.removeEventListener('touchend', lifted);
    };
  }, [scroller, picture, hold]);
}
