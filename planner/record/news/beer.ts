// A beer in its tank goes otherwise than planned: slowly, at another gravity, hopped early; it begins to foam; it is tasted and passed.
import type { News } from '../../model/index.ts';
import { daysBetween, sayDay } from '../../tasks/days.ts';
import { saySg } from '../../tasks/words.ts';
import type { Asked, Resolved } from '../asked.ts';
import { unknownIn } from './known.ts';

/** The longest that a beer stays in a tank, by the house's own bounds. */
const MOST_TANK_DAYS = 730;

export function slowFact(news: News & { kind: 'slow' }, asked: Asked): Resolved {
  const { brew, until } = news;
  const refusals = unknownIn(asked, 'brew', brew);
  const brewed = asked.ledger.brewed.get(brew);
  if (until < asked.today) {
    refusals.push({
      code: 'in-the-past',
      field: 'until',
      value: until,
      bound: `on or after ${asked.today}`,
      message: `${sayDay(until)} is past: today is ${sayDay(asked.today)}.`,
      remedy: 'Name the day from which it may be ready, as far as can be told today.',
    });
  } else if (brewed !== undefined && daysBetween(brewed.fact.day, until) > MOST_TANK_DAYS) {
    refusals.push({
      code: 'too-long',
      field: 'until',
      value: until,
      bound: `at most ${MOST_TANK_DAYS} days after the brew`,
      message: `${brew} would stay ${daysBetween(brewed.fact.day, until)} days in its tank.`,
      remedy: 'Correct the day.',
    });
  } else if (brewed !== undefined) {
    const planned = asked.inForce.brews.find((one) => one.brew === brew);
    const harvest = asked.inForce.harvests.find((one) => one.brew === brew && !one.done);
    const first = harvest?.day ?? planned?.emptiedOn;
    if (first !== undefined && until <= first && !asked.ledger.slow.has(brew)) {
      refusals.push({
        code: 'no-later',
        field: 'until',
        value: until,
        bound: `after ${first}`,
        message: `By the plan ${brew} is ${harvest === undefined ? 'emptied' : 'harvested'} on ${sayDay(first)}, not before ${sayDay(until)} anyway.`,
        remedy: `There is nothing to do; name a day after ${sayDay(first)} if it needs longer.`,
      });
    }
  }
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'slow', brew, until } };
}

export function gravityFact(news: News & { kind: 'gravity' }, asked: Asked): Resolved {
  const { brew: name, og, fg } = news;
  const refusals = unknownIn(asked, 'brew', name);
  const brew = asked.house.brews.find((one) => one.brew === name);
  if (brew === undefined) return { refusals };
  const low = fg ?? brew.fg;
  if (og <= 1 || low >= og) {
    refusals.push({
      code: 'gravities-reversed',
      field: fg === null ? 'og' : 'fg',
      value: saySg(fg ?? og),
      bound: fg === null ? `above ${saySg(Math.max(1, brew.fg))}` : `below ${saySg(og)}`,
      message: `${name} cannot begin at ${saySg(og)} and end at ${saySg(low)}.`,
      remedy:
        fg === null
          ? 'Write the gravity before fermentation, such as 1.072, and the final one if that changes too.'
          : 'Exchange the two, or correct one of them.',
    });
  } else if (og === brew.og && low === brew.fg) {
    refusals.push({
      code: 'same-gravity',
      field: 'og',
      value: saySg(og),
      message: `${name} is known at ${saySg(og)} already.`,
      remedy: 'There is nothing to do.',
    });
  }
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'gravity', brew: name, og, fg } };
}

export function lagFact(news: News & { kind: 'lag' }, asked: Asked): Resolved {
  const { brew, hours } = news;
  const refusals = unknownIn(asked, 'brew', brew);
  const brewed = asked.ledger.brewed.get(brew)?.fact;
  const most = brewed === undefined ? hours : (daysBetween(brewed.day, asked.today) + 1) * 24;
  if (hours > most) {
    refusals.push({
      code: 'in-the-future',
      field: 'hours',
      value: String(hours),
      bound: `at most ${most}`,
      message: `${brew} was brewed on ${sayDay(brewed?.day ?? asked.today)}: ${hours} hours after the pitch are still to come.`,
      remedy: 'Say it once it foams, in hours from the pitch.',
    });
  }
  if (refusals.length > 0) return { refusals };
  const planned = asked.inForce.brews.find((one) => one.brew === brew);
  const alive = planned?.pitchedViability ?? planned?.viability;
  return {
    fact: {
      kind: 'lag',
      brew,
      hours,
      yeast: brewed?.yeast ?? planned?.yeast ?? '',
      generation: brewed?.generation ?? 0,
      viability: alive?.likely ?? null,
    },
  };
}

export function hoppedFact(news: { brew: string; day: string }, asked: Asked): Resolved {
  const refusals = unknownIn(asked, 'brew', news.brew);
  return refusals.length > 0
    ? { refusals }
    : { fact: { kind: 'hopped', brew: news.brew, day: news.day } };
}

export function passedFact(news: News & { kind: 'passed' }, asked: Asked): Resolved {
  const refusals = unknownIn(asked, 'brew', news.brew);
  return refusals.length > 0
    ? { refusals }
    : { fact: { kind: 'passed', brew: news.brew, day: news.day } };
}
