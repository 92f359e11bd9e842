// A brew slipped: it cannot be brewed before some day.
import type { News } from '../../model/index.ts';
import { sayDay } from '../../tasks/days.ts';
import type { Asked, Resolved } from '../asked.ts';
import { unknownIn } from './known.ts';

export function slippedFact(news: News & { kind: 'slipped' }, asked: Asked): Resolved {
  const { house, today } = asked;
  const refusals = unknownIn(asked, 'brew', news.brew);
  if (news.to < today) {
    refusals.push({
      code: 'in-the-past',
      field: 'to',
      value: news.to,
      bound: `on or after ${today}`,
      message: `${news.brew} cannot slip to ${sayDay(news.to)}, which is past: today is ${sayDay(today)}.`,
      remedy: `Name a day from today on; if it was brewed on ${sayDay(news.to)}, say that.`,
    });
  }
  if (news.to > house.to) {
    refusals.push({
      code: 'after-the-season',
      field: 'to',
      value: news.to,
      bound: `on or before ${house.to}`,
      message: `${sayDay(news.to)} ${news.to.slice(0, 4)} lies after the season, whose last brew day is ${sayDay(house.to)} ${house.to.slice(0, 4)}.`,
      remedy: 'Name an earlier day, let the season end later, or drop the brew.',
    });
  }
  if (refusals.length > 0) return { refusals };
  return { fact: { kind: 'not-before', brew: news.brew, day: news.to } };
}
