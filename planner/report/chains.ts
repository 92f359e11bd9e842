// The yeast's ways through the season: every path from a pack or a jar to the beer at which it ends, and why it ends.
import type { Plan } from '../model/index.ts';
import { sourceName } from '../rules/rule.ts';
import type { Judge } from '../search/score.ts';
import { FRESH } from '../timeline/problem.ts';
import type { Timeline } from '../timeline/timeline.ts';

export function publishChains(judge: Judge, t: Timeline): Plan['chains'] {
  const p = t.problem;
  const nJars = p.jars.length;
  const children = new Map<number, number[]>();
  const roots: number[] = [];
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    const from = (t.source[b] as number) - nJars;
    if (from < 0 || !t.placed[from]) roots.push(b);
    else children.set(from, [...(children.get(from) ?? []), b]);
  }
  const chains: Plan['chains'] = [];
  const walk = (b: number, path: number[]) => {
    const here = [...path, b];
    const next = children.get(b) ?? [];
    for (const child of next) walk(child, here);
    if (next.length > 0 || here.length > p.brews.length) return;
    const root = t.source[here[0] as number] as number;
    chains.push({
      yeast: p.yeasts[t.yeast[b] as number]?.row.yeast ?? '?',
      root: root === FRESH ? 'fresh packs' : sourceName(t, root),
      brews: here.map((x) => p.brews[x]?.name ?? '?'),
      endsBecause: endsBecause(judge, t, b),
    });
  };
  for (const root of roots) walk(root, []);
  return chains;
}

/** Why nothing is pitched from brew b: the rule that forbids it for every later brew, or that none wants it. */
function endsBecause(judge: Judge, t: Timeline, b: number): string {
  const p = t.problem;
  const source = p.jars.length + b;
  if (t.keep.includes(source)) return 'A jar of it is kept for the next season.';
  const usable = t.usableFrom[b] as number;
  const later: number[] = [];
  for (let i = 0; i < t.orderCount; i++) {
    const o = t.order[i] as number;
    if (o !== b && !t.done[o] && t.yeast[o] === t.yeast[b] && (t.useDay[o] as number) >= usable)
      later.push(o);
  }
  if (later.length === 0) return 'No later brew of the plan wants this strain.';
  for (const rule of judge.hard) {
    if (rule.bars && later.every((o) => rule.bars?.(t, o, source, t.useDay[o] as number))) {
      return rule.says;
    }
  }
  return 'Another source does better for the brews that follow.';
}
