// The marks that the season's picture is made of: bars, threads, packs.
import { memo } from 'react';
import type { StrainLook } from '../../parts/strains.ts';
import { millilitres, type Units } from '../../parts/units.ts';
import { percent } from '../../parts/words.ts';
import type { PlacedBar, PlacedPurchase, Thread } from './geometry.ts';

/** Mean width of a character of the label face at 12.5 px, to cut names before they are clipped. */
const CHARACTER = 6;

/** The same at 11.5 px. */
const SMALL_CHARACTER = 5.5;

/** A text cut to a width, with an ellipsis; '' where not even two letters fit. */
export function cutTo(text: string, width: number, character = CHARACTER): string {
  const fits = Math.floor(width / character);
  if (text.length <= fits) return text;
  return fits < 3 ? '' : `${text.slice(0, fits - 1).trimEnd()}…`;
}

export const ThreadMark = memo(function ThreadMark(props: {
  thread: Thread;
  look: StrainLook;
  id: string;
}) {
  const { thread, look, id } = props;
  const { strand } = thread;
  return (
    <g className={`thread hue-${look.hue}`} data-strand={strand.id}>
      <linearGradient
        id={id}
        gradientUnits="userSpaceOnUse"
        x1={thread.startX}
        x2={Math.max(thread.endX, thread.startX + 1)}
        y1="0"
        y2="0"
      >
        <stop className="ink" offset="0" stopOpacity={thread.startInk} />
        <stop className="ink" offset="1" stopOpacity={thread.endInk} />
      </linearGradient>
      <path className="casing" d={thread.core} strokeWidth={thread.startWidth + 2} />
      {thread.lead && (
        <path
          className="strand"
          d={thread.lead}
          strokeWidth={thread.startWidth}
          strokeOpacity={thread.startInk}
        />
      )}
      <path d={thread.body} fill={`url(#${id})`} />
      {thread.rise && (
        <path
          className="strand"
          d={thread.rise}
          strokeWidth={thread.endWidth}
          strokeOpacity={thread.endInk}
        />
      )}
      {look.weave !== 'plain' && <path className={`core ${look.weave}`} d={thread.core} />}
      {strand.to === null && (
        <circle className="kept" cx={thread.endX} cy={thread.y} r={thread.endWidth / 2 + 1.2} />
      )}
      {strand.from.kind === 'jar' && (
        <text className="jar-code" x={thread.startX - 3} y={thread.y + 3.5} textAnchor="end">
          {strand.from.name}
        </text>
      )}
    </g>
  );
});

/** What lies in the cold, written over its thread where there is room: how much, for whom, how alive at the end. */
export const ThreadWords = memo(function ThreadWords(props: {
  thread: Thread;
  look: StrainLook;
  units: Units;
  seenFrom: number;
}) {
  const { thread, look } = props;
  const { strand } = thread;
  const ml = millilitres(strand.ml, props.units);
  const whom =
    strand.to === null ? (strand.from.kind === 'jar' ? 'for no brew' : 'kept') : `for ${strand.to}`;
  const goes = strand.ofStarter ? `of the starter, ${whom}` : whom;
  const room = thread.endX - props.seenFrom - 12;
  const words = [
    `${ml} ${goes}, ${percent(strand.endShare)} alive by then`,
    `${ml} ${goes}`,
    ml,
  ].find((text) => text.length * SMALL_CHARACTER <= room);
  return (
    <svg aria-hidden="true">
      <text
        className={`thread-words hue-${look.hue}`}
        x={props.seenFrom + 8}
        y={thread.y - thread.startWidth / 2 - 2.5}
      >
        {words ?? ''}
      </text>
    </svg>
  );
});

/** The points at which threads leave and enter; drawn over the bars. */
export const Knots = memo(function Knots(props: { thread: Thread; look: StrainLook }) {
  const { leaves, enters } = props.thread;
  return (
    <g className={`knots hue-${props.look.hue}`}>
      {leaves && <circle className="leaves" cx={leaves.x} cy={leaves.y} r={3} />}
      {enters && <circle className="enters" cx={enters.x} cy={enters.y} r={3} />}
    </g>
  );
});

export const BarMark = memo(function BarMark(props: {
  placed: PlacedBar;
  look: StrainLook;
  note: number | null;
  /** Where its words begin: at its start, or where the bar comes into sight. */
  textX: number;
  /** Whether it is the one that is looked at. */
  here: boolean;
}) {
  const { placed, look, note, textX } = props;
  const { bar, x, y, width, height } = placed;
  const room = x + width - textX;
  const second = y + height - 6.5;
  const outer = placed.bank === 'upper' ? y : y + height;
  const toward = placed.bank === 'upper' ? 1 : -1;
  const noteRoom = note === null ? 0 : 7 + 5 * String(note).length;
  const generation = bar.planned.generation;
  const marks = [
    bar.planned.done ? 'done' : '',
    bar.fixed ? 'fixed' : '',
    bar.broken.length > 0 ? 'broken' : '',
  ].join(' ');
  const name = bar.broken.length > 0 ? `! ${bar.brew}` : bar.brew;
  return (
    <g className={`bar hue-${look.hue} ${marks} ${props.here ? 'here' : ''}`}>
      <rect
        className="turn"
        x={x + width}
        y={y}
        width={Math.max(0, placed.freeX - x - width)}
        height={height}
      />
      <rect className="beer" x={x} y={y} width={width} height={height} />
      {placed.crashX !== null && placed.crashX < x + width && (
        <rect
          className="crash"
          x={placed.crashX}
          y={y}
          width={x + width - placed.crashX}
          height={height}
        />
      )}
      <rect className="edge" x={x} y={y} width={3} height={height} />
      {note !== null && (
        <rect className="chain-end" x={x + width - 3} y={y} width={3} height={height} />
      )}
      {placed.dryHopX !== null && (
        <path className="dry-hop" d={`M${placed.dryHopX - 4} ${outer}h8l-4 ${toward * 6}z`} />
      )}
      <svg x={textX + 5} y={y} width={Math.max(0, room - 7)} height={height} aria-hidden="true">
        <text className="name" x={1} y={height / 2 - 2.5}>
          {cutTo(name, room - 8)}
        </text>
        <text className="line" x={1} y={second - y}>
          {room > 24 + noteRoom ? `${look.letter}${generation}` : ''}
          {room > 74 + noteRoom && (
            <tspan className="style">{`  ${cutTo(bar.planned.style, room - 32 - noteRoom, 5.4)}`}</tspan>
          )}
        </text>
        {note !== null && (
          <text className="note" x={Math.max(0, room - 12)} y={second - y} textAnchor="end">
            {note}
          </text>
        )}
      </svg>
    </g>
  );
});

/** Packs that come in from outside: a packet on a short thread, on the side away from the store. */
export const PurchaseMark = memo(function PurchaseMark(props: {
  placed: PlacedPurchase;
  look: StrainLook;
}) {
  const { placed, look } = props;
  const toward = placed.bank === 'upper' ? -1 : 1;
  const x = placed.x + 2.5;
  const packetY = placed.bank === 'upper' ? placed.y - 13 : placed.y + 4;
  const textY = packetY + 8;
  return (
    <g className={`purchase hue-${look.hue}`}>
      <path className="strand" strokeWidth="2.4" d={`M${x} ${placed.y}v${toward * 5}`} />
      <path className="packet" d={`M${x - 4} ${packetY}h8v9h-8zM${x - 4} ${packetY + 2.5}h8`} />
      <text className="packs" x={x + 7} y={textY}>
        {placed.purchase.packs}
        {placed.purchase.starter ? ' + starter' : ''}
      </text>
    </g>
  );
});
