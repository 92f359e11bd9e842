// The whole sum of a plan, line by line of docs/planner.md, from what a Season has worked out.
import type { House, Plan } from '../../../planner/index.ts';
import { dayOf, givenBy, plato, Season, up, type Worked } from './season.ts';

type Beer = { p: number; ebc: number; ibu: number };

const FADES = /\b(ipa|pale ale|weissbier|weizen|hefe|wit|witbier|blonde|session|hazy)\b/i;
const KEEPS = /\b(weizenbock|dark|imperial|smoked)\b/i;

/** Minor units by rule. `inForce`: the plan in force when it was made, for what a re-plan costs. */
export function costByRule(house: House, plan: Plan, inForce: Plan | null): Map<string, number> {
  const x = new Season(house, plan);
  const { s, w } = x;
  const out = new Map<string, number>();
  const add = (rule: string, minor: number) => {
    if (minor !== 0) out.set(rule, (out.get(rule) ?? 0) + minor);
  };
  add('deliveries', x.deliveries * x.minor(house.deliveryCost));
  const jarsOf = new Map<string, number>();
  const leftOf = new Map<string, number>();
  const cut = (brew: string, jars: number, ml: number) => {
    jarsOf.set(brew, (jarsOf.get(brew) ?? 0) + jars);
    leftOf.set(brew, (leftOf.get(brew) ?? x.brews.get(brew)?.harvestMl ?? 0) - ml);
  };
  const feeds = new Set<string>();

  for (const b of x.brews.values()) {
    const { source } = b.planned;
    if (source.kind === 'harvest') {
      cut(source.brew, up(b.drawMl / house.store.jarMl), b.drawMl);
      feeds.add(source.brew);
    }
    if (b.planned.done) continue;
    add('packs', b.boughtPacks * x.minor(b.yeast.packPrice));
    if (b.starterL > 0) {
      add('starter-wort', x.minor(b.starterL * s('starterWortPerL')));
      add('starter-work', x.minor(s('starterMinutes') * s('pricePerMinute')));
    }
    if (source.kind !== 'fresh')
      add('check-work', x.minor(s('checkMinutes') * s('pricePerMinute')));
    if (b.row.readyBy !== null) {
      const by = dayOf(b.row.readyBy);
      add('lateness', x.minor(Math.max(0, b.ready - by) * b.row.priority * w('lateness')));
      const fades = b.row.fades ?? (FADES.test(b.row.style) && !KEEPS.test(b.row.style));
      const stands = Math.max(0, by - b.ready - s('freshDays'));
      if (fades) add('freshness', x.minor(stands * w('freshness')));
    }
    const place = b.row.yeasts.indexOf(b.planned.yeast);
    add('less-liked-strain', x.minor(Math.max(0, place) * w('less-liked-strain')));
    add('over-pitch', x.minor(Math.max(0, b.pitchedB / b.need - 1.5) * w('over-pitch')));
    slack(x, b, add);
    replanning(x, b, inForce, add);
    const chance = 1 - Math.exp(-hazards(x, b));
    add('pitch-risk', Math.round(x.minor(b.row.value) * w('pitch-risk') * chance));
  }

  for (const kept of keptJars(x)) {
    if (kept.from) cut(kept.from.row.brew, kept.jars, kept.ml);
    if (kept.counts) add('season-end-jar', -x.minor(s('endJarValue')));
  }
  for (const [brew, jars] of jarsOf) {
    if (plan.harvests.some((h) => h.brew === brew && h.done)) continue;
    add('thin-harvest', shortfall(x, brew));
    const from = x.brews.get(brew);
    if (!from?.keeps) add('harvest-work', x.minor(s('harvestMinutes') * s('pricePerMinute')));
    const enough = (leftOf.get(brew) ?? 0) >= house.store.jarMl / 5 - 1e-9;
    // a harvest that is still to come has fed no beer that could have been passed
    const reserve =
      s('reserve') > 0 && !from?.keeps && feeds.has(brew) && enough && s('maxStorageDays') > 0;
    const more = reserve && from !== undefined && !comesOfSuspect(x, from) ? 1 : 0;
    add('jar-work', x.minor((jars + more) * s('jarMinutes') * s('pricePerMinute')));
  }
  return out;
}

/** Where a house asks for slack: what is drawn from a harvest above its low value. */
function shortfall(x: Season, brew: string): number {
  const harvest = x.plan.harvests.find((one) => one.brew === brew);
  if (!harvest || x.s('slackDays') === 0) return 0;
  const drawn = harvest.jars.reduce((sum, jar) => sum + (jar.untilPassed ? 0 : jar.ml), 0);
  const above = Math.max(0, drawn - harvest.settledMl.low);
  return drawn > 0 ? x.minor((x.w('thin-harvest') * above) / drawn) : 0;
}

/** Where a house asks for slack: yeast without room for a slip, and yeast that may prove too weak. */
function slack(x: Season, b: Worked, add: (rule: string, minor: number) => void): void {
  const { s, w } = x;
  const wanted = s('slackDays');
  const { source, starter, viability, day } = b.planned;
  if (wanted === 0 || source.kind === 'fresh') return;
  if (!starter) {
    const points = Math.max(0, s('viabilityFloor') - viability.low) * 100;
    add('thin-yeast', x.minor((w('thin-yeast') * points) / 10));
  }
  const harvest = x.plan.harvests.find(
    ({ brew }) => source.kind === 'harvest' && brew === source.brew,
  );
  if (!harvest || harvest.done) return;
  const spare = dayOf(starter?.startOn ?? day) - dayOf(harvest.usableFrom);
  const missing = Math.max(0, wanted - Math.max(0, spare));
  add('no-slack', x.minor((w('no-slack') * missing) / wanted));
}

function replanning(
  x: Season,
  b: Worked,
  inForce: Plan | null,
  add: (rule: string, minor: number) => void,
): void {
  const was = inForce?.brews.find((o) => o.brew === b.row.brew);
  if (!was) return;
  const near = (day: number) => {
    const n = Math.max(0, day - x.today);
    return (1 + 28 / (7 + n)) * (n <= x.s('freezeDays') ? 10 : 1);
  };
  const d = Math.abs(b.day - dayOf(was.day));
  const moves = (d > 0 ? 1 + Math.min(d, 56) / 14 : 0) + (was.tank === b.planned.tank ? 0 : 0.5);
  add('moved', x.minor(moves * x.w('moved') * near(Math.min(b.day, dayOf(was.day)))));
  const name = (from: Worked['planned']['source']) =>
    from.kind === 'fresh' ? 'packs' : from.kind === 'jar' ? `jar ${from.jar}` : `beer ${from.brew}`;
  if (name(was.source) !== name(b.planned.source))
    add('source-changed', x.minor(x.w('source-changed') * near(b.day)));
}

function sourceBeer(x: Season, b: Worked): (Beer & { fermentC: number | null }) | null {
  const { source } = b.planned;
  if (source.kind === 'fresh') return null;
  if (source.kind === 'harvest') {
    const from = x.brews.get(source.brew);
    const row = from?.keeps ? undefined : from?.row;
    return row ? { p: plato(row.og), ebc: row.ebc, ibu: row.ibu, fermentC: row.fermentC } : null;
  }
  const jar = x.jars.get(source.jar);
  return {
    p: plato(jar?.sourceOg ?? 1.05),
    ebc: jar?.sourceEbc ?? 0,
    ibu: jar?.sourceIbu ?? 0,
    fermentC: null,
  };
}

function hazards(x: Season, b: Worked): number {
  return pitchHazards(x, b) + relaxedHazards(x, b);
}

function pitchHazards(x: Season, b: Worked): number {
  const { s, w } = x;
  const p = plato(b.row.og);
  const starter = b.starterL > 0 ? 0.25 : 1;
  let sum = w('later-generation') * b.generation;
  sum += w('weak-yeast') * Math.max(0, 0.9 - b.alive) * starter;
  const first = p > s('strongFromP') ? w('first-into-strong') : 0;
  if (b.planned.source.kind === 'fresh') return sum + first;
  sum += (w('old-slurry') * b.ageDays) / 7;
  const beer = sourceBeer(x, b);
  if (!beer) return sum + first;
  sum += w('strong-to-light') * Math.max(0, beer.p - p);
  const litres = b.decanted ? 0 : (b.drawMl / 1000) * s('slurryBeerShare');
  const change = (from: number, to: number) =>
    (Math.max(0, from - to) * litres) / (b.row.volumeL + litres);
  sum += (w('dark-to-light') * change(beer.ebc, b.row.ebc)) / Math.max(1, b.row.ebc / 10);
  sum += (w('hoppy-to-delicate') * change(beer.ibu, b.row.ibu)) / Math.max(1, b.row.ibu / 10);
  if (beer.fermentC !== null)
    sum += w('warm-to-cold') * Math.max(0, beer.fermentC - b.row.fermentC - 2);
  return sum;
}

/** The rules that the house relaxed and this pitch breaks, each with its weight. */
function relaxedHazards(x: Season, b: Worked): number {
  const { s } = x;
  const { source } = b.planned;
  const jar = source.kind === 'jar' ? x.jars.get(source.jar) : undefined;
  const given = source.kind === 'harvest' ? x.brews.get(source.brew) : undefined;
  // what was kept of a starter has been in no beer
  const from = given?.keeps ? undefined : given;
  const row = from?.row;
  const hops = row?.dryHopDay ?? null;
  const og = row?.og ?? (jar ? (jar.sourceOg ?? 1.05) : 0);
  const broken: Record<string, boolean> = {
    'gravity-ceiling': og >= s('gravityCeiling') - 1e-9,
    'kettle-soured': (row?.souring ?? jar?.sourceSouring) === 'kettle',
    'dry-hopped':
      jar?.sourceDryHopped === true ||
      (from !== undefined && hops !== null && from.harvest > from.day + hops),
    additions: (row?.additions ?? jar?.sourceAdditions ?? []).length > 0,
    'generation-limit': !within(x, b.planned.yeast, b.generation, og === 0 ? 0 : plato(og)),
    'storage-limit': source.kind !== 'fresh' && b.ageDays > s('maxStorageDays'),
    'viability-floor': b.starterL === 0 && b.alive < s('viabilityFloor') - 1e-9,
  };
  let sum = 0;
  for (const rule of new Set(x.house.relaxed)) if (broken[rule]) sum += x.w(rule);
  return sum;
}

function within(x: Season, yeast: string, generation: number, p: number): boolean {
  const strain = x.house.yeasts.find((y) => y.yeast === yeast)?.maxGeneration ?? null;
  return (
    generation <= x.s('maxGeneration') &&
    (strain === null || generation <= strain) &&
    (p <= x.s('strongBeerP') || generation <= x.s('maxGenerationAfterStrong'))
  );
}

type Kept = { from: Worked | null; jars: number; ml: number; counts: boolean };

/** Jars kept for the next season: in harvests those for nobody, on the shelf those that leave the day after `to`. */
function keptJars(x: Season): Kept[] {
  const { s, house, plan, to } = x;
  const out: Kept[] = [];
  const middleNeed = (yeast: string) => {
    const needs = house.brews.filter((b) => b.yeasts.includes(yeast)).map((b) => x.need(b, false));
    return needs.sort((a, b) => a - b)[Math.floor(needs.length / 2)] ?? 0;
  };
  for (const h of plan.harvests) {
    const from = x.brews.get(h.brew);
    if (!from || !h.jars.some((jar) => jar.for === null && !jar.untilPassed)) continue;
    const alive = x.aliveOfHarvest(from, to);
    const density = x.density(from.yeast, house.store.settleDays);
    const wanted = middleNeed(h.yeast) / (density * alive);
    const ml = Math.min(wanted, from.harvestMl);
    const hops = from.row.dryHopDay;
    const beerAllows =
      from.keeps ||
      (from.row.og < s('gravityCeiling') - 1e-9 &&
        from.row.souring === null &&
        from.row.additions.length === 0 &&
        (hops === null || from.harvest <= from.day + hops));
    const counts =
      within(x, h.yeast, givenBy(from), from.keeps ? 0 : plato(from.row.og)) &&
      from.harvest <= to &&
      to - from.harvest <= s('maxStorageDays') &&
      alive >= s('viabilityFloor') &&
      beerAllows &&
      !comesOfSuspect(x, from) &&
      ml * alive * density >= middleNeed(h.yeast) / 2;
    out.push({ from, jars: Math.max(1, up(ml / house.store.jarMl)), ml, counts });
  }
  for (const shelf of plan.shelf) {
    const jar = x.jars.get(shelf.jar);
    const yeast = house.yeasts.find((y) => y.yeast === shelf.yeast);
    if (!jar || !yeast || !shelf.kept) continue;
    const alive = x.aliveOfJar(jar, to);
    const age = to - dayOf(jar.harvestedOn);
    const counts =
      within(x, jar.yeast, jar.generation, plato(jar.sourceOg ?? 1.05)) &&
      age >= 0 &&
      age <= s('maxStorageDays') &&
      alive >= s('viabilityFloor') &&
      (jar.sourceOg ?? 1.05) < s('gravityCeiling') - 1e-9 &&
      jar.sourceSouring === null &&
      jar.sourceAdditions.length === 0 &&
      !jar.sourceDryHopped &&
      jar.state === 'sound' &&
      jar.settledMl * alive * x.density(yeast, 2) >= middleNeed(jar.yeast) / 2;
    out.push({ from: null, jars: 0, ml: 0, counts });
  }
  return out;
}

function comesOfSuspect(x: Season, from: Worked): boolean {
  const { source } = from.planned;
  if (source.kind === 'fresh') return false;
  if (source.kind === 'jar') return x.jars.get(source.jar)?.state === 'suspect';
  const parent = x.brews.get(source.brew);
  return parent !== undefined && comesOfSuspect(x, parent);
}
