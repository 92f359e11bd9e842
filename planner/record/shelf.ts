// What stands in the cold now and what is to come, jar by jar, from the plan in force and all that was told since.
import {
  type Culture,
  type CultureRef,
  type IsoDay,
  type PlannedHarvest,
  type Range,
  resolveSettings,
  type Shelf,
  type StandingJar,
} from '../model/index.ts';
import { type CodedJar, codedJars, compareText } from '../tasks/context.ts';
import { daysBetween, plusDays } from '../tasks/days.ts';
import { type JarCoder, jarCoder } from '../tasks/jar-codes.ts';
import { cultureKey } from './ledger.ts';
import { standingPacks } from './packs-now.ts';
import { kinOf, memberOf, type Present, sayTaste } from './relatives.ts';

/** A rest up to this share of a harvest stays in the jars that are drawn. Common practice, no source. */
const REST_SHARE = 0.05;

/** The shelf on the day it is looked at. */
export function shelfOf(now: Present): Shelf {
  const cultures = culturesOf(now);
  const byKey = new Map(cultures.map((one) => [cultureKey(one.of), one]));
  const coder = jarCoder(
    now.house,
    now.plan.harvests.map(({ brew }) => brew),
  );
  const taken = new Map(now.facts.harvested.map((fact) => [fact.brew, fact]));
  const harvests = now.plan.harvests;
  const standing = [
    ...listedJars(now, byKey),
    ...harvests.flatMap((one) => (taken.has(one.brew) ? jarsLeft(one, now, byKey, coder) : [])),
  ];
  const toCome = harvests.flatMap((one) =>
    taken.has(one.brew)
      ? []
      : codedJars(one, coder).map((jar) => jarOf(jar, one, now, byKey, one.settledMl.likely)),
  );
  const tasted = cultures.filter(
    ({ of, state, place }) => of.kind === 'beer' && state !== 'sound' && place !== 'planned',
  );
  return {
    today: now.today,
    jars: standing.sort((a, b) => compareText(a.leavesOn ?? a.useBy, b.leavesOn ?? b.useBy)),
    toCome: toCome.sort((a, b) => compareText(a.filledOn, b.filledOn)),
    packs: standingPacks(now),
    cultures,
    taste: tasted.map(({ of }) => (of.kind === 'jar' ? of.jar : of.brew)),
    says: sayTaste(tasted),
  };
}

type About = Pick<Culture, 'yeast' | 'generation' | 'day'>;

/** Every jar of the list, every beer of the plan and every harvest, taken or to come. */
function culturesOf(now: Present): Culture[] {
  const kin = kinOf(now);
  const of = (ref: CultureRef, more: About): Culture => {
    const { kin: _kin, ...member } = memberOf(ref, 'itself', kin, now);
    return { ...member, ...more };
  };
  const beers = new Map(now.plan.brews.map((brew) => [brew.brew, brew]));
  const harvests = new Map<string, About>(now.plan.harvests.map((one) => [one.brew, one]));
  for (const { brew, day } of now.facts.harvested) {
    const beer = beers.get(brew);
    // told since the plan was made, or of a beer that the plan takes nothing from
    const about =
      harvests.get(brew) ??
      (beer && { ...beer, generation: beer.generation + (day <= beer.day ? 0 : 1) });
    if (about !== undefined) harvests.set(brew, { ...about, day });
  }
  return [
    ...now.house.jars.map((jar) => {
      const { yeast, generation, harvestedOn } = jar;
      return of({ kind: 'jar', jar: jar.jar }, { yeast, generation, day: harvestedOn });
    }),
    ...now.plan.brews.map(({ brew, yeast, generation, day }) =>
      of({ kind: 'beer', brew }, { yeast, generation, day }),
    ),
    ...[...harvests].map(([brew, { yeast, generation, day }]) =>
      of({ kind: 'harvest', brew }, { yeast, generation, day }),
    ),
  ];
}

type Known = ReadonlyMap<string, Culture>;

/** Jars of the house's own list, those found since included. */
function listedJars(now: Present, known: Known): StandingJar[] {
  const { plan, house } = now;
  const { maxStorageDays } = resolveSettings(house.kind, house.rules);
  return house.jars.flatMap((row): StandingJar[] => {
    const of = { kind: 'jar' as const, jar: row.jar };
    const culture = known.get(cultureKey(of));
    if (culture?.place !== 'on-shelf') return [];
    const planned = plan.shelf.find((one) => one.jar === row.jar);
    const beer = plan.brews.find((one) => one.brew === planned?.usedFor);
    const points: Point[] = [
      ...(planned ? [{ on: plan.today, share: planned.viabilityToday }] : []),
      ...(planned && beer ? [{ on: planned.leavesOn, share: beer.viability }] : []),
    ];
    return [
      {
        code: row.jar,
        of,
        yeast: row.yeast,
        generation: row.generation,
        from: null,
        filledOn: row.harvestedOn,
        ml: row.settledMl,
        cellsB: planned?.cellsB ?? null,
        alive: aliveOn(now.today, points),
        for: planned?.usedFor ?? null,
        kept: planned?.kept ?? false,
        leavesOn: planned?.leavesOn ?? null,
        aliveThen: beer?.viability ?? null,
        useBy: planned?.discardBy ?? plusDays(row.harvestedOn, maxStorageDays),
        state: culture.state,
        inPlan: planned !== undefined,
      },
    ];
  });
}

/** What is left of a harvest that was taken: the jars of brews to come, spare ones, and what nobody wants. */
function jarsLeft(
  harvest: PlannedHarvest,
  now: Present,
  known: Known,
  coder: JarCoder,
): StandingJar[] {
  const fact = now.facts.harvested.find(({ brew }) => brew === harvest.brew);
  if (fact === undefined) return [];
  const drawnFor = new Map(
    [...now.facts.brewed, ...now.facts.begun].flatMap(({ brew, source }) =>
      source.kind === 'harvest' && source.brew === harvest.brew ? [[brew, source.drawMl]] : [],
    ),
  );
  const left = fact.settledMl - [...drawnFor.values()].reduce((sum, ml) => sum + ml, 0);
  const jars = codedJars(harvest, coder)
    .filter((jar) => jar.for === null || !drawnFor.has(jar.for))
    .map((jar) => jarOf(jar, harvest, now, known, fact.settledMl));
  const rest = left - jars.reduce((sum, jar) => sum + jar.ml, 0);
  if (left <= 0.5) return [];
  if (rest <= REST_SHARE * fact.settledMl) return jars;
  const over = { ml: rest, for: null, leavesOn: harvest.discardBy, spare: false };
  const code = coder.beer(harvest.brew);
  return [
    ...jars,
    { ...jarOf({ ...over, code }, harvest, now, known, fact.settledMl), inPlan: false },
  ];
}

/** @param ofMl mL of the whole harvest, to share its cells out */
function jarOf(
  jar: CodedJar,
  harvest: PlannedHarvest,
  now: Present,
  known: Known,
  ofMl: number,
): StandingJar {
  const of = { kind: 'harvest' as const, brew: harvest.brew };
  const culture = known.get(cultureKey(of));
  const beer = now.plan.brews.find((one) => one.brew === jar.for);
  const planned = culture?.place === 'planned';
  const filledOn = culture?.day ?? harvest.day;
  const points: Point[] = [
    { on: filledOn, share: harvest.cropViability },
    ...(harvest.viabilityToday && now.plan.today > filledOn
      ? [{ on: now.plan.today, share: harvest.viabilityToday }]
      : []),
    ...(beer && jar.leavesOn > filledOn ? [{ on: jar.leavesOn, share: beer.viability }] : []),
  ];
  return {
    code: jar.code,
    of,
    yeast: harvest.yeast,
    generation: harvest.generation,
    from: harvest.brew,
    ...(harvest.ofStarter ? { ofStarter: true as const } : {}),
    filledOn,
    ml: jar.ml,
    cellsB: ofMl > 0 ? (harvest.cellsB * jar.ml) / ofMl : null,
    alive: planned ? null : aliveOn(now.today, points),
    for: jar.for,
    kept: jar.spare,
    ...(jar.untilPassed === undefined ? {} : { untilPassed: jar.untilPassed }),
    leavesOn: jar.leavesOn,
    aliveThen: beer?.viability ?? null,
    useBy: harvest.discardBy,
    state: culture?.state ?? 'sound',
    inPlan: true,
  };
}

type Point = { on: IsoDay; share: Range };

/**
 * Share alive on a day between two days for which the plan says it: first-order loss is a straight line of the
 * logarithm. With one such day alone, that day's share and that day.
 */
function aliveOn(day: IsoDay, points: readonly Point[]): StandingJar['alive'] {
  const first = points[0];
  if (first === undefined) return null;
  const at = points.findIndex(({ on }) => on >= day);
  const after = points[at];
  const before = points[at - 1];
  if (after?.on === day) return { on: day, share: after.share };
  if (before === undefined || after === undefined) {
    const known = at < 0 ? (points.at(-1) ?? first) : first;
    return { on: known.on, share: known.share };
  }
  const part = daysBetween(before.on, day) / daysBetween(before.on, after.on);
  const between = (key: keyof Range) =>
    before.share[key] * (after.share[key] / Math.max(before.share[key], 1e-12)) ** part;
  const share = { low: between('low'), likely: between('likely'), high: between('high') };
  return { on: day, share };
}
