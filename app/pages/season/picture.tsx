// The season drawn: tanks on both banks of the cold store, and the yeast that runs between the beers.
import { type KeyboardEvent, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { House } from '../../../planner/index.ts';
import { Drawing } from '../../parts/drawing.tsx';
import type { StrainLook } from '../../parts/strains.ts';
import { temperature, type Units } from '../../parts/units.ts';
import { brewWords } from '../../parts/words.ts';
import { hashOf } from '../../router.ts';
import { Axis, MonthNames } from './axis.tsx';
import { dayAtX, layOut, type Picture, type Sizes, xOfDay } from './geometry.ts';
import { BarMark, Knots, PurchaseMark, ThreadMark, ThreadWords } from './marks.tsx';
import { familyOf, STEP_OF_KEY, stepFrom } from './walk.ts';
import type { Weave } from './weave.ts';

const AXIS = 56;
/** From this zoom on threads are written on, px per day. */
const WRITTEN_FROM = 18;

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
  /** null: the whole season fits. */
  pxPerDay: number | null;
  active: string | null;
  setActive: (brew: string | null) => void;
};

export function SeasonPicture(props: Props) {
  const { house, woven, looks, units, active, setActive } = props;
  const scroller = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState(1000);
  const days = woven.lastDay + 1 - woven.firstDay;
  const pxPerDay = props.pxPerDay ?? Math.max(3.2, room / days);
  const picture = useMemo(
    () => layOut(woven, sizesFor(woven.tanks.length, pxPerDay)),
    [woven, pxPerDay],
  );
  const family = useMemo(() => (active === null ? null : familyOf(active, woven)), [active, woven]);
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

  useSteadyCentre(scroller, picture, woven.today);
  const seenFrom = useSeenFrom(scroller, picture);

  const stopAt = tabStop ?? nextBrew(woven) ?? woven.bars[0]?.brew ?? null;
  const focusOn = (brew: string) => {
    setTabStop(brew);
    const link = scroller.current?.querySelector<SVGAElement>(`a[data-brew="${CSS.escape(brew)}"]`);
    link?.focus();
    link?.scrollIntoView({ inline: 'nearest', block: 'nearest' });
  };
  const walk = (event: KeyboardEvent, brew: string) => {
    const step = STEP_OF_KEY[event.key];
    if (step === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    const next = stepFrom(brew, step, woven);
    if (next !== null) focusOn(next);
  };
  const kin = (brew: string | null) =>
    family === null || brew === null ? '' : family.has(brew) ? 'kin' : 'faded';
  const notes = new Map(woven.ends.map((end) => [end.brew, end.note]));
  const lookOf = (yeast: string): StrainLook =>
    looks.get(yeast) ?? { yeast, hue: 1, weave: 'plain', letter: '?' };
  const threadState = (from: string, to: string | null) => {
    if (family === null) return '';
    return (to !== null && family.has(to)) || (to === null && family.has(from)) ? 'kin' : 'faded';
  };

  return (
    <div className="season-picture">
      <div className="row-names" aria-hidden="true">
        <svg width="100%" height={picture.height} aria-hidden="true">
          {picture.rows.map((row) => (
            <g key={row.tank}>
              <text className="tank" x="0" y={row.barTop + 15}>
                {row.tank}
              </text>
              <text className="tank-size" x="0" y={row.barTop + 29}>
                {tankSize(house, row.tank)}
              </text>
            </g>
          ))}
          <text className="tank" x="0" y={(picture.store.top + picture.store.bottom) / 2 - 2}>
            cold store
          </text>
          <text className="tank-size" x="0" y={(picture.store.top + picture.store.bottom) / 2 + 12}>
            {temperature(house.store.tempC, units)}
          </text>
        </svg>
      </div>
      {/* Scrolls by touch, wheel and the buttons above; within it the arrows walk along the yeast. */}
      <div className="scroller" ref={scroller}>
        <Drawing
          label="The season: beers in their tanks and the yeast that runs between them. Arrow keys walk along the yeast, Enter opens a pitch."
          width={picture.width}
          height={picture.height}
        >
          <Patterns />
          <rect
            className="store"
            x="0"
            y={picture.store.top}
            width={picture.width}
            height={picture.store.bottom - picture.store.top}
          />
          <Axis picture={picture} house={house} axisHeight={AXIS} today={woven.today} />
          <MonthNames picture={picture} seenFrom={seenFrom} />
          {picture.rows.map((row) => (
            <line
              key={row.tank}
              className="row-line"
              x1="0"
              x2={picture.width}
              y1={row.barTop + (picture.bars[0]?.height ?? 30) / 2}
              y2={row.barTop + (picture.bars[0]?.height ?? 30) / 2}
            />
          ))}
          <ActiveWindow picture={picture} active={active} />
          {picture.threads.map((thread, at) => (
            <ThreadMark
              key={thread.strand.id}
              id={`ink-${at}`}
              thread={thread}
              look={lookOf(thread.strand.yeast)}
              state={threadState(thread.strand.from.name, thread.strand.to)}
            />
          ))}
          {pxPerDay >= WRITTEN_FROM &&
            picture.threads.map((thread) => (
              <ThreadWords
                key={thread.strand.id}
                thread={thread}
                look={lookOf(thread.strand.yeast)}
                units={units}
                seenFrom={Math.min(Math.max(seenFrom, thread.startX), thread.endX)}
              />
            ))}
          {picture.purchases.map((placed) => (
            <PurchaseMark
              key={placed.purchase.brew}
              placed={placed}
              look={lookOf(placed.purchase.yeast)}
              state={kin(placed.purchase.brew)}
            />
          ))}
          {picture.bars.map((placed) => {
            const brew = placed.bar.brew;
            return (
              <a
                key={brew}
                href={hashOf({ page: 'pitch', brew })}
                data-brew={brew}
                tabIndex={brew === stopAt ? 0 : -1}
                aria-label={brewWords(placed.bar.planned, units)}
                onFocus={() => {
                  setTabStop(brew);
                  setActive(brew);
                }}
                onBlur={() => setActive(null)}
                onPointerEnter={() => setActive(brew)}
                onPointerLeave={() => setActive(null)}
                onKeyDown={(event) => walk(event, brew)}
              >
                <BarMark
                  placed={placed}
                  look={lookOf(placed.bar.yeast)}
                  note={notes.get(brew) ?? null}
                  textX={Math.min(Math.max(seenFrom, placed.x), placed.x + placed.width)}
                  state={brew === active ? 'here' : kin(brew)}
                />
              </a>
            );
          })}
          {picture.threads.map((thread) => (
            <Knots
              key={thread.strand.id}
              thread={thread}
              look={lookOf(thread.strand.yeast)}
              state={threadState(thread.strand.from.name, thread.strand.to)}
            />
          ))}
        </Drawing>
      </div>
    </div>
  );
}

/** Hatchings that bars and closed days refer to. */
function Patterns() {
  return (
    <defs>
      <pattern
        id="hatch-closed"
        width="5"
        height="5"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <line className="hatch-line" x1="0" x2="0" y1="0" y2="5" />
      </pattern>
      <pattern
        id="hatch-crash"
        width="4"
        height="4"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(-45)"
      >
        <line className="crash-line" x1="0" x2="0" y1="0" y2="4" />
      </pattern>
    </defs>
  );
}

/** When the brew under the pointer may be brewed, is ready and is wanted: a strip below the calendar. */
function ActiveWindow(props: { picture: Picture; active: string | null }) {
  const { picture } = props;
  const placed = picture.bars.find((one) => one.bar.brew === props.active);
  if (!placed) return null;
  const { bar } = placed;
  const mid = (day: number) => xOfDay(day, picture) + picture.pxPerDay / 2;
  const y = AXIS - 14;
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

function tankSize(house: House, name: string): string {
  const tank = house.tanks.find((one) => one.tank === name);
  return tank ? `${tank.minFillL}–${tank.maxFillL} L` : '';
}

function nextBrew(woven: Weave): string | null {
  return woven.bars.find((bar) => !bar.planned.done && bar.day >= woven.today)?.brew ?? null;
}

/** Keeps the day in the middle where it is when the zoom changes; at first the picture opens on today. */
function useSteadyCentre(
  scroller: React.RefObject<HTMLDivElement | null>,
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
function useSeenFrom(scroller: React.RefObject<HTMLDivElement | null>, picture: Picture): number {
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
