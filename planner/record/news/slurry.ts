// Slurry turns out otherwise than planned: lost, found, frozen, counted, suspect or sound.
import type { CultureRef, House, News, SlurryRef, YeastCount } from '../../model/index.ts';
import { abvPercent } from '../../science/index.ts';
import { sayDay } from '../../tasks/days.ts';
import type { Asked, Resolved } from '../asked.ts';
import { doubtsOf } from '../doubts.ts';
import { keptOfStarter } from '../kept-part.ts';
import { drawnMl } from '../ledger.ts';
import type { Refusal } from '../refusal.ts';
import { sayCulture } from '../words.ts';
import { harvestedFact } from './harvested.ts';
import { unknownIn, wrongRow } from './known.ts';

/** Lost before any was taken is a harvest of nothing; lost afterwards, what was not pitched is gone. */
export function harvestLostFact(news: News & { kind: 'harvest-lost' }, asked: Asked): Resolved {
  const { brew, day } = news;
  const refusals = unknownIn(asked, 'brew', brew);
  if (refusals.length > 0) return { refusals };
  const harvest = asked.ledger.harvested.get(brew);
  if (harvest === undefined) return harvestedFact({ brew, day, settledMl: 0 }, asked);
  const ml = harvest.fact.settledMl - drawnMl(asked.ledger, brew);
  if (day < harvest.fact.day) {
    refusals.push({
      code: 'before-harvest',
      field: 'day',
      value: day,
      bound: `on or after ${harvest.fact.day}`,
      message: `${brew} was harvested on ${sayDay(harvest.fact.day)} (entry ${harvest.no}); it cannot have been lost on ${sayDay(day)}.`,
      remedy: `Correct the day, or take entry ${harvest.no} back.`,
    });
  } else if (ml <= 0) {
    refusals.push({
      code: 'nothing-left',
      field: 'brew',
      value: brew,
      message: `Nothing is left of the harvest of ${brew} by what is recorded (entry ${harvest.no}).`,
      remedy: 'There is nothing to do.',
    });
  }
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'discarded', brew, ml } };
}

export function jarFoundFact(news: News & { kind: 'jar-found' }, asked: Asked): Resolved {
  const { house, today } = asked;
  const { row } = news;
  const refusals = wrongRow(house, { ...house, jars: [...house.jars, row] }, 'jars');
  for (const key of ['harvestedOn', 'measuredOn'] as const) {
    const day = row[key];
    if (day === null || day <= today) continue;
    refusals.push({
      code: 'in-the-future',
      field: `row.${key}`,
      value: day,
      bound: `on or before ${today}`,
      message: `${sayDay(day)} is still to come: today is ${sayDay(today)}.`,
      remedy: 'Correct the day on the lid.',
    });
  }
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'jar-found', row } };
}

/** A refusal if there is no such jar or brew, or if the jar was not filled by that day. */
function unknownCulture(of: CultureRef, day: string, asked: Asked): Refusal[] {
  if (of.kind !== 'jar') return unknownIn(asked, 'brew', of.brew, 'of.brew');
  const jar = asked.house.jars.find((one) => one.jar === of.jar);
  if (jar === undefined) return unknownIn(asked, 'jar', of.jar, 'of.jar');
  if (jar.harvestedOn <= day) return [];
  return [
    {
      code: 'before-harvest',
      field: 'day',
      value: day,
      bound: `on or after ${jar.harvestedOn}`,
      message: `Jar ${jar.jar} was filled on ${sayDay(jar.harvestedOn)}, after ${sayDay(day)}.`,
      remedy: 'Correct the day, or the harvest day of the jar.',
    },
  ];
}

export function frozenFact(news: News & { kind: 'frozen' }, asked: Asked): Resolved {
  const { of, day } = news;
  const refusals = unknownCulture(of, day, asked);
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'marked', of, day, as: 'frozen' } };
}

export function suspectFact(news: News & { kind: 'suspect' }, asked: Asked): Resolved {
  const { of, day } = news;
  const refusals = unknownCulture(of, day, asked);
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'marked', of, day, as: 'suspect' } };
}

export function soundFact(news: News & { kind: 'sound' }, asked: Asked): Resolved {
  const { of, day } = news;
  const refusals = unknownCulture(of, day, asked);
  if (refusals.length === 0 && isSound(of, asked)) {
    refusals.push({
      code: 'is-sound',
      field: of.kind === 'jar' ? 'of.jar' : 'of.brew',
      value: of.kind === 'jar' ? of.jar : of.brew,
      message: `Nothing is held against ${sayCulture(of)}.`,
      remedy: 'There is nothing to do.',
    });
  }
  return refusals.length > 0 ? { refusals } : { fact: { kind: 'marked', of, day, as: 'sound' } };
}

function isSound(of: CultureRef, asked: Asked): boolean {
  if (doubtsOf(asked.ledger).of(of).state !== 'sound') return false;
  if (of.kind !== 'jar') {
    const there = of.kind === 'beer' ? asked.ledger.brewed : asked.ledger.harvested;
    return there.has(of.brew);
  }
  return asked.house.jars.find((jar) => jar.jar === of.jar)?.state === 'sound';
}

export function measuredFact(news: News & { kind: 'measured' }, asked: Asked): Resolved {
  const { of, day, stained, total, viability, millionPerMl } = news;
  const refusals = unknownCulture(of, day, asked);
  const say = (field: string, value: unknown, bound: string, message: string, remedy: string) =>
    refusals.push({
      code: 'count-makes-no-sense',
      field,
      value: value === null ? null : String(value),
      bound,
      message,
      remedy,
    });
  if ((stained === null) !== (total === null)) {
    const field = stained === null ? 'stained' : 'total';
    say(
      field,
      null,
      'a number',
      `Stained and total go together: ${field} is missing.`,
      'Give both.',
    );
  } else if (stained !== null && total !== null && stained > total) {
    say(
      'stained',
      stained,
      `at most ${total}`,
      `${stained} of ${total} cells cannot be stained.`,
      'Exchange the two, or correct one of them.',
    );
  } else if (stained !== null && viability !== null) {
    say(
      'viability',
      viability,
      'nothing, or no counts',
      'Both the share alive and the counts are given.',
      'Give the counts alone: the share is worked out from them.',
    );
  } else if (stained === null && viability === null && millionPerMl === null) {
    say(
      'total',
      null,
      'a count',
      'Neither a share alive nor cells per mL are given.',
      'Give stained and total, or viability, or millionPerMl.',
    );
  }
  if (refusals.length > 0) return { refusals };
  const alive = stained !== null && total !== null ? 1 - stained / total : viability;
  return {
    fact: {
      kind: 'measured',
      of,
      day,
      viability: alive,
      densityBPerMl: millionPerMl === null ? null : millionPerMl / 1000,
      count: countOf(of, news, asked),
    },
  };
}

/** The same count for what the house learns about the strain; null where there is nothing to learn from it. */
function countOf(
  of: SlurryRef,
  news: News & { kind: 'measured' },
  asked: Asked,
): YeastCount | null {
  const { day: countedOn, stained, total, millionPerMl } = news;
  const about = of.kind === 'jar' ? ofJar(of.jar, asked.house) : ofHarvest(of.brew, asked);
  if (about === null || (total === null && millionPerMl === null)) return null;
  return { countedOn, stained, total, millionPerMl, ...about };
}

type About = Pick<YeastCount, 'yeast' | 'harvestedOn' | 'sourceAbv' | 'generation'>;

function ofJar(name: string, house: House): About | null {
  const jar = house.jars.find((one) => one.jar === name);
  if (jar === undefined) return null;
  const { yeast, harvestedOn, generation } = jar;
  return { yeast, harvestedOn, generation, sourceAbv: null };
}

function ofHarvest(name: string, asked: Asked): About | null {
  const brewed = asked.ledger.brewed.get(name)?.fact;
  const harvest = asked.ledger.harvested.get(name)?.fact;
  const brew = asked.house.brews.find((one) => one.brew === name);
  if (brewed === undefined || harvest === undefined || brew === undefined) return null;
  // a part of a starter never lay on a beer: it says nothing about the strain's harvests
  if (keptOfStarter(asked.ledger, name)) return null;
  return {
    yeast: brewed.yeast,
    harvestedOn: harvest.day,
    generation: Math.min(100, brewed.generation + 1),
    sourceAbv: Math.min(25, Math.max(0, abvPercent(brew.og, Math.min(brew.fg, brew.og)))),
  };
}
