// Walking along the yeast with the arrow keys: to the beer it came from, to those it goes to, and from line to line.
import type { Weave } from './weave.ts';

export type Step = 'back' | 'on' | 'before' | 'after' | 'first' | 'last';

/** Which key takes which step. */
export const STEP_OF_KEY: Readonly<Record<string, Step>> = {
  ArrowLeft: 'back',
  ArrowRight: 'on',
  ArrowUp: 'before',
  ArrowDown: 'after',
  Home: 'first',
  End: 'last',
};

/** The beer whose harvest was pitched into this one; null for packs and jars of the shelf. */
export function parentOf(brew: string, woven: Weave): string | null {
  const source = woven.bars.find((bar) => bar.brew === brew)?.planned.source;
  return source?.kind === 'harvest' ? source.brew : null;
}

/** The beers that this one's harvest is pitched into, earliest first. */
export function childrenOf(brew: string, woven: Weave): string[] {
  return woven.bars
    .filter((bar) => bar.planned.source.kind === 'harvest' && bar.planned.source.brew === brew)
    .map((bar) => bar.brew);
}

/** Everything that this brew's yeast descends from and everything that descends from it, itself included. */
export function familyOf(brew: string, woven: Weave): Set<string> {
  const family = new Set([brew]);
  for (let up = parentOf(brew, woven); up !== null && !family.has(up); up = parentOf(up, woven)) {
    family.add(up);
  }
  const queue = [brew];
  for (let next = queue.pop(); next !== undefined; next = queue.pop()) {
    for (const child of childrenOf(next, woven)) {
      if (family.has(child)) continue;
      family.add(child);
      queue.push(child);
    }
  }
  return family;
}

/**
 * Where an arrow leads. Left and right follow the yeast; up and down go to the beers that share the
 * harvest, or else to the line that began before or after this one. Null: there is nowhere to go.
 */
export function stepFrom(brew: string, step: Step, woven: Weave): string | null {
  if (step === 'first') return woven.bars[0]?.brew ?? null;
  if (step === 'last') return woven.bars.at(-1)?.brew ?? null;
  if (step === 'back') return parentOf(brew, woven);
  if (step === 'on') return childrenOf(brew, woven)[0] ?? null;
  const parent = parentOf(brew, woven);
  const roots = woven.bars.filter((bar) => parentOf(bar.brew, woven) === null);
  const move = step === 'before' ? -1 : 1;
  if (parent !== null) {
    const siblings = childrenOf(parent, woven);
    const sibling = siblings[siblings.indexOf(brew) + move];
    if (sibling !== undefined) return sibling;
  }
  const root = rootOf(brew, woven);
  const at = roots.findIndex((bar) => bar.brew === root) + move;
  return at < 0 ? null : (roots[at]?.brew ?? null);
}

function rootOf(brew: string, woven: Weave): string {
  let root = brew;
  const seen = new Set([brew]);
  for (let up = parentOf(root, woven); up !== null && !seen.has(up); up = parentOf(root, woven)) {
    seen.add(up);
    root = up;
  }
  return root;
}
