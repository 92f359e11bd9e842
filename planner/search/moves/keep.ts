// Keeps a jar of a strain for the end of the season, another one, or none.
import type { Move } from './move.ts';

export const keep: Move = {
  name: 'keep',
  share: 4,
  apply(desk, t) {
    const p = desk.problem;
    if (!desk.freedom.slurry || t.keep.length === 0) return false;
    const y = desk.random.below(t.keep.length);
    const nJars = p.jars.length;
    const choices: number[] = [-1];
    for (let j = 0; j < nJars; j++) if (p.jars[j]?.yeast === y) choices.push(j);
    for (let i = 0; i < desk.current.orderCount; i++) {
      const b = desk.current.order[i] as number;
      if (t.yeast[b] !== y) continue;
      const day = desk.current.harvestDay[b] as number;
      if (day <= p.to && p.to - day <= p.settings.maxStorageDays) choices.push(nJars + b);
    }
    const next = choices[desk.random.below(choices.length)] as number;
    if (next === t.keep[y]) return false;
    t.keep[y] = next;
    return true;
  },
};
