// Packs that were bought or come on another day, and starters that failed.
import type { News } from '../../model/index.ts';
import { sayDay } from '../../tasks/days.ts';
import { listed } from '../../tasks/words.ts';
import type { Asked, Resolved } from '../asked.ts';
import type { Refusal } from '../refusal.ts';
import { unknownIn } from './known.ts';

export function packsBoughtFact(news: News & { kind: 'packs-bought' }, asked: Asked): Resolved {
  const { yeast, packs, arrivesOn } = news;
  const refusals = unknownIn(asked, 'yeast', yeast);
  return refusals.length > 0
    ? { refusals }
    : { fact: { kind: 'bought', lines: [{ yeast, packs, arrivesOn }] } };
}

export function packsLateFact(news: News & { kind: 'packs-late' }, asked: Asked): Resolved {
  const { yeast, arrivesOn, expectedOn } = news;
  const refusals = unknownIn(asked, 'yeast', yeast);
  if (refusals.length > 0) return { refusals };
  const days = asked.ledger.bought
    .filter(({ line }) => line.yeast === yeast)
    .map(({ line }) => line.arrivesOn);
  const known = [...new Set(days)].sort();
  // without a day named, one that is past is taken to have come, unless it is the only one
  const open = known.filter((day) => day >= asked.today);
  const meant = expectedOn ?? (open.length > 0 ? only(open) : known.at(-1));
  if (meant === undefined || !known.includes(meant)) {
    return { refusals: [whichDelivery(news, known)] };
  }
  if (arrivesOn === meant) {
    const refusal: Refusal = {
      code: 'same-day',
      field: 'arrivesOn',
      value: arrivesOn,
      message: `They are expected on ${sayDay(meant)} already.`,
      remedy: 'There is nothing to do.',
    };
    return { refusals: [refusal] };
  }
  return { fact: { kind: 'packs-late', yeast, was: meant, arrivesOn } };
}

const only = (days: readonly string[]): string | undefined =>
  days.length === 1 ? days[0] : undefined;

function whichDelivery(news: News & { kind: 'packs-late' }, known: readonly string[]): Refusal {
  const about = { field: 'expectedOn', value: news.expectedOn };
  if (known.length === 0) {
    return {
      code: 'no-such-delivery',
      ...about,
      bound: 'a day on which packs are to come',
      message: `No packs of ${news.yeast} are recorded as ordered.`,
      remedy: 'Tick the order, or say that packs were bought, with the day on which they come.',
    };
  }
  return {
    code: news.expectedOn === null ? 'which-delivery' : 'no-such-delivery',
    ...about,
    bound: listed(known),
    message:
      news.expectedOn === null
        ? `Packs of ${news.yeast} are to come on ${listed(known.map(sayDay))}: which of them are late is not said.`
        : `No packs of ${news.yeast} are to come on ${sayDay(news.expectedOn)}, but on ${listed(known.map(sayDay))}.`,
    remedy: 'Name the day on which they were to come.',
  };
}

export function starterFailedFact(news: News & { kind: 'starter-failed' }, asked: Asked): Resolved {
  const refusals = unknownIn(asked, 'brew', news.brew);
  return refusals.length > 0
    ? { refusals }
    : { fact: { kind: 'starter-failed', brew: news.brew, day: news.day } };
}
