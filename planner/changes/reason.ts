// Why a brew changed between two plans, in words: taken from what the plans say, never remembered from the search.
import {
  type Facts,
  type Finding,
  type House,
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
};

/** Both plans, looked up by brew, and what came between them. */
export type Pair = {
  before: Plan;
  after: Plan;
  facts: Facts;
  broken: readonly Finding[];
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
    maxStorageDays: resolveSettings(house.kind, house.rules).maxStorageDays,
    was: (name) => was.get(name),
    now: (name) => now.get(name),
  };
}

/** A finding of the old plan about this brew, its tank or its yeast: what forced the change, in the rule's own words. */
export function forcedBy(brew: PlannedBrew, pair: Pair): string | null {
  const own = pair.broken.find((finding) => finding.subject === brew.brew);
  if (own !== undefined) return own.says;
  const { source } = brew;
  const subject =
    source.kind === 'jar' ? source.jar : source.kind === 'harvest' ? source.brew : brew.tank;
  return pair.broken.find((finding) => finding.subject === subject)?.says ?? null;
}

function brewedThen(now: PlannedBrew): string | null {
  return now.done ? `It was brewed on ${sayDay(now.day)}.` : null;
}

/** It was told that it slipped, and the old day is too early now. */
function slipped(was: PlannedBrew, pair: Pair): string | null {
  const told = pair.facts.notBefore.find((one) => one.brew === was.brew);
  return told === undefined || told.day <= was.day
    ? null
    : `It slipped: not before ${sayDay(told.day)}.`;
}

function pinnedTo(now: PlannedBrew, what: 'day' | 'tank' | 'source'): string | null {
  const held = now.pins?.[what] ?? null;
  if (held === null) return null;
  if (what === 'day') return `It is pinned to ${sayDay(now.day)}.`;
  return what === 'tank' ? `It is pinned to ${now.tank}.` : 'Its yeast is pinned.';
}

/** The yeast of the old plan comes later now, or there is less of it than the old plan would draw. */
export function yeastReason(was: PlannedBrew, pair: Pair): string | null {
  const { source } = was;
  if (source.kind === 'jar') {
    const jar = pair.after.shelf.find((one) => one.jar === source.jar);
    if (jar === undefined || pair.facts.goneJars.includes(source.jar))
      return `Jar ${source.jar} is gone.`;
    if (jar.state !== 'sound')
      return `Jar ${source.jar} is ${jar.state === 'watch' ? 'on watch' : 'suspect'}.`;
    return jar.usedFor !== null && jar.usedFor !== was.brew
      ? `Jar ${source.jar} goes into ${jar.usedFor} now.`
      : null;
  }
  if (source.kind === 'fresh') return null;
  const parent = pair.now(source.brew);
  if (parent === undefined) return `${source.brew}, out of which its yeast came, is left out now.`;
  const harvest = pair.after.harvests.find((one) => one.brew === source.brew);
  if (harvest === undefined) return `Nothing is harvested from ${source.brew} now.`;
  if (harvest.usableFrom > was.day) {
    return `The yeast of ${source.brew} can be pitched from ${sayDay(harvest.usableFrom)} now, too late for ${sayDay(was.day)}.`;
  }
  const old = pair.before.harvests.find((one) => one.brew === source.brew);
  const drawn = old?.jars.reduce((sum, jar) => sum + (jar.for === null ? 0 : jar.ml), 0) ?? 0;
  const have = harvest.settledMl.likely;
  if (have + 0.5 < drawn) {
    return `The harvest of ${source.brew} holds ${sayMl(have)}, and ${sayMl(drawn)} were to be drawn from it.`;
  }
  return null;
}

/** Another beer stands in the old tank on the old day now. */
function tankReason(was: PlannedBrew, pair: Pair): string | null {
  const other = pair.after.brews.find(
    (one) =>
      one.brew !== was.brew &&
      one.tank === was.tank &&
      one.day <= was.day &&
      one.tankFreeOn > was.day,
  );
  return other === undefined
    ? null
    : `${was.tank} is taken by ${other.brew} until ${sayDay(other.tankFreeOn)}.`;
}

/** Another beer is brewed on the old day now. */
function kettleReason(was: PlannedBrew, pair: Pair): string | null {
  const other = pair.after.brews.find(
    (one) => one.brew !== was.brew && one.day === was.day && pair.was(one.brew)?.day !== was.day,
  );
  return other === undefined ? null : `${other.brew} is brewed on ${sayDay(was.day)} now.`;
}

/** Its yeast comes on another day now, and the brew goes with it. */
function followsYeast(was: PlannedBrew, now: PlannedBrew, pair: Pair): string | null {
  if (now.source.kind !== 'harvest') return null;
  const parent = now.source.brew;
  const then = pair.before.harvests.find((one) => one.brew === parent)?.day;
  const there = now.source.harvestedOn;
  if (then === undefined || then === there || was.source.kind !== 'harvest') return null;
  return `Its yeast comes out of ${parent}, harvested on ${sayDay(there)} instead of ${sayDay(then)}.`;
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
  const amount = (saved / Math.max(1, after.minorPerMajor)).toFixed(2);
  return `With the changes together the rest of the season costs ${amount} ${after.currency} less.`;
}

const first = (...reasons: (string | null)[]): string | null =>
  reasons.find((reason) => reason !== null) ?? null;

export function dayReason(was: PlannedBrew, now: PlannedBrew, pair: Pair): string {
  const found = first(
    brewedThen(now),
    slipped(was, pair),
    pinnedTo(now, 'day'),
    forcedBy(was, pair),
    yeastReason(was, pair),
    now.day > was.day ? tankReason(was, pair) : null,
    kettleReason(was, pair),
    followsYeast(was, now, pair),
  );
  return asSentence(found ?? gain(was, now, pair));
}

export function tankChangeReason(was: PlannedBrew, now: PlannedBrew, pair: Pair): string {
  const moved: PlannedBrew = { ...was, day: now.day };
  const found = first(
    now.done ? `It was brewed into ${now.tank}.` : null,
    pinnedTo(now, 'tank'),
    tankReason(moved, pair),
    forcedBy(was, pair),
  );
  return asSentence(found ?? gain(was, now, pair));
}

export function sourceReason(was: PlannedBrew, now: PlannedBrew, pair: Pair): string {
  const found = first(
    now.done ? 'That is what was pitched.' : null,
    pinnedTo(now, 'source'),
    yeastReason(now.day === was.day ? was : { ...was, day: now.day }, pair),
    forcedBy(was, pair),
    tooOld(was, now, pair),
    now.why[0] ?? null,
  );
  return asSentence(found ?? gain(was, now, pair));
}

/** On its new day the old yeast would be past the house's storage limit. */
function tooOld(was: PlannedBrew, now: PlannedBrew, pair: Pair): string | null {
  if (was.source.kind === 'fresh' || now.day <= was.day) return null;
  const age = was.source.ageDays + daysBetween(was.day, now.day);
  return age <= pair.maxStorageDays
    ? null
    : `On ${sayDay(now.day)} the yeast it was to have would be ${counted(age, 'day')} old, and ${pair.maxStorageDays} is the limit.`;
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
