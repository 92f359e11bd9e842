// A brew is held to a day or a tank, or let go.
import type { News } from '../../model/index.ts';
import { sayDay } from '../../tasks/days.ts';
import type { Refusal } from '../refusal.ts';
import type { Asked, Resolved } from '../resolve.ts';
import { unknown } from './known.ts';

export function pinnedFact(news: News & { kind: 'pinned' }, asked: Asked): Resolved {
  const { house, today } = asked;
  const refusals: Refusal[] = unknown(
    'brew',
    news.brew,
    house.brews.map((brew) => brew.brew),
  );
  if (news.tank !== null) {
    refusals.push(
      ...unknown(
        'tank',
        news.tank,
        house.tanks.map((tank) => tank.tank),
      ),
    );
  }
  if (news.day === null && news.tank === null) {
    refusals.push({
      code: 'pins-nothing',
      field: 'day',
      value: null,
      bound: 'a day, a tank or both',
      message: `Neither a day nor a tank is given to which ${news.brew} is to be held.`,
      remedy: `Give a day or a tank; to let ${news.brew} go, unpin it.`,
    });
  }
  if (news.day !== null && news.day < today) {
    refusals.push({
      code: 'in-the-past',
      field: 'day',
      value: news.day,
      bound: `on or after ${today}`,
      message: `${news.brew} cannot be held to ${sayDay(news.day)}, which is past: today is ${sayDay(today)}.`,
      remedy: `Name a day from today on; if it was brewed on ${sayDay(news.day)}, say that.`,
    });
  }
  if (refusals.length > 0) return { refusals };
  const { brew, day, tank } = news;
  return { fact: { kind: 'pinned', pin: { brew, day, tank, source: null } } };
}

export function unpinnedFact(news: News & { kind: 'unpinned' }, asked: Asked): Resolved {
  const refusals = unknown(
    'brew',
    news.brew,
    asked.house.brews.map((brew) => brew.brew),
  );
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'unpinned', brew: news.brew } };
}
