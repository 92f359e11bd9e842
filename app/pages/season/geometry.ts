// The season's picture as pure geometry: where each bar, thread, pack and end lies, in pixels.
//
// The cold store runs through the middle with the tanks on both its banks. Yeast leaves a beer by a
// vertical thread on the side of the store, lies there as a ribbon that thins as it dies, and leaves
// it again by a vertical thread to the beer it is pitched into. Verticals pass behind bars.
import { scaleLinear } from 'd3-scale';
import { assignLanes, type Bank } from './lanes.ts';
import type { Bar, ChainEnd, Purchase, Strand, Weave } from './weave.ts';

/** Heights and gaps of the picture, px. */
export type Sizes = {
  pxPerDay: number;
  axis: number;
  barHeight: number;
  /** On the side away from the store, where packs come in. */
  outerGutter: number;
  innerGutter: number;
  lane: number;
  storePadding: number;
};

export type Point = { x: number; y: number };
export type Row = { tank: string; bank: Bank; top: number; bottom: number; barTop: number };
export type PlacedBar = {
  bar: Bar;
  bank: Bank;
  x: number;
  y: number;
  width: number;
  height: number;
  dryHopX: number | null;
  crashX: number | null;
  freeX: number;
};
export type Thread = {
  strand: Strand;
  y: number;
  startX: number;
  endX: number;
  startWidth: number;
  endWidth: number;
  startInk: number;
  endInk: number;
  /** Out of the beer and into the store; null for a jar that was there before. */
  lead: string | null;
  body: string;
  /** Out of the store and into the beer; null where nothing is pitched. */
  rise: string | null;
  /** The middle of the whole thread, for the pattern that tells strains apart without colour. */
  core: string;
  leaves: Point | null;
  enters: Point | null;
};
export type PlacedPurchase = { purchase: Purchase; x: number; y: number; bank: Bank };
export type PlacedEnd = { end: ChainEnd; x: number; y: number };
export type Picture = {
  width: number;
  height: number;
  pxPerDay: number;
  firstDay: number;
  lastDay: number;
  rows: Row[];
  store: { top: number; bottom: number };
  bars: PlacedBar[];
  threads: Thread[];
  purchases: PlacedPurchase[];
  ends: PlacedEnd[];
};

/** Left edge of a day's column. */
export function xOfDay(day: number, picture: { firstDay: number; pxPerDay: number }): number {
  return (day - picture.firstDay) * picture.pxPerDay;
}

/** The day under an x of the picture, with its fraction. */
export function dayUnder(x: number, picture: { firstDay: number; pxPerDay: number }): number {
  return picture.firstDay + x / picture.pxPerDay;
}

/** Thickness of a thread by its likely share alive, px: half dead is a hair. */
export const threadWidth = scaleLinear().domain([0.5, 1]).range([1.2, 5.2]).clamp(true);
/** How strongly it is inked, 0 to 1; never so pale that it cannot be seen. */
export const threadInk = scaleLinear().domain([0.5, 1]).range([0.42, 1]).clamp(true);

/** Least distance between two verticals, px. */
export const VERTICAL_GAP = 5;
const CORNER = 7;

/** Lays the whole picture out. */
export function layOut(woven: Weave, sizes: Sizes): Picture {
  const upperCount = Math.ceil(woven.tanks.length / 2);
  const bankOfTank = new Map<string, Bank>(
    woven.tanks.map((tank, at) => [tank, at < upperCount ? 'upper' : 'lower']),
  );
  const bankOfBrew = new Map(
    woven.bars.map((bar) => [bar.brew, bankOfTank.get(bar.tank) ?? 'upper']),
  );
  const lanes = assignLanes(woven.strands, bankOfBrew);
  const frame = { firstDay: woven.firstDay, pxPerDay: sizes.pxPerDay };
  const rowHeight = sizes.outerGutter + sizes.barHeight + sizes.innerGutter;
  const storeTop = sizes.axis + upperCount * rowHeight;
  const storeBottom = storeTop + 2 * sizes.storePadding + Math.max(1, lanes.count) * sizes.lane;
  const rows = woven.tanks.map((tank, at): Row => {
    const bank = bankOfTank.get(tank) ?? 'upper';
    const top =
      bank === 'upper' ? sizes.axis + at * rowHeight : storeBottom + (at - upperCount) * rowHeight;
    const barTop = top + (bank === 'upper' ? sizes.outerGutter : sizes.innerGutter);
    return { tank, bank, top, bottom: top + rowHeight, barTop };
  });
  const rowOf = new Map(rows.map((row) => [row.tank, row]));
  const centre = (day: number) => xOfDay(day, frame) + sizes.pxPerDay / 2;

  const bars = woven.bars.flatMap((bar): PlacedBar[] => {
    const row = rowOf.get(bar.tank);
    if (!row) return [];
    const x = centre(bar.day);
    return [
      {
        bar,
        bank: row.bank,
        x,
        y: row.barTop,
        width: Math.max(2, centre(bar.emptied) - x),
        height: sizes.barHeight,
        dryHopX: bar.dryHop === null ? null : centre(bar.dryHop),
        crashX: bar.crash === null ? null : centre(bar.crash),
        freeX: xOfDay(bar.emptied, frame) + sizes.pxPerDay,
      },
    ];
  });
  const barOf = new Map(bars.map((bar) => [bar.bar.brew, bar]));
  const verticals = placeVerticals(woven.strands, barOf, centre);
  const laneY = (lane: number) => storeTop + sizes.storePadding + (lane + 0.5) * sizes.lane;
  const threads = woven.strands.map((strand) =>
    placeThread(strand, laneY(lanes.of.get(strand.id) ?? 0), barOf, verticals, centre),
  );
  const outerEdge = (bar: PlacedBar) => (bar.bank === 'upper' ? bar.y : bar.y + bar.height);
  return {
    width: (woven.lastDay + 1 - woven.firstDay) * sizes.pxPerDay,
    height: rows.at(-1)?.bank === 'lower' ? (rows.at(-1)?.bottom ?? storeBottom) : storeBottom,
    pxPerDay: sizes.pxPerDay,
    firstDay: woven.firstDay,
    lastDay: woven.lastDay,
    rows,
    store: { top: storeTop, bottom: storeBottom },
    bars,
    threads,
    purchases: woven.purchases.flatMap((purchase) => {
      const bar = barOf.get(purchase.brew);
      return bar ? [{ purchase, x: bar.x, y: outerEdge(bar), bank: bar.bank }] : [];
    }),
    ends: woven.ends.flatMap((end) => {
      const bar = barOf.get(end.brew);
      return bar ? [{ end, x: bar.x + bar.width, y: bar.y + bar.height }] : [];
    }),
  };
}

type Verticals = { leaving: Map<string, number>; entering: Map<string, number> };

/**
 * An x of its own for every vertical. Those that leave a beer move left under its bar until they are
 * free of each other; those that enter move right under theirs. So both stay under the beer they mean.
 */
export function placeVerticals(
  strands: readonly Strand[],
  barOf: ReadonlyMap<string, PlacedBar>,
  centre: (day: number) => number,
): Verticals {
  const leaving = new Map<string, number>();
  const entering = new Map<string, number>();
  const out = new Map<string, number>();
  for (const strand of strands) {
    if (strand.from.kind === 'brew' && barOf.has(strand.from.name)) {
      out.set(strand.from.name, centre(strand.start));
    }
  }
  let free = Number.POSITIVE_INFINITY;
  for (const [brew, x] of [...out].toSorted((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))) {
    const at = Math.min(x - VERTICAL_GAP / 2, free - VERTICAL_GAP);
    leaving.set(brew, at);
    free = at;
  }
  const taken = [...leaving.values()].toSorted((a, b) => a - b);
  const pitched = strands.flatMap((s) => (s.to !== null && barOf.has(s.to) ? [s.to] : []));
  const starts = [...new Set(pitched)].map((brew) => [brew, barOf.get(brew)?.x ?? 0] as const);
  free = Number.NEGATIVE_INFINITY;
  for (const [brew, x] of starts.toSorted((a, b) => a[1] - b[1] || (a[0] < b[0] ? -1 : 1))) {
    let at = Math.max(x + VERTICAL_GAP / 2, free + VERTICAL_GAP);
    for (const other of taken) if (Math.abs(other - at) < VERTICAL_GAP) at = other + VERTICAL_GAP;
    entering.set(brew, at);
    free = at;
  }
  return { leaving, entering };
}

function placeThread(
  strand: Strand,
  y: number,
  barOf: ReadonlyMap<string, PlacedBar>,
  verticals: Verticals,
  centre: (day: number) => number,
): Thread {
  const source = strand.from.kind === 'brew' ? barOf.get(strand.from.name) : undefined;
  const target = strand.to === null ? undefined : barOf.get(strand.to);
  const leaveX = verticals.leaving.get(strand.from.name);
  const enterX = strand.to === null ? undefined : verticals.entering.get(strand.to);
  const leaves = source && leaveX !== undefined ? { x: leaveX, y: innerEdge(source) } : null;
  const enters = target && enterX !== undefined ? { x: enterX, y: innerEdge(target) } : null;
  const fromX = leaves?.x ?? centre(strand.start);
  const toX = Math.max(fromX, enters?.x ?? centre(strand.end));
  const half = (toX - fromX) / 2;
  // A jar of the shelf has its code written before its thread.
  const startX = fromX + (leaves ? Math.min(CORNER, half) : Math.min(jarCodeRoom(strand), half));
  const endX = enters ? toX - Math.min(CORNER, half) : toX;
  const startWidth = threadWidth(strand.startShare);
  const endWidth = threadWidth(strand.endShare);
  const lead = leaves ? corner(leaves, { x: startX, y }) : null;
  const rise = enters ? corner(enters, { x: endX, y }) : null;
  return {
    strand,
    y,
    startX,
    endX,
    startWidth,
    endWidth,
    startInk: threadInk(strand.startShare),
    endInk: threadInk(strand.endShare),
    lead,
    body: ribbon(startX, endX, y, startWidth, endWidth),
    rise,
    core: `${lead ?? `M${n(startX)} ${n(y)}`}H${n(endX)}${enters ? backTo(enters, endX, y) : ''}`,
    leaves,
    enters,
  };
}

/** Room for the code of a jar, px. */
function jarCodeRoom(strand: Strand): number {
  return strand.from.kind === 'jar' ? 6 + 6 * strand.from.name.length : 0;
}

function innerEdge(bar: PlacedBar): number {
  return bar.bank === 'upper' ? bar.y + bar.height : bar.y;
}

const n = (value: number) => String(Math.round(value * 10) / 10);

/** Down (or up) from a beer, and round the corner into a lane. */
function corner(from: Point, to: Point): string {
  const radius = Math.min(CORNER, Math.abs(to.y - from.y));
  const turn = to.y - Math.sign(to.y - from.y) * radius;
  return `M${n(from.x)} ${n(from.y)}V${n(turn)}Q${n(from.x)} ${n(to.y)} ${n(to.x)} ${n(to.y)}`;
}

/** The same corner walked the other way, carried on from the lane. */
function backTo(end: Point, _laneX: number, laneY: number): string {
  const radius = Math.min(CORNER, Math.abs(laneY - end.y));
  const turn = laneY - Math.sign(laneY - end.y) * radius;
  return `Q${n(end.x)} ${n(laneY)} ${n(end.x)} ${n(turn)}V${n(end.y)}`;
}

function ribbon(fromX: number, toX: number, y: number, fromWidth: number, toWidth: number): string {
  const [a, b] = [fromWidth / 2, toWidth / 2];
  return `M${n(fromX)} ${n(y - a)}L${n(toX)} ${n(y - b)}V${n(y + b)}L${n(fromX)} ${n(y + a)}Z`;
}
