// The season drawn: tanks on both banks of the cold store, and the yeast that runs between the beers.
import { type KeyboardEvent, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { House } from '../../../planner/index.ts';
import { Drawing } from '../../parts/drawing.tsx';
import type { StrainLook } from '../../parts/strains.ts';
import { temperature, type Units } from '../../parts/units.ts';
import { brewWords } from '../../parts/words.ts';
import { hashOf } from '../../router.ts';
import { ActiveWindow } from './active-window.tsx';
import { Axis, MonthNames } from './axis.tsx';
import { layOut, type Sizes } from './geometry.ts';
import { BarMark, Knots, PurchaseMark, ThreadMark, ThreadWords } from './marks.tsx';
import { usePrinting, useSeenFrom, useSteadyCentre } from './view.ts';
import { familyOf, STEP_OF_KEY, stepFrom } from './walk.ts';
import type { Weave } from './weave.ts';

const AXIS = 56;
/** The season on paper, px: what a landscape sheet of A4 and of Letter both hold beside the names. */
const PRINTED_WIDTH = 860;
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
  const printing = usePrinting();
  const pxPerDay = printing ? PRINTED_WIDTH / days : (props.pxPerDay ?? Math.max(3.2, room / days));
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
          <ActiveWindow picture={picture} active={active} y={AXIS - 14} />
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
          {picture.bars.map((placed) => (
            <BarMark
              key={placed.bar.brew}
              placed={placed}
              look={lookOf(placed.bar.yeast)}
              note={notes.get(placed.bar.brew) ?? null}
              textX={Math.min(Math.max(seenFrom, placed.x), placed.x + placed.width)}
              state={placed.bar.brew === active ? 'here' : kin(placed.bar.brew)}
            />
          ))}
          {picture.threads.map((thread) => (
            <Knots
              key={thread.strand.id}
              thread={thread}
              look={lookOf(thread.strand.yeast)}
              state={threadState(thread.strand.from.name, thread.strand.to)}
            />
          ))}
          {/* What is pressed and focused lies over the bar it is for, and says in one breath what that shows. */}
          {picture.bars.map(({ bar, x, y, width, height }) => (
            <a
              key={bar.brew}
              href={hashOf({ page: 'pitch', brew: bar.brew })}
              data-brew={bar.brew}
              tabIndex={bar.brew === stopAt ? 0 : -1}
              aria-label={brewWords(bar.planned, units)}
              onFocus={() => {
                setTabStop(bar.brew);
                setActive(bar.brew);
              }}
              onBlur={() => setActive(null)}
              onPointerEnter={() => setActive(bar.brew)}
              onPointerLeave={() => setActive(null)}
              onKeyDown={(event) => walk(event, bar.brew)}
            >
              <rect className="press" x={x} y={y} width={width} height={height} />
            </a>
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

function tankSize(house: House, name: string): string {
  const tank = house.tanks.find((one) => one.tank === name);
  return tank ? `${tank.minFillL}–${tank.maxFillL} L` : '';
}

function nextBrew(woven: Weave): string | null {
  return woven.bars.find((bar) => !bar.planned.done && bar.day >= woven.today)?.brew ?? null;
}
