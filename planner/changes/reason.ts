// Why a brew changed between two plans, in words: taken from what the plans say, never remembered from the search.
import {
  type Facts,
  type Finding,
  type House,
  money,
  NO_FACTS,
  type Plan,
  type PlannedBrew,
  resolveSettings,
} from '../model/index.ts';
import { daysBetween, sayDay } from '../tasks/days.ts';
import { asSentence, counted, sayMl } from '../tasks/words.ts';

/** What came between the two plans, as far as it is known. */
export type Since = {
  /** All that has happened by now. */
  facts?: Facts;
  /** What the old plan breaks once the news is applied and nothing else moved, in the rules' own words. */
  broken?: readonly Finding[];
  /** By brew: what putting it alone back to its old day, tank and yeast would break in the new plan. */
  forced?: ReadonlyMap<string, Finding>;
};

/** A reason, and the brew whose own change is behind it. */
export type Reason = { says: string; of: string | null };

/** Both plans, looked up by brew, and what came between them. */
export type Pair = {
  before: Plan;
  after: Plan;
  facts: Facts;
  broken: readonly Finding[];
  forced: ReadonlyMap<string, Finding>;
  /** The house's storage limit for slurry. */
  maxStorageDays: number;
  was(brew: string): PlannedBrew | undefined;
  now(brew: string): PlannedBrew | undefined;
};

export function pairOf(before: Plan, after: Plan, house: House, since: Since = {}): Pair {
  const was = new Map(before.brews.map((brew) => [brew.brew, brew]));
  const now = new Map(after.brews.map((brew) => [brew.brew, brew]));
  return {
    before,
    after,
    facts: since.facts ?? NO_FACTS,
    broken: since.broken ?? before.broken,
    forced: since.forced ?? new Map(),
    maxStorageDays: resolveSettings(house.kind, house.rules).maxStorageDays,
    was: (name) => was.get(name),
    now: (name) => now.get(name),
  };
}

/** A finding of the old plan about this brew, its tank or its yeast: what forced the change, in the rule's own words. */
function forcedBy(brew: PlannedBrew, pair: Pair): Reason | null {
  const own = pair.broken.find((finding) => finding.subject === brew.brew);
  const { source } = brew;
  const subject =
    source.kind === 'jar' ? source.jar : source.kind === 'harvest' ? source.brew : brew.tank;
  const found = own ?? pair.broken.find((finding) => finding.subject === subject);
  return found === undefined ? null : alone(found.says);
}

/** What putting it back alone would break now. */
function wouldBreak(brew: PlannedBrew, pair: Pair): Reason | null {
  const finding = pair.forced.get(brew.brew);
  return finding === undefined ? null : alone(`Left as it was: ${finding.says}`);
}

/** A reason that rests on no other brew's change. */
const alone = (says: string): Reason => ({ says, of: null });

function brewedThen(now: PlannedBrew): Reason | null {
  return now.done ? alone(`It was brewed on ${sayDay(now.day)}.`) : null;
}

/** It was told that it slipped, and the old day is too early now. */
function slipped(was: PlannedBrew, pair: Pair): Reason | null {
  const told = pair.facts.notBefore.find((one) => one.brew === was.brew);
  return told === undefined || told.day <= was.day
    ? null
    : alone(`It slipped: not before ${sayDay(told.day)}.`);
}

function pinnedTo(now: PlannedBrew, what: 'day' | 'tank' | 'source'): Reason | null {
  const held = now.pins?.[what] ?? null;
  if (held === null) return null;
  if (what === 'day') return alone(`It is pinned to ${sayDay(now.day)}.`);
  return alone(what === 'tank' ? `It is pinned to ${now.tank}.` : 'Its yeast is pinned.');
}

/** The yeast of the old plan comes later now, or there is less of it than the old plan would draw. */
function yeastReason(was: PlannedBrew, pair: Pair): Reason | null {
  const { source } = was;
  if (source.kind === 'jar') return jarReason(source.jar, was, pair);
  if (source.kind === 'fresh') return null;
  const { brew: parent } = source;
  const of = (says: string): Reason => ({ says, of: parent });
  if (pair.now(parent) === undefined) {
    return of(`${parent}, out of which its yeast came, is left out now.`);
  }
  const state = stateOf(parent, pair);
  if (state !== 'sound') {
    return alone(`The yeast of ${parent} is ${state === 'watch' ? 'on watch' : 'suspect'}.`);
  }
  const harvest = pair.after.harvests.find((one) => one.brew === parent);
  if (harvest === undefined) {
    return pair.facts.harvested.some((one) => one.brew === parent)
      ? alone(`Nothing is left of the harvest of ${parent}.`)
      : null;
  }
  if (harvest.usableFrom > was.day) {
    return of(
      `The yeast of ${parent} can be pitched from ${sayDay(harvest.usableFrom)} now, too late for ${sayDay(was.day)}.`,
    );
  }
  const old = pair.before.harvests.find((one) => one.brew === parent);
  const drawn = old?.jars.reduce((sum, jar) => sum + (jar.for === null ? 0 : jar.ml), 0) ?? 0;
  const have = harvest.settledMl.likely;
  if (have + 0.5 >= drawn) return null;
  return alone(
    `The harvest of ${parent} holds ${sayMl(have)}, and ${sayMl(drawn)} were to be drawn from it.`,
  );
}

function jarReason(name: string, was: PlannedBrew, pair: Pair): Reason | null {
  const jar = pair.after.shelf.find((one) => one.jar === name);
  if (jar === undefined || pair.facts.goneJars.includes(name)) return alone(`Jar ${name} is gone.`);
  if (jar.state !== 'sound') {
    return alone(`Jar ${name} is ${jar.state === 'watch' ? 'on watch' : 'suspect'}.`);
  }
  return jar.usedFor !== null && jar.usedFor !== was.brew
    ? { says: `Jar ${name} goes into ${jar.usedFor} now.`, of: jar.usedFor }
    : null;
}

/** Of what comes out of a brew, as it was told. */
function stateOf(brew: string, { facts }: Pair): 'sound' | 'watch' | 'suspect' {
  const told = [...facts.brewed, ...facts.harvested].filter((fact) => fact.brew === brew);
  const bad =
    told.find((fact) => fact.state === 'suspect') ?? told.find((fact) => fact.state === 'watch');
  return bad?.state ?? 'sound';
}

/** Another beer stands in the old tank on the old day now. */
function tankReason(was: PlannedBrew, pair: Pair): Reason | null {
  const other = pair.after.brews.find(
    (one) =>
      one.brew !== was.brew &&
      one.tank === was.tank &&
      one.day <= was.day &&
      one.tankFreeOn > was.day,
  );
  return other === undefined
    ? null
    : {
        says: `${was.tank} is taken by ${other.brew} until ${sayDay(other.tankFreeOn)}.`,
        of: other.brew,
      };
}

/** Another beer is brewed on the old day now. */
function kettleReason(was: PlannedBrew, pair: Pair): Reason | null {
  const other = pair.after.brews.find(
    (one) => one.brew !== was.brew && one.day === was.day && pair.was(one.brew)?.day !== was.day,
  );
  return other === undefined
    ? null
    : { says: `${other.brew} is brewed on ${sayDay(was.day)} now.`, of: other.brew };
}

/** Its yeast comes on another day now, and the brew goes with it. */
function followsYeast(was: PlannedBrew, now: PlannedBrew, pair: Pair): Reason | null {
  if (now.source.kind !== 'harvest') return null;
  const parent = now.source.brew;
  const then = pair.before.harvests.find((one) => one.brew === parent)?.day;
  const there = now.source.harvestedOn;
  if (then === undefined || then === there || was.source.kind !== 'harvest') return null;
  return {
    says: `Its yeast comes out of ${parent}, harvested on ${sayDay(there)} instead of ${sayDay(then)}.`,
    of: parent,
  };
}

/** Where nothing forced it: what the brewer gains. */
function gain(was: PlannedBrew, now: PlannedBrew, pair: Pair): string {
  const early = was.daysLate - now.daysLate;
  if (early > 0) return `It is ready ${counted(early, 'day')} less late.`;
  const { before, after } = pair;
  if (after.leftOut.length < before.leftOut.length) {
    return 'So that another brew, left out before, finds room.';
  }
  const saved = before.totals.costMinor - after.totals.costMinor;
  if (after.totals.hard < before.totals.hard || saved <= 0) {
    return 'It makes room for another brew of the season.';
  }
  return `With the changes together the rest of the season costs ${money(saved, after)} less.`;
}

type Found = Reason | null;

/** Every reason that fits, the weightiest first; the last is what the change gains, which rests on nothing else. */
const listed = (gained: string, ...found: readonly Found[]): Reason[] =>
  [...found, alone(gained)].flatMap((reason) =>
    reason === null ? [] : [{ ...reason, says: asSentence(reason.says) }],
  );

export function dayReasons(was: PlannedBrew, now: PlannedBrew, pair: Pair): Reason[] {
  return listed(
    gain(was, now, pair),
    brewedThen(now),
    slipped(was, pair),
    pinnedTo(now, 'day'),
    forcedBy(was, pair),
    yeastReason(was, pair),
    now.day > was.day ? tankReason(was, pair) : null,
    kettleReason(was, pair),
    followsYeast(was, now, pair),
    wouldBreak(was, pair),
  );
}

export function tankReasons(was: PlannedBrew, now: PlannedBrew, pair: Pair): Reason[] {
  const moved: PlannedBrew = { ...was, day: now.day };
  return listed(
    gain(was, now, pair),
    now.done ? alone(`It was brewed into ${now.tank}.`) : null,
    pinnedTo(now, 'tank'),
    tankReason(moved, pair),
    forcedBy(was, pair),
    wouldBreak(was, pair),
  );
}

export function sourceReasons(was: PlannedBrew, now: PlannedBrew, pair: Pair): Reason[] {
  return listed(
    gain(was, now, pair),
    now.done ? alone('That is what was pitched.') : null,
    pinnedTo(now, 'source'),
    yeastReason(now.day === was.day ? was : { ...was, day: now.day }, pair),
    forcedBy(was, pair),
    tooOld(was, now, pair),
    wouldBreak(was, pair),
    now.why[0] === undefined ? null : alone(now.why[0]),
  );
}

/** On its new day the old yeast would be past the house's storage limit. */
function tooOld(was: PlannedBrew, now: PlannedBrew, pair: Pair): Reason | null {
  if (was.source.kind === 'fresh' || now.day <= was.day) return null;
  const age = was.source.ageDays + daysBetween(was.day, now.day);
  return age <= pair.maxStorageDays
    ? null
    : alone(
        `On ${sayDay(now.day)} the yeast it was to have would be ${counted(age, 'day')} old, and ${pair.maxStorageDays} is the limit.`,
      );
}

/** Days since the harvest, or since the oldest pack was made. */
function yeastAge(brew: PlannedBrew): number {
  return brew.source.kind === 'fresh' ? brew.source.packAgeDays : brew.source.ageDays;
}

export function amountReason(was: PlannedBrew, now: PlannedBrew): string {
  if (now.done) return 'That is what was pitched.';
  if (was.starter !== null && now.starter === null) return 'It is pitched without a starter now.';
  if (was.starter === null && now.starter !== null) return 'A starter grows what is missing.';
  if (now.starter?.litres !== was.starter?.litres) return 'The starter is of another size.';
  const days = yeastAge(now) - yeastAge(was);
  const older = `${counted(Math.abs(days), 'day')} ${days > 0 ? 'older' : 'younger'}`;
  if (days > 0) return `The yeast is ${older} when it is pitched, so more of it is dead.`;
  if (days < 0) return `The yeast is ${older} when it is pitched, so more of it is alive.`;
  return 'The yeast is predicted to be otherwise than before.';
}

export function droppedReason(was: PlannedBrew, pair: Pair): string {
  const out = pair.after.leftOut.find((one) => one.brew === was.brew);
  if (out === undefined) return 'The season no longer has it.';
  const blocked = out.blockedBy[0]?.says;
  return [blocked, out.wayOut].flatMap((text) => (text ? [asSentence(text)] : [])).join(' ');
}

export function addedReason(now: PlannedBrew, pair: Pair): string {
  const out = pair.before.leftOut.some((one) => one.brew === now.brew);
  return out ? 'There is room for it now.' : 'It is new in the season.';
}
