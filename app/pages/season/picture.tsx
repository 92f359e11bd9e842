// The season drawn: tanks on both banks of the cold store, and the yeast that runs between the beers.
import { type KeyboardEvent, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { House, Trial } from '../../../planner/index.ts';
import { Drawing } from '../../parts/drawing.tsx';
import type { StrainLook } from '../../parts/strains.ts';
import type { Units } from '../../parts/units.ts';
import type { Active } from './active.ts';
import { MonthNames } from './axis.tsx';
import { layOut, type Sizes } from './geometry.ts';
import { Ghost } from './ghost.tsx';
import { Ground, RowNames } from './ground.tsx';
import { Layers } from './layers.tsx';
import { type Moving, reachOf } from './moving.ts';
import { useSight } from './sight.ts';
import { brewOf, useMoving } from './use-moving.ts';
import { usePanByHand, usePrinting, useSteadyView } from './view.ts';
import { STEP_OF_KEY, stepFrom } from './walk.ts';
import type { Weave } from './weave.ts';
import { Links, WRITTEN_FROM } from './woven-marks.tsx';
import { pxAt, rangeAt, useZoom, ZOOM_STEP, type Zoom, zoomed } from './zoom.ts';

const AXIS = 56;
/** The season on paper, px: what a landscape sheet of A4 and of Letter both hold beside the names. */
const PRINTED_WIDTH = 860;
/** Least width of a day. */
const LEAST_PX_PER_DAY = 3.2;

/** Sizes of the picture for so many tanks at a zoom. */
export function sizesFor(tanks: number, pxPerDay: number): Sizes {
  const many = tanks > 6;
  return {
    pxPerDay,
    axis: AXIS,
    barHeight: many ? 33 : 40,
    outerGutter: 18,
    innerGutter: many ? 6 : 8,
    // Zoomed in, a thread has its amount written over it.
    lane: pxPerDay >= WRITTEN_FROM ? 19 : 10,
    storePadding: 10,
  };
}

type Props = {
  house: House;
  woven: Weave;
  looks: ReadonlyMap<string, StrainLook>;
  units: Units;
  zoom: Zoom;
  setZoom: (zoom: Zoom) => void;
  active: Active;
  moving: Moving | null;
  trial: Trial | null;
  setMoving: (moving: Moving | null) => void;
  drop: (moving: Moving) => void;
  moveByTouch: boolean;
};

export function SeasonPicture(props: Props) {
  const { house, woven, looks, units, active, moving } = props;
  const scroller = useRef<HTMLDivElement>(null);
  const [measured, setRoom] = useState<number | null>(null);
  const room = measured ?? 1000;
  const days = woven.lastDay + 1 - woven.firstDay;
  const printing = usePrinting();
  const fit = Math.max(LEAST_PX_PER_DAY, room / days);
  const pxPerDay = printing ? PRINTED_WIDTH / days : pxAt(props.zoom, room, fit);
  const picture = useMemo(
    () => layOut(woven, sizesFor(woven.tanks.length, pxPerDay)),
    [woven, pxPerDay],
  );
  const [tabStop, setTabStop] = useState<string | null>(null);

  useLayoutEffect(() => {
    const element = scroller.current;
    if (!element) return;
    const measure = () => setRoom(element.clientWidth);
    measure();
    const watcher = new ResizeObserver(measure);
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);

  const hold = useSteadyView(scroller, picture, woven.today);
  const range = rangeAt(room, fit);
  const zoomTo = (px: number) => props.setZoom(px <= fit * 1.001 ? 'season' : px);
  useZoom({ scroller, picture, hold, range, choose: zoomTo });
  usePanByHand(scroller, props.moveByTouch);
  const sight = useSight(scroller, picture, hold, room, woven.today, printing);
  const reach = useMemo(() => reachOf(house, woven.today), [house, woven.today]);
  const hand = useMoving({
    scroller,
    picture,
    reach,
    moving,
    setMoving: props.setMoving,
    drop: props.drop,
    byTouch: props.moveByTouch,
  });

  const stopAt = tabStop ?? nextBrew(woven) ?? woven.bars[0]?.brew ?? null;
  const focusOn = (brew: string) => {
    // One that is out of sight is drawn only once it is what the Tab key comes to.
    flushSync(() => setTabStop(brew));
    const link = scroller.current?.querySelector<SVGAElement>(`a[data-brew="${CSS.escape(brew)}"]`);
    link?.focus();
    link?.scrollIntoView({ inline: 'nearest', block: 'nearest' });
  };
  const look = (key: string) => {
    if (key === '+' || key === '=') zoomTo(zoomed(pxPerDay, ZOOM_STEP, range));
    else if (key === '-') zoomTo(zoomed(pxPerDay, 1 / ZOOM_STEP, range));
    else if (key === '0') props.setZoom('season');
    else return false;
    return true;
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const brew = brewOf(event.target);
    if (brew === null) return;
    const carried = hand.onKey(event, brew);
    if (carried || (moving === null && !held(event) && look(event.key))) {
      event.preventDefault();
      return;
    }
    const step = STEP_OF_KEY[event.key];
    if (step === undefined || held(event) || moving !== null) return;
    event.preventDefault();
    if (event.shiftKey && (step === 'back' || step === 'on')) {
      pan(scroller.current, step === 'back' ? -1 : 1);
      return;
    }
    const next = stepFrom(brew, step, woven);
    if (next !== null) focusOn(next);
  };
  const marked = useMemo(
    () => ({ picture, woven, looks, units, sight }),
    [picture, woven, looks, units, sight],
  );
  const hue = moving === null ? 1 : (looks.get(yeastOf(woven, moving.brew))?.hue ?? 1);

  return (
    <div
      className={`season-picture${moving ? ' carrying' : ''}${props.moveByTouch ? ' by-touch' : ''}`}
    >
      <RowNames picture={picture} house={house} units={units} />
      {/* Scrolls by touch, wheel and the buttons above; within it the arrows walk along the yeast. */}
      <div className="scroller" ref={scroller}>
        <div className="weave" style={{ width: picture.width, height: picture.height }}>
          {/* Nothing is drawn for a width that is only guessed: it would be drawn twice. */}
          {measured !== null && (
            <>
              <svg
                className="ground"
                width={picture.width}
                height={picture.height}
                aria-hidden="true"
              >
                <Ground
                  picture={picture}
                  house={house}
                  axisHeight={AXIS}
                  today={woven.today}
                  sight={sight}
                />
                <MonthNames picture={picture} seenFrom={sight.edge} />
              </svg>
              <Layers
                marked={marked}
                active={active}
                carried={moving?.brew ?? null}
                windowY={AXIS - 14}
              >
                {moving && (
                  <Ghost picture={picture} moving={moving} trial={props.trial} hue={hue} />
                )}
              </Layers>
              <Drawing
                className="links"
                label="The season: beers in their tanks and the yeast that runs between them. Arrow keys walk along the yeast, Enter opens a pitch, M moves a beer."
                width={picture.width}
                height={picture.height}
                on={{
                  ...hand.on,
                  onKeyDown,
                  onFocus: (event) => {
                    const brew = brewOf(event.target);
                    if (brew === null) return;
                    setTabStop(brew);
                    active.set(brew);
                  },
                  onBlur: () => {
                    hand.onLeft();
                    active.set(null);
                  },
                  // where nothing is pointed at, what has the focus is read out
                  onPointerOver: (event) =>
                    moving === null &&
                    active.set(brewOf(event.target) ?? brewOf(document.activeElement)),
                  onPointerOut: () => moving === null && active.set(brewOf(document.activeElement)),
                }}
              >
                <Links
                  picture={picture}
                  units={units}
                  sight={sight}
                  tabStop={stopAt}
                  carried={moving?.brew ?? null}
                />
              </Drawing>
            </>
          )}
        </div>
      </div>
    </div>
  );
}

const held = (event: KeyboardEvent) => event.altKey || event.ctrlKey || event.metaKey;

/** Moves the picture by half of what is seen. */
export function pan(scroller: Element | null, way: -1 | 1): void {
  const still = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  const left = (way * (scroller?.clientWidth ?? 0)) / 2;
  scroller?.scrollBy({ left, behavior: still ? 'instant' : 'smooth' });
}

function yeastOf(woven: Weave, brew: string): string {
  return woven.bars.find((bar) => bar.brew === brew)?.yeast ?? '';
}

function nextBrew(woven: Weave): string | null {
  return woven.bars.find((bar) => !bar.planned.done && bar.day >= woven.today)?.brew ?? null;
}
