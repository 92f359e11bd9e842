// Which wish undoes one change of a draft. Pure.
import type { Changes, Plan } from '../../../planner/index.ts';
import type { NewsGiven } from '../../queries/news.ts';

type Change = Changes['changes'][number];

/** The wish that undoes one change; null where there is nothing to go back to. */
export function holdNews(change: Change, inForce: Plan): NewsGiven | null {
  const brew = inForce.brews.find((one) => one.brew === change.brew);
  if (brew === undefined || brew.done) return null;
  const hold = { kind: 'pinned' as const, brew: brew.brew };
  switch (change.kind) {
    case 'moved':
      return { ...hold, day: brew.day };
    case 'tank':
      return { ...hold, tank: brew.tank };
    case 'source':
    case 'yeast': {
      const { source } = brew;
      if (source.kind === 'jar') return { ...hold, source: { kind: 'jar', jar: source.jar } };
      if (source.kind === 'harvest')
        return { ...hold, source: { kind: 'harvest', brew: source.brew } };
      return { ...hold, source: { kind: 'fresh' } };
    }
    default:
      return null;
  }
}
