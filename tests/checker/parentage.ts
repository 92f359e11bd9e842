// Rules 5–10 and 13: what the yeast came out of, how old it is in days and in generations, and suspicion.
import { type Case, type Placed, platoOf } from './case.ts';
import { num } from './days.ts';

/** The beer that a slurry came out of, as far as the house knows it. */
type Parent = {
  og: number | null;
  souring: 'kettle' | 'mixed' | null;
  additions: readonly string[];
  dryHopped: boolean;
  generation: number;
};

function parentOf(c: Case, p: Placed): Parent | null {
  const { source } = p.plan;
  if (source.kind === 'fresh') return null;
  if (source.kind === 'jar') {
    const jar = c.jarOf.get(source.jar);
    if (jar === undefined) return null;
    return {
      og: jar.sourceOg,
      souring: jar.sourceSouring,
      additions: jar.sourceAdditions,
      dryHopped: jar.sourceDryHopped,
      generation: jar.generation,
    };
  }
  const beer = c.placedOf.get(source.brew);
  const harvest = c.harvestOf.get(source.brew);
  if (beer === undefined || harvest === undefined) return null;
  // it has been in no beer, and a starter adds no generation
  if (harvest.ofStarter)
    return {
      og: null,
      souring: null,
      additions: [],
      dryHopped: false,
      generation: beer.plan.generation,
    };
  const { dryHopDay } = beer.brew;
  return {
    og: beer.brew.og,
    souring: beer.brew.souring,
    additions: beer.brew.additions,
    dryHopped: dryHopDay !== null && beer.D + dryHopDay < num(harvest.day),
    generation: beer.plan.generation + 1,
  };
}

function checkParent(c: Case, p: Placed, parent: Parent): void {
  const name = p.plan.brew;
  const unless = (relaxed: string) => !c.relaxed.has(relaxed);
  if (parent.og !== null && parent.og >= c.S.gravityCeiling && unless('gravity-ceiling'))
    c.report(
      '5 gravity-ceiling',
      name,
      Math.round((parent.og - c.S.gravityCeiling) * 1000) + 1,
      'points',
      `The yeast for ${name} is out of beer of ${parent.og}.`,
    );
  if (parent.souring === 'kettle' && unless('kettle-soured'))
    c.report('6 sour', name, 1, 'pitches', `The yeast for ${name} is out of kettle-soured beer.`);
  if (parent.souring === 'mixed')
    c.report('6 mixed', name, 1, 'pitches', `The yeast for ${name} is out of mixed-culture beer.`);
  if (parent.dryHopped && unless('dry-hopped'))
    c.report('7 hops', name, 1, 'pitches', `The yeast for ${name} is out of dry-hopped beer.`);
  if (parent.additions.length > 0 && unless('additions'))
    c.report(
      '8 additions',
      name,
      1,
      'pitches',
      `The yeast for ${name} is out of beer with ${parent.additions.join(', ')}.`,
    );
}

function checkGeneration(c: Case, p: Placed, parent: Parent | null): void {
  const name = p.plan.brew;
  const generation = parent?.generation ?? 0;
  if (p.plan.source.kind === 'fresh' || parent !== null)
    if (p.plan.generation !== generation)
      c.report(
        '9 generation',
        name,
        Math.abs(p.plan.generation - generation),
        'generations',
        `${name} gets generation ${generation}, not ${p.plan.generation}.`,
      );
  if (parent === null || c.relaxed.has('generation-limit')) return;
  const strong = parent.og !== null && platoOf(parent.og) > c.S.strongBeerP;
  const limits: [`9 ${string}`, number][] = [
    ['9 limit', c.S.maxGeneration],
    ['9 limit-of-strain', p.yeast?.maxGeneration ?? Number.POSITIVE_INFINITY],
    ['9 limit-after-strong', strong ? c.S.maxGenerationAfterStrong : Number.POSITIVE_INFINITY],
  ];
  for (const [rule, limit] of limits)
    if (generation > limit)
      c.report(
        rule,
        name,
        generation - limit,
        'generations',
        `${name} gets generation ${generation}; the limit is ${limit}.`,
      );
}

function checkStorage(c: Case, p: Placed): void {
  const { source, starter, viability, brew: name } = p.plan;
  const harvestedOn =
    source.kind === 'fresh'
      ? undefined
      : source.kind === 'jar'
        ? c.jarOf.get(source.jar)?.harvestedOn
        : c.harvestOf.get(source.brew)?.day;
  const over = harvestedOn === undefined ? 0 : p.draw - num(harvestedOn) - c.S.maxStorageDays;
  if (over > 0 && !c.relaxed.has('storage-limit'))
    c.report(
      '10 storage-limit',
      name,
      over,
      'days',
      `The slurry for ${name} is stored ${over} days too long.`,
    );
  const below = c.S.viabilityFloor - viability.likely;
  if (starter === null && below > 1e-6 && !c.relaxed.has('viability-floor'))
    c.report(
      '10 viability-floor',
      name,
      Math.ceil(below * 100),
      'percent',
      `${name} gets yeast that is ${viability.likely} alive and no starter.`,
    );
}

/** What comes out of a brew, as what has happened calls it and the beer. */
function stateOf(c: Case, p: Placed): 'sound' | 'watch' | 'suspect' {
  const { source } = p.plan;
  if (source.kind === 'fresh') return 'sound';
  if (source.kind === 'jar') return c.jarOf.get(source.jar)?.state ?? 'sound';
  const states = [...c.facts.harvested, ...c.facts.brewed]
    .filter((fact) => fact.brew === source.brew)
    .map((fact) => fact.state);
  return states.includes('suspect') ? 'suspect' : states.includes('watch') ? 'watch' : 'sound';
}

function checkSuspicion(c: Case, p: Placed): void {
  const name = p.plan.brew;
  const state = stateOf(c, p);
  if (state === 'watch')
    c.report('13 watch', name, 1, 'pitches', `The yeast for ${name} is on watch.`);
  let at: Placed | undefined = p;
  for (let steps = 0; at !== undefined && steps <= c.placed.length; steps++) {
    if (stateOf(c, at) === 'suspect') {
      c.report(
        steps === 0 ? '13 suspect' : '13 descends',
        name,
        1,
        'pitches',
        `The yeast for ${name} comes from suspect yeast.`,
      );
      return;
    }
    const { source }: Placed['plan'] = at.plan;
    at = source.kind === 'harvest' ? c.placedOf.get(source.brew) : undefined;
  }
  if (at !== undefined)
    c.report('3 circle', name, 1, 'pitches', `The yeast for ${name} comes out of itself.`);
}

/** Rules 5–10 and 13 for every pitch still to come; 5–8 judge jars of the shelf too. */
export function checkParentage(c: Case): void {
  for (const p of c.placed) {
    if (p.plan.done) continue;
    const parent = parentOf(c, p);
    if (parent !== null) checkParent(c, p, parent);
    checkGeneration(c, p, parent);
    checkStorage(c, p);
    checkSuspicion(c, p);
  }
  for (const h of c.plan.harvests) {
    const beer = c.placedOf.get(h.brew);
    if (beer === undefined) continue;
    const generation = beer.plan.generation + (h.ofStarter ? 0 : 1);
    if (h.generation !== generation)
      c.report(
        '9 generation-of-harvest',
        h.brew,
        1,
        'generations',
        `The slurry of ${h.brew} is generation ${generation}.`,
      );
    const hopped = beer.brew.dryHopDay !== null && beer.D + beer.brew.dryHopDay < num(h.day);
    if (hopped && !h.done && !c.relaxed.has('dry-hopped'))
      c.report(
        '7 harvest-of-hopped',
        h.brew,
        1,
        'harvests',
        `${h.brew} is dry-hopped before it is harvested.`,
      );
  }
}
