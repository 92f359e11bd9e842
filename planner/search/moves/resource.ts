// Pitches one brew from another source, with another strain where it accepts several.
import { type Move, movable } from './move.ts';

export const resource: Move = {
  name: 'resource',
  share: 30,
  apply(desk, t) {
    const b = movable(desk);
    const brew = desk.problem.brews[b];
    if (!brew || brew.pinSource >= -1) return false;
    const { random, current } = desk;
    if (brew.yeasts.length > 1 && random.next() < 0.4) {
      t.yeast[b] = brew.yeasts[random.below(brew.yeasts.length)] as number;
    }
    // the list is judged against what stands, but for the strain just chosen
    const was = current.yeast[b] as number;
    current.yeast[b] = t.yeast[b] as number;
    const n = desk.listSources(current, b, current.day[b] as number);
    current.yeast[b] = was;
    if (n === 0) return false;
    const source = desk.option(random.below(n));
    if (source === current.source[b] && t.yeast[b] === was) return false;
    t.source[b] = source;
    t.starter[b] = random.next() < 0.3 ? desk.randomStarter(t, b) : 0;
    desk.touch(b);
    return true;
  },
};
