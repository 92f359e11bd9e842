// A brew was brewed: which yeast went in is taken from the plan in force, scaled to the mL that were poured.
import type { BrewedFact, News, PitchSource, PlannedBrew } from '../../model/index.ts';
import { sayDay } from '../../tasks/days.ts';
import { asTold } from '../../tasks/steady.ts';
import type { Asked, Resolved } from '../asked.ts';
import type { Refusal } from '../refusal.ts';
import { unknownIn } from './known.ts';

type Brewed = Pick<News & { kind: 'brewed' }, 'brew' | 'day' | 'tank' | 'drawnMl'>;

export function brewedFact(news: Brewed, asked: Asked): Resolved {
  const { house, inForce, ledger } = asked;
  const refusals = unknownIn(asked, 'brew', news.brew);
  if (news.tank !== null) refusals.push(...unknownIn(asked, 'tank', news.tank));
  if (news.day < house.from) refusals.push(beforeTheSeason(news, asked));
  const planned = asTold(inForce).brews.find((brew) => brew.brew === news.brew);
  if (planned === undefined) {
    if (refusals.length === 0) refusals.push(notPlanned(news));
    return { refusals };
  }
  if (news.drawnMl !== null && planned.source.kind === 'fresh') {
    refusals.push({
      code: 'packs-have-no-ml',
      field: 'drawnMl',
      value: String(news.drawnMl),
      bound: 'nothing',
      message: `${news.brew} is pitched from fresh packs, not from slurry.`,
      remedy:
        'Leave the mL out. If slurry was pitched, plan the brew with that jar first and then say that it was brewed.',
    });
  }
  const tank = news.tank ?? planned.tank;
  if (!ledger.brewed.has(news.brew)) refusals.push(...stillFull(tank, news, asked));
  refusals.push(...jarTooYoung(planned, news));
  if (refusals.length > 0) return { refusals };
  return { fact: { kind: 'brewed', brewed: asBrewed(planned, tank, news) } };
}

function asBrewed(planned: PlannedBrew, tank: string, news: Brewed): BrewedFact {
  const { source } = planned;
  const plannedMl = source.kind === 'fresh' ? 0 : source.drawMl;
  const share = news.drawnMl === null || plannedMl === 0 ? 1 : news.drawnMl / plannedMl;
  return {
    brew: news.brew,
    day: news.day,
    tank,
    yeast: planned.yeast,
    source: pitchSource(planned, share),
    starterLitres: planned.starter?.litres ?? 0,
    generation: planned.generation,
    pitchedB: pitchedCells(planned, share),
    emptiedOn: null,
    state: 'sound',
  };
}

export function pitchSource(planned: PlannedBrew, share: number): PitchSource {
  const { source } = planned;
  switch (source.kind) {
    case 'fresh':
      return { kind: 'fresh', packs: source.packs, packsFromHand: source.packsFromHand };
    case 'jar':
      return { kind: 'jar', jar: source.jar, drawMl: source.drawMl * share };
    case 'harvest':
      return { kind: 'harvest', brew: source.brew, drawMl: source.drawMl * share };
  }
}

/** Half the slurry brings half the cells; with a starter only what it was begun with is scaled, not its growth. */
function pitchedCells(planned: PlannedBrew, share: number): number {
  if (planned.starter === null) return planned.pitchedB * share;
  return Math.max(0, planned.pitchedB + (share - 1) * planned.starter.initialB);
}

function beforeTheSeason(news: Brewed, asked: Asked): Refusal {
  return {
    code: 'before-the-season',
    field: 'day',
    value: news.day,
    bound: `on or after ${asked.house.from}`,
    message: `${sayDay(news.day)} ${news.day.slice(0, 4)} lies before the season, which begins on ${sayDay(asked.house.from)} ${asked.house.from.slice(0, 4)}.`,
    remedy: 'Correct the day, or let the season begin earlier.',
  };
}

function notPlanned(news: Brewed): Refusal {
  return {
    code: 'not-on-the-plan',
    field: 'brew',
    value: news.brew,
    message: `${news.brew} is left out of the plan in force, so it is not known which yeast went into it.`,
    remedy: `Pin ${news.brew} to its day and tank, adopt the plan made anew, then say that it was brewed.`,
  };
}

/** Another beer is in this tank by the record, and nobody has said that it was packaged. */
function stillFull(tank: string, news: Brewed, asked: Asked): Refusal[] {
  for (const { fact, no } of asked.ledger.brewed.values()) {
    if (fact.tank !== tank || fact.emptiedOn !== null || fact.day > news.day) continue;
    const emptied = asked.inForce.brews.find((brew) => brew.brew === fact.brew)?.emptiedOn;
    if (emptied === undefined || emptied <= news.day) continue;
    return [
      {
        code: 'tank-taken',
        field: 'tank',
        value: tank,
        message: `${tank} holds ${fact.brew} (entry ${no}), by the plan until ${sayDay(emptied)}.`,
        remedy: `Say that ${fact.brew} was packaged, name another tank, or correct the day.`,
      },
    ];
  }
  return [];
}

function jarTooYoung(planned: PlannedBrew, news: Brewed): Refusal[] {
  const { source } = planned;
  if (source.kind !== 'jar' || source.harvestedOn <= news.day) return [];
  return [
    {
      code: 'before-harvest',
      field: 'day',
      value: news.day,
      bound: `on or after ${source.harvestedOn}`,
      message: `Jar ${source.jar} for ${news.brew} was filled on ${sayDay(source.harvestedOn)}, after ${sayDay(news.day)}.`,
      remedy: 'Correct the day, or the harvest day of the jar.',
    },
  ];
}
