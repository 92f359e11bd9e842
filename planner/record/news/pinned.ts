// A brew is held to a day, a tank or a source, kept from a source, or let go.
import type { News, SourceRef } from '../../model/index.ts';
import { plusDays, sayDay, weekdayOf } from '../../tasks/days.ts';
import { listed } from '../../tasks/words.ts';
import type { Asked, Resolved } from '../asked.ts';
import type { Refusal } from '../refusal.ts';
import { sayWithYear, unknownIn } from './known.ts';

export function pinnedFact(news: News & { kind: 'pinned' }, asked: Asked): Resolved {
  const { brew, day, tank, source } = news;
  const refusals = unknownIn(asked, 'brew', brew);
  if (tank !== null) refusals.push(...unknownIn(asked, 'tank', tank));
  if (source !== null) refusals.push(...unknownSource(brew, source, asked));
  if (day === null && tank === null && source === null) {
    refusals.push({
      code: 'pins-nothing',
      field: 'day',
      value: null,
      bound: 'a day, a tank, a source, or several of them',
      message: `Neither a day nor a tank nor a source is given to which ${brew} is to be held.`,
      remedy: `Give one of them; to let ${brew} go, unpin it.`,
    });
  }
  if (day !== null) refusals.push(...wrongDay(brew, day, asked));
  if (refusals.length > 0) return { refusals };
  return { fact: { kind: 'pinned', pin: { brew, day, tank, source, forbidden: [] } } };
}

function wrongDay(brew: string, day: string, asked: Asked): Refusal[] {
  const { house, today } = asked;
  const about = { field: 'day', value: day };
  const said = sayWithYear(day, today);
  if (day < today) {
    return [
      {
        code: 'in-the-past',
        ...about,
        bound: `on or after ${today}`,
        message: `${brew} cannot be held to ${said}, which is past: today is ${sayDay(today)}.`,
        remedy: `Name a day from today on; if it was brewed on ${said}, say that.`,
      },
    ];
  }
  if (day < house.from || day > house.to) {
    return [
      {
        code: day < house.from ? 'before-the-season' : 'after-the-season',
        ...about,
        bound: `${house.from} to ${house.to}`,
        message: `${said} lies ${day < house.from ? 'before' : 'after'} the season, ${sayWithYear(house.from, today)} to ${sayWithYear(house.to, today)}.`,
        remedy: `Name a day of the season, or let the season ${day < house.from ? 'begin earlier' : 'end later'}.`,
      },
    ];
  }
  if (isBrewDay(day, asked)) return [];
  const near = [nextBrewDay(day, -1, asked), nextBrewDay(day, 1, asked)].flatMap((found) =>
    found === null ? [] : [sayDay(found)],
  );
  return [
    {
      code: 'no-brew-day',
      ...about,
      bound: 'an open brew day of the house',
      message: `${said} is ${house.closed.includes(day) ? 'closed' : 'no brew day of this house'}, so ${brew} cannot be held to it.`,
      remedy:
        near.length === 0 ? 'Open a brew day first.' : `Name ${listed(near)}, or another brew day.`,
    },
  ];
}

const isBrewDay = (day: string, { house }: Asked): boolean =>
  house.brewDays.includes(weekdayOf(day)) && !house.closed.includes(day);

function nextBrewDay(day: string, step: 1 | -1, asked: Asked): string | null {
  const { house, today } = asked;
  for (let away = 1; away <= 60; away++) {
    const found = plusDays(day, step * away);
    if (found < house.from || found > house.to || found < today) return null;
    if (isBrewDay(found, asked)) return found;
  }
  return null;
}

/** A refusal if there is no such jar or brew, or if the brew would feed itself. */
function unknownSource(brew: string, source: SourceRef, asked: Asked): Refusal[] {
  if (source.kind === 'fresh') return [];
  if (source.kind === 'jar') return unknownIn(asked, 'jar', source.jar, 'source.jar');
  if (source.brew !== brew) return unknownIn(asked, 'brew', source.brew, 'source.brew');
  return [
    {
      code: 'feeds-itself',
      field: 'source.brew',
      value: brew,
      bound: 'another brew',
      message: `${brew} cannot be pitched with its own harvest.`,
      remedy: 'Name the brew that the yeast is to come out of.',
    },
  ];
}

export function unpinnedFact(news: News & { kind: 'unpinned' }, asked: Asked): Resolved {
  const refusals = unknownIn(asked, 'brew', news.brew);
  return refusals.length > 0
    ? { refusals }
    : { fact: { kind: 'unpinned', brew: news.brew, what: news.what } };
}

export function forbiddenFact(
  news: News & { kind: 'source-forbidden' | 'source-allowed' },
  asked: Asked,
): Resolved {
  const { kind, brew, source } = news;
  const refusals = [...unknownIn(asked, 'brew', brew), ...unknownSource(brew, source, asked)];
  return refusals.length > 0 ? { refusals } : { fact: { kind, brew, source } };
}
