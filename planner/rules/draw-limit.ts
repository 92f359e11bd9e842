// No more is drawn than there is; an opened jar of the shelf feeds one pitch.

import { fromStarter } from '../timeline/kept.ts';
import { FRESH } from '../timeline/problem.ts';
import { type HardRule, plural, sourceName } from './rule.ts';

export const drawLimit: HardRule = {
  id: 'draw-limit',
  title: 'No more drawn than there is',
  level: 'hard',
  unit: 'mL',
  says: 'The draws on a harvest or a jar never add up to more than it holds; an opened jar feeds one pitch.',
  check(t, found) {
    const { jars, house } = t.problem;
    for (let s = 0; s < t.draws.length; s++) {
      const draws = t.draws[s] as number;
      if (draws === 0) continue;
      const drawn = t.drawnMl[s] as number;
      if (s < jars.length) {
        const has = jars[s]?.ml ?? 0;
        const over = draws > 1 ? Math.max(1, drawn - has, drawn / draws) : drawn - has;
        if (over > 1e-6 && !drawnByFactsOnly(t, s)) found(Math.ceil(over - 1e-6), s, draws);
      } else {
        const over = drawn - (t.cropMl[s - jars.length] as number);
        if (over > 1e-6 && !drawnByFactsOnly(t, s)) found(Math.ceil(over - 1e-6), s, draws);
        const tooMany = fromStarter(t, s) ? jarsOver(t, s) : 0;
        if (tooMany > 0 && !drawnByFactsOnly(t, s))
          found(tooMany * Math.ceil(house.store.jarMl), s, -tooMany);
      }
    }
  },
  subject: (t, f) => sourceName(t, f.subject),
  explain: (t, f) => {
    if (f.other < 0)
      return `${sourceName(t, f.subject)} would fill ${plural(-f.other, 'jar')} more than this house keeps of one starter.`;
    return f.subject < t.problem.jars.length && f.other > 1
      ? `${sourceName(t, f.subject)} is opened for ${f.other} pitches; an opened jar feeds one.`
      : `${Math.round(t.drawnMl[f.subject] as number)} mL are drawn from ${sourceName(t, f.subject)}, ${f.amount} mL more than it holds.`;
  },
  remedy: () => 'Feed one of the brews from another source, or make up the gap with a starter.',
};

/** Jars cut of a starter above what the house keeps of one; what is in jars already is a fact. */
function jarsOver(t: Parameters<HardRule['check']>[0], source: number): number {
  const { brews, jars, settings } = t.problem;
  if (brews[source - jars.length]?.harvested) return 0;
  return (t.jarsCut[source] as number) - settings.keptStarterJars;
}

function drawnByFactsOnly(t: Parameters<HardRule['check']>[0], source: number): boolean {
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    if (t.source[b] === source && !t.done[b]) return false;
  }
  for (let y = 0; y < t.keep.length; y++) if (t.keep[y] === source) return false;
  return source !== FRESH;
}
