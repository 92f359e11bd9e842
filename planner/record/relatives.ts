// The family of a jar, a harvest or a beer as a picture or a list shows it: each with its state and where it is now.
import type {
  CultureRef,
  CultureState,
  Facts,
  Family,
  FamilyMember,
  House,
  Plan,
} from '../model/index.ts';
import { CULTURE_PLACES } from '../model/index.ts';
import { listed } from '../tasks/words.ts';
import { onWatchWith, parentOf, withDescendants } from './family.ts';
import { cultureKey } from './ledger.ts';
import { capital, sayCulture } from './words.ts';

export type Present = { house: House; facts: Facts; plan: Plan; today: string };

export type Kin = Parameters<typeof parentOf>[0];

/**
 * Who shares yeast with it: all that comes of it, pitches still to come included, what it came from, and its siblings.
 * @returns null where there is no such jar, harvest or beer
 */
export function familyOf(of: CultureRef, now: Present): Family | null {
  if (!isThere(of, now)) return null;
  const kin = kinOf(now);
  const down = withDescendants(kin, of);
  const own = new Set(down.map(cultureKey));
  const parent = parentOf(kin, of);
  const above = [parent, parent === null ? null : parentOf(kin, parent)].flatMap((one) =>
    one === null ? [] : [one],
  );
  const aboveKeys = new Set(above.map(cultureKey));
  const beside = onWatchWith(kin, of).filter((one) => !aboveKeys.has(cultureKey(one)));
  const crops = beside.flatMap((one) => withDescendants(kin, one).slice(0, 2));
  const members = [
    ...down.map((one, at) => memberOf(one, at === 0 ? 'itself' : 'descendant', kin, now)),
    ...above.map((one) => memberOf(one, 'parent', kin, now)),
    ...unique(crops, own).map((one) => memberOf(one, 'sibling', kin, now)),
  ];
  const taste = members.flatMap((one) =>
    one.of.kind === 'beer' && one.state !== 'sound' && one.place !== 'planned' ? [one] : [],
  );
  return {
    of,
    members,
    taste: taste.map((one) => nameOf(one.of)),
    says: sayTaste(taste),
  };
}

const nameOf = (of: CultureRef): string => (of.kind === 'jar' ? of.jar : of.brew);

function unique(list: readonly CultureRef[], without: ReadonlySet<string>): CultureRef[] {
  const seen = new Set(without);
  return list.filter((one) => {
    const key = cultureKey(one);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Which beers to taste, and where each one is. */
export function sayTaste(taste: readonly Pick<FamilyMember, 'of' | 'place' | 'where'>[]): string {
  if (taste.length === 0) return 'No batch has to be tasted.';
  const said = taste.map(
    ({ of, place, where }) =>
      `${nameOf(of)} (${where === null ? CULTURE_PLACES[place] : `in ${where}`})`,
  );
  return `Taste ${listed(said)}.`;
}

function isThere(of: CultureRef, { house, facts, plan }: Present): boolean {
  if (of.kind === 'jar') return house.jars.some((jar) => jar.jar === of.jar);
  if (of.kind === 'beer') return plan.brews.some((brew) => brew.brew === of.brew);
  return (
    facts.harvested.some((fact) => fact.brew === of.brew) ||
    plan.harvests.some((harvest) => harvest.brew === of.brew)
  );
}

/** What was pitched from what: by the facts, and for what is still to come by the plan. */
export function kinOf({ facts, plan }: Present): Kin {
  const told = new Map(facts.brewed.map((fact) => [fact.brew, { fact, no: 0 }]));
  for (const brew of plan.brews) {
    const { source } = brew;
    if (told.has(brew.brew)) continue;
    told.set(brew.brew, {
      no: 0,
      fact: {
        brew: brew.brew,
        day: brew.day,
        tank: brew.tank,
        yeast: brew.yeast,
        source:
          source.kind === 'fresh'
            ? { kind: 'fresh', packs: source.packs, packsFromHand: source.packsFromHand }
            : source.kind === 'jar'
              ? { kind: 'jar', jar: source.jar, drawMl: source.drawMl }
              : { kind: 'harvest', brew: source.brew, drawMl: source.drawMl },
        starterLitres: brew.starter?.litres ?? 0,
        generation: brew.generation,
        pitchedB: brew.pitchedB,
        emptiedOn: null,
        state: 'sound',
      },
    });
  }
  const harvested = new Map(facts.harvested.map((fact) => [fact.brew, { fact, no: 0 }]));
  for (const harvest of plan.harvests) {
    if (harvested.has(harvest.brew)) continue;
    const settledMl = harvest.settledMl.likely;
    const fact = { brew: harvest.brew, day: harvest.day, settledMl, state: 'sound' as const };
    harvested.set(harvest.brew, { fact, no: 0 });
  }
  return { brewed: told, harvested };
}

/** One of a family, with its state and where it is now. */
export function memberOf(
  of: CultureRef,
  kin: FamilyMember['kin'],
  family: Kin,
  now: Present,
): FamilyMember {
  const state = stateOf(of, family, now);
  const { place, where } = placeOf(of, now);
  const doubt = state === 'sound' ? '' : state === 'watch' ? ', on watch' : ', suspect';
  const there = where === null ? CULTURE_PLACES[place] : `in ${where}`;
  const says = `${capital(sayCulture(of))}: ${there}${doubt}.`;
  return { of, kin, state, place, where, parent: parentOf(family, of), says };
}

/** Its own state, or suspect where anything that it comes of is. */
function stateOf(of: CultureRef, family: Kin, now: Present): CultureState {
  const own = ownState(of, now);
  let at = parentOf(family, of);
  for (let steps = 0; at !== null && own !== 'suspect' && steps < 500; steps++) {
    if (ownState(at, now) === 'suspect') return 'suspect';
    at = parentOf(family, at);
  }
  return own;
}

function ownState(of: CultureRef, { house, facts }: Present): CultureState {
  if (of.kind === 'jar') return house.jars.find((jar) => jar.jar === of.jar)?.state ?? 'sound';
  const list = of.kind === 'beer' ? facts.brewed : facts.harvested;
  return list.find((fact) => fact.brew === of.brew)?.state ?? 'sound';
}

function placeOf(
  of: CultureRef,
  { facts, plan, today }: Present,
): Pick<FamilyMember, 'place' | 'where'> {
  const at = (place: FamilyMember['place']) => ({ place, where: null });
  if (of.kind === 'jar') {
    const pitched = [...facts.brewed, ...facts.begun].some(
      ({ source }) => source.kind === 'jar' && source.jar === of.jar,
    );
    if (pitched) return at('used');
    return at(facts.goneJars.includes(of.jar) ? 'gone' : 'on-shelf');
  }
  if (of.kind === 'harvest') {
    const harvest = facts.harvested.find((fact) => fact.brew === of.brew);
    if (harvest === undefined) return at('planned');
    const drawn = facts.brewed.reduce(
      (sum, { source }) =>
        sum + (source.kind === 'harvest' && source.brew === of.brew ? source.drawMl : 0),
      0,
    );
    return at(harvest.settledMl - drawn > 0.5 ? 'on-shelf' : 'used');
  }
  const brew = plan.brews.find((one) => one.brew === of.brew);
  const fact = facts.brewed.find((one) => one.brew === of.brew);
  if (brew === undefined || fact === undefined) return at('planned');
  const emptied = fact.emptiedOn ?? brew.emptiedOn;
  if (today < emptied) return { place: 'in-tank', where: fact.tank };
  return at(today < brew.readyOn ? 'packaged' : 'finished');
}
