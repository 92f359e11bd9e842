// The family tree as geometry: a strain a picture, a column a generation; a line of yeast runs straight on and its branches leave it downwards.
import type { Culture, CultureRef } from '../../../planner/index.ts';

export type Knot = {
  key: string;
  culture: Culture;
  x: number;
  y: number;
  parent: string | null;
  children: string[];
};
export type Branch = { key: string; d: string; to: Knot };
export type Tree = {
  yeast: string;
  width: number;
  height: number;
  /** In the order in which they are read: a line to its end, then its branches. */
  knots: Knot[];
  branches: Branch[];
  columns: { generation: number; x: number }[];
};

export const COLUMN = 172;
export const ROW = 58;
const LEFT = 26;
const TOP = 58;
/** A jar lies on the thread before the beer that it is pitched into, as a share of a column. */
const BEFORE = 0.44;
const ELBOW = 14;
const ROUND = 9;

export const nameOf = (of: CultureRef): string => (of.kind === 'jar' ? of.jar : of.brew);
export const keyOf = (of: CultureRef): string => `${of.kind} ${nameOf(of)}`;

/** The column of a thing, in parts of columns: slurry stands before the beer of its generation. */
const place = ({ of, generation }: Culture): number =>
  of.kind === 'beer' ? generation : generation - BEFORE;

/** A tree for each strain, in the order of their first things. */
export function treesOf(cultures: readonly Culture[]): Tree[] {
  const yeasts = [...new Set(cultures.map(({ yeast }) => yeast))];
  return yeasts.map((yeast) => treeOf(cultures.filter((one) => one.yeast === yeast)));
}

function treeOf(cultures: readonly Culture[]): Tree {
  const known = new Map(cultures.map((one) => [keyOf(one.of), one]));
  const children = new Map<string, Culture[]>();
  const roots: Culture[] = [];
  for (const one of cultures) {
    const parent = one.parent === null ? null : keyOf(one.parent);
    if (parent === null || !known.has(parent)) roots.push(one);
    else children.set(parent, [...(children.get(parent) ?? []), one]);
  }
  const byDay = (a: Culture, b: Culture) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0);
  const first = Math.floor(Math.min(...cultures.map(place)));
  const least = Math.min(...cultures.map(place));
  const xOf = (at: number) => LEFT + (at - least) * COLUMN;
  const knots: Knot[] = [];
  let row = 0;
  const lay = (culture: Culture, parent: string | null): Knot => {
    const key = keyOf(culture.of);
    const knot: Knot = { key, culture, parent, x: xOf(place(culture)), y: 0, children: [] };
    knots.push(knot);
    const own = [...(children.get(key) ?? [])].sort(byDay);
    const laid = own.map((child) => {
      // A thing that were its own ancestor could not be drawn; the record allows none.
      const below = lay(child, key);
      knot.children.push(below.key);
      return below;
    });
    knot.y = laid[0]?.y ?? TOP + ROW * row++;
    return knot;
  };
  for (const root of [...roots].sort(byDay)) lay(root, null);
  const at = new Map(knots.map((knot) => [knot.key, knot]));
  const most = Math.max(...cultures.map(place));
  const columns = [];
  for (let generation = Math.max(0, first); generation <= most; generation++) {
    if (generation >= least) columns.push({ generation, x: xOf(generation) });
  }
  return {
    yeast: cultures[0]?.yeast ?? '',
    width: xOf(most) + COLUMN * 0.62,
    height: TOP + ROW * Math.max(0, row - 1) + 40,
    knots,
    branches: knots.flatMap((to) => {
      const from = to.parent === null ? undefined : at.get(to.parent);
      return from === undefined ? [] : [{ key: to.key, d: branchPath(from, to), to }];
    }),
    columns,
  };
}

/** Along the thread, or down from it and on. */
function branchPath(from: Knot, to: Knot): string {
  if (from.y === to.y) return `M${from.x} ${from.y}H${to.x}`;
  const x = from.x + ELBOW;
  return (
    `M${from.x} ${from.y}H${x - ROUND}Q${x} ${from.y} ${x} ${from.y + ROUND}` +
    `V${to.y - ROUND}Q${x} ${to.y} ${x + ROUND} ${to.y}H${to.x}`
  );
}

/** Where an arrow key leads from a knot: along its line, or to the knot above or below; null: nowhere. */
export function stepFrom(tree: Tree, key: string, arrow: string): string | null {
  const knot = tree.knots.find((one) => one.key === key);
  if (knot === undefined) return null;
  if (arrow === 'ArrowLeft') return knot.parent;
  if (arrow === 'ArrowRight') return knot.children[0] ?? null;
  if (arrow === 'Home') return tree.knots[0]?.key ?? null;
  if (arrow === 'End') return tree.knots.at(-1)?.key ?? null;
  const down = arrow === 'ArrowDown';
  if (!down && arrow !== 'ArrowUp') return null;
  const beyond = tree.knots.filter((one) => (down ? one.y > knot.y : one.y < knot.y));
  const far = (one: Knot) => Math.abs(one.y - knot.y) * 10 + Math.abs(one.x - knot.x);
  return beyond.sort((a, b) => far(a) - far(b))[0]?.key ?? null;
}
