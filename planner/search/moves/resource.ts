// Pitches one brew from another source, with another strain where it accepts several.
import { ANY_STARTER, NO_STARTER } from '../quotes.ts';
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
    const { quotes } = desk;
    quotes.read(current);
    if (current.source[b] === t.source[b]) {
      quotes.claim(t.source[b] as number, current.drawMl[b] as number, -1);
    }
    const was = current.source[b] as number;
    const sizes = random.next() < 0.5 ? ANY_STARTER : NO_STARTER;
    if (quotes.best(t, b, sizes, random, desk.heat * (random.next() < 0.5 ? 1 : 8)) === Infinity)
      return false;
    t.source[b] = quotes.source;
    t.starter[b] = quotes.starter;
    if (
      t.source[b] === was &&
      t.yeast[b] === current.yeast[b] &&
      t.starter[b] === current.starter[b]
    )
      return false;
    desk.chosen = b;
    desk.touch(b);
    return true;
  },
};
