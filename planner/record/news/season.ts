// The season itself changes: a brew more, one less, one of another size; a day closed; a tank out of use.
import type { Brew, News } from '../../model/index.ts';
import { latest, plusDays, sayDay, weekdayOf } from '../../tasks/days.ts';
import { sayL } from '../../tasks/words.ts';
import type { Asked, Resolved } from '../asked.ts';
import type { Refusal } from '../refusal.ts';
import { sayWithYear, unknownIn, wrongRow } from './known.ts';

export function notYetFact(news: News & { kind: 'not-yet' }, asked: Asked): Resolved {
  const { house, today } = asked;
  const refusals = unknownIn(asked, 'brew', news.brew);
  const day = plusDays(today, 1);
  if (day > house.to) refusals.push(seasonOver(news.brew, day, asked));
  if (refusals.length > 0) return { refusals };
  // a brew that slipped farther than tomorrow already stays there
  const was = asked.ledger.notBefore.get(news.brew)?.day ?? day;
  return { fact: { kind: 'not-before', brew: news.brew, day: latest(was, day) } };
}

export function seasonOver(brew: string, day: string, asked: Asked): Refusal {
  const { to } = asked.house;
  return {
    code: 'after-the-season',
    field: 'brew',
    value: day,
    bound: `on or before ${to}`,
    message: `The season ends on ${sayWithYear(to, asked.today)}: there is no day left for ${brew}.`,
    remedy: 'Let the season end later, or drop the brew.',
  };
}

export function brewAddedFact(news: News & { kind: 'brew-added' }, asked: Asked): Resolved {
  const { house } = asked;
  const added = { ...house, brews: [...house.brews, news.row] };
  const refusals = wrongRow(house, added, 'brews');
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'brew-added', row: news.row } };
}

export function brewDroppedFact(news: News & { kind: 'brew-dropped' }, asked: Asked): Resolved {
  const refusals = unknownIn(asked, 'brew', news.brew);
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'brew-dropped', brew: news.brew } };
}

export function resizedFact(news: News & { kind: 'resized' }, asked: Asked): Resolved {
  const refusals = unknownIn(asked, 'brew', news.brew);
  const brew = asked.house.brews.find((one) => one.brew === news.brew);
  if (brew === undefined) return { refusals };
  if (brew.volumeL === news.volumeL) {
    refusals.push({
      code: 'same-size',
      field: 'volumeL',
      value: String(news.volumeL),
      message: `${news.brew} is planned with ${sayL(news.volumeL)} already.`,
      remedy: 'There is nothing to do.',
    });
  }
  refusals.push(...fitsNowhere(brew, news.volumeL, asked));
  return refusals.length > 0
    ? { refusals }
    : { fact: { kind: 'resized', brew: news.brew, volumeL: news.volumeL } };
}

function fitsNowhere(brew: Brew, volumeL: number, asked: Asked): Refusal[] {
  const warm = asked.house.tanks.filter(
    (tank) => tank.minC <= brew.fermentC && brew.fermentC <= tank.maxC,
  );
  if (warm.some((tank) => tank.minFillL <= volumeL && volumeL <= tank.maxFillL)) return [];
  const most = Math.max(0, ...warm.map((tank) => tank.maxFillL));
  const least = Math.min(...warm.map((tank) => tank.minFillL));
  return [
    {
      code: 'fits-no-tank',
      field: 'volumeL',
      value: String(volumeL),
      bound: `${least} to ${most} L`,
      message: `No tank that holds ${brew.fermentC} °C takes ${sayL(volumeL)} of ${brew.brew}.`,
      remedy: `Brew between ${sayL(least)} and ${sayL(most)}, or add it as two brews.`,
    },
  ];
}

export function tankOutFact(news: News & { kind: 'tank-out' }, asked: Asked): Resolved {
  const { tank, from, to } = news;
  const refusals = unknownIn(asked, 'tank', tank);
  if (from > to) {
    refusals.push({
      code: 'days-reversed',
      field: 'to',
      value: to,
      bound: `on or after ${from}`,
      message: `${sayDay(to)} is before ${sayDay(from)}.`,
      remedy: 'Give the first day first.',
    });
  }
  if (to < asked.today) {
    refusals.push({
      code: 'in-the-past',
      field: 'to',
      value: to,
      bound: `on or after ${asked.today}`,
      message: `${sayWithYear(to, asked.today)} is past: today is ${sayDay(asked.today)}.`,
      remedy: 'Name the last day on which it cannot be used; what is past changes no plan.',
    });
  }
  refusals.push(...stillFull(news, asked));
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'tank-out', tank, from, to } };
}

/** A beer stands in the tank when it is to go out of use. */
function stillFull(news: News & { kind: 'tank-out' }, asked: Asked): Refusal[] {
  for (const { fact, no } of asked.ledger.brewed.values()) {
    if (fact.tank !== news.tank || fact.emptiedOn !== null || fact.day >= news.from) continue;
    const emptied = asked.inForce.brews.find((brew) => brew.brew === fact.brew)?.emptiedOn;
    if (emptied === undefined || emptied <= news.from) continue;
    return [
      {
        code: 'tank-taken',
        field: 'from',
        value: news.from,
        bound: `on or after ${emptied}`,
        message: `${news.tank} holds ${fact.brew} (entry ${no}), by the plan until ${sayDay(emptied)}.`,
        remedy: `Let it go out of use from ${sayDay(emptied)} on, or say that ${fact.brew} was packaged.`,
      },
    ];
  }
  return [];
}

export function dayClosedFact(news: News & { kind: 'day-closed' }, asked: Asked): Resolved {
  const { house, today } = asked;
  const { day } = news;
  const about = { field: 'day', value: day };
  if (day < today) {
    const refusal = {
      code: 'in-the-past',
      ...about,
      bound: `on or after ${today}`,
      message: `${sayWithYear(day, today)} is past: today is ${sayDay(today)}.`,
      remedy: 'Name a day from today on; what is past changes no plan.',
    };
    return { refusals: [refusal] };
  }
  const weekday = weekdayOf(day);
  const worked = [...house.brewDays, ...(house.workDays ?? []), ...(house.starterDays ?? [])];
  const idle = house.kind === 'nano' && !worked.includes(weekday);
  if (idle || (house.closed.includes(day) && !asked.ledger.closed.has(day))) {
    const refusal = {
      code: 'already-closed',
      ...about,
      message: idle
        ? `Nobody works on ${sayWithYear(day, today)} by the house's days.`
        : `${sayWithYear(day, today)} is closed already.`,
      remedy: 'There is nothing to do.',
    };
    return { refusals: [refusal] };
  }
  return { fact: { kind: 'day-closed', day } };
}
