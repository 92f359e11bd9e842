// Rule 4 and the section Amounts: no more is drawn than there is, and the figures hang together.
import type { PlannedHarvest } from '../../planner/index.ts';
import { type Case, near, type Placed, platoOf } from './case.ts';
import { checkKeptAmount } from './kept.ts';
import { storageLoss } from './living.ts';

/** Viable cells a brew must be pitched with, billion: rate × volume × °P (million/mL = billion/L). */
export function needOf(c: Case, p: Placed): number {
  const { brew } = p;
  const plato = platoOf(brew.og);
  const fresh = p.plan.source.kind === 'fresh' ? c.S.freshShare : 1;
  const rate =
    brew.fermentC <= c.S.lagerToC
      ? c.S.rateLager
      : (brew.fermentC <= c.S.hybridToC ? c.S.rateHybrid : c.S.rateAle) * fresh;
  const strong = plato > c.S.strongFromP ? 1 + c.S.strongIncrease : 1;
  const sour = brew.souring === 'kettle' ? 1 + c.S.sourIncrease : 1;
  return rate * strong * sour * brew.volumeL * plato;
}

/** Billion cells per mL after so many days of settling. */
function densityOf(c: Case, flocculation: 'low' | 'medium' | 'high', settleDays: number): number {
  const settled = { low: c.S.densityLow, medium: c.S.densityMedium, high: c.S.densityHigh }[
    flocculation
  ];
  return (
    settled * (settleDays === 0 ? c.S.density0hShare : settleDays === 1 ? c.S.density24hShare : 1)
  );
}

function checkPitch(c: Case, p: Placed): void {
  const { plan, yeast } = p;
  const { source, starter, brew: name } = plan;
  const differ = (clause: string, given: number, wanted: number, says: string) => {
    if (!near(given, wanted))
      c.report(
        `amounts ${clause}`,
        name,
        Math.abs(given - wanted),
        'B',
        `${name}: ${says} ${wanted.toFixed(1)}, not ${given}.`,
      );
  };
  const need = needOf(c, p);
  differ('need', plan.needB, need, 'needs');
  const margin = source.kind === 'fresh' ? Math.min(1, c.S.pitchMargin) : c.S.pitchMargin;
  if (plan.pitchedB < need * margin * 0.99)
    c.report(
      '4 pitched-short',
      name,
      need * margin - plan.pitchedB,
      'B',
      `${name} gets fewer living cells than it needs.`,
    );
  const begun = starter === null ? plan.pitchedB : starter.initialB;
  // of a starter of which a part is kept only the rest is pitched
  const shared = c.harvestOf.get(name)?.ofStarter === true;
  if (starter !== null && !shared)
    differ('starter-gives', plan.pitchedB, starter.finalB, 'its starter gives');
  if (source.kind === 'fresh') {
    // With packs of two ages the plan shows the age of the oldest only.
    if (
      yeast !== undefined &&
      (source.packsFromHand === 0 || source.packsFromHand === source.packs)
    )
      differ(
        'packs-hold',
        begun,
        source.packs * yeast.packCellsB * plan.viability.likely,
        'its packs hold',
      );
    return;
  }
  const density = plan.densityBPerMl?.likely ?? 0;
  differ('draw', source.drawMl * density * plan.viability.likely, begun, 'the draw has to hold');
  if (yeast === undefined) return;
  const { settleDays } = c.house.store;
  const wanted = countedDensity(c, source) ?? densityOf(c, yeast.flocculation, settleDays);
  // A jar on the shelf may have been read when it was filled or after it had settled for good.
  const settled = source.kind === 'jar' && near(density, densityOf(c, yeast.flocculation, 2));
  if (!settled && !near(density, wanted))
    c.report(
      'amounts density',
      name,
      Math.abs(density - wanted),
      'B/mL',
      `The slurry for ${name} holds ${wanted} billion per mL.`,
    );
}

/** Billion per mL where somebody looked. */
function countedDensity(c: Case, source: Placed['plan']['source']): number | null {
  const count = c.facts.measured.find(({ of }) =>
    of.kind === 'jar'
      ? source.kind === 'jar' && source.jar === of.jar
      : source.kind === 'harvest' && source.brew === of.brew,
  );
  return count?.densityBPerMl ?? null;
}

/** What a harvest holds: min(growth × viable cells pitched, ceiling) × recoverable share. */
function checkCrop(c: Case, h: PlannedHarvest, p: Placed): void {
  const { yeast, brew } = p;
  if (yeast === undefined || h.done) return;
  const share = { low: c.S.recoverLow, medium: c.S.recoverMedium, high: c.S.recoverHigh }[
    yeast.flocculation
  ];
  const crashed = h.crashed || yeast.flocculation !== 'low' ? 1 : c.S.uncrashedLowShare;
  if (h.ofStarter) checkKeptAmount(c, h, p);
  const grown = Math.min(c.S.growthFactor * p.plan.pitchedB, c.S.cellCeilingBPerL * brew.volumeL);
  const cells = grown * share * crashed;
  if (!h.ofStarter && !near(h.cellsB, cells))
    c.report(
      'amounts crop',
      h.brew,
      Math.abs(h.cellsB - cells),
      'B',
      `The harvest of ${h.brew} holds ${cells.toFixed(1)} billion.`,
    );
  const ml = h.cellsB / densityOf(c, yeast.flocculation, c.house.store.settleDays);
  if (!near(h.settledMl.likely, ml))
    c.report(
      'amounts settled',
      h.brew,
      Math.abs(h.settledMl.likely - ml),
      'mL',
      `The harvest of ${h.brew} is ${ml.toFixed(1)} mL.`,
    );
}

/** The share alive is no better than the slowest loss allows and no worse than the fastest. */
function checkViability(c: Case, p: Placed): void {
  const { source, viability, brew: name } = p.plan;
  const band = storageLoss(c, p);
  if (band === null) return;
  const over = viability.likely - band.high;
  const under = band.low - viability.likely;
  if (Math.max(over, under) > 0.005)
    c.report(
      'amounts viability',
      name,
      Math.max(over, under),
      'share',
      `${name}: ${viability.likely} alive after ${source.kind === 'fresh' ? 0 : source.ageDays} days is not between ${band.low.toFixed(3)} and ${band.high.toFixed(3)}.`,
    );
}

function checkHarvestDraws(c: Case, h: PlannedHarvest): void {
  const close = 0.5;
  const drawers = c.placed.filter(
    (p) => p.plan.source.kind === 'harvest' && p.plan.source.brew === h.brew,
  );
  let drawn = 0;
  for (const p of drawers) {
    const { source } = p.plan;
    if (source.kind !== 'harvest') continue;
    drawn += source.drawMl;
    if (p.plan.done) continue;
    const jars = h.jars.filter((jar) => jar.for === p.plan.brew);
    const ml = jars.reduce((sum, jar) => sum + jar.ml, 0);
    if (Math.abs(ml - source.drawMl) > close)
      c.report(
        '4 jars-cut',
        p.plan.brew,
        Math.abs(ml - source.drawMl),
        'mL',
        `The jars for ${p.plan.brew} hold ${ml} mL, it draws ${source.drawMl}.`,
      );
    if (jars.length !== source.jars)
      c.report(
        '4 jars-counted',
        p.plan.brew,
        Math.abs(jars.length - source.jars),
        'jars',
        `${jars.length} jars are cut for ${p.plan.brew}, not ${source.jars}.`,
      );
  }
  const names = new Set(drawers.map((p) => p.plan.brew));
  for (const jar of h.jars) {
    if (jar.ml > c.house.store.jarMl + close)
      c.report(
        '4 jar-too-full',
        h.brew,
        jar.ml - c.house.store.jarMl,
        'mL',
        `A jar of ${jar.ml} mL; one holds ${c.house.store.jarMl}.`,
      );
    if (jar.for !== null && !names.has(jar.for))
      c.report(
        '4 jar-for-nobody',
        h.brew,
        1,
        'jars',
        `A jar of ${h.brew} is kept for ${jar.for}, which does not draw it.`,
      );
  }
  const cut = h.jars.reduce((sum, jar) => sum + jar.ml, 0);
  const over = Math.max(drawn, cut) - h.settledMl.likely;
  // What brews of the past have drawn is a fact, even where less came than was counted on.
  if (
    over > close &&
    h.jars.some((jar) => jar.for === null || c.placedOf.get(jar.for)?.plan.done !== true)
  )
    c.report(
      '4 harvest-overdrawn',
      h.brew,
      over,
      'mL',
      `${h.brew} gives ${h.settledMl.likely} mL, ${Math.max(drawn, cut)} are taken.`,
    );
}

function checkJarDraws(c: Case): void {
  for (const jar of c.house.jars) {
    const from = c.placed.filter(
      (p) => p.plan.source.kind === 'jar' && p.plan.source.jar === jar.jar,
    );
    if (from.length > 1 && from.some((p) => !p.plan.done))
      c.report(
        '4 jar-opened-twice',
        jar.jar,
        from.length - 1,
        'pitches',
        `Jar ${jar.jar} feeds ${from.length} pitches.`,
      );
    for (const { plan } of from) {
      const over = plan.source.kind === 'jar' ? plan.source.drawMl - jar.settledMl : 0;
      if (over > 0.5 && !plan.done)
        c.report(
          '4 jar-overdrawn',
          jar.jar,
          over,
          'mL',
          `Jar ${jar.jar} holds ${jar.settledMl} mL.`,
        );
    }
  }
}

function checkHand(c: Case): void {
  for (const yeast of c.house.yeasts) {
    const used = c.placed.reduce(
      (sum, { plan }) =>
        sum +
        (plan.yeast === yeast.yeast && plan.source.kind === 'fresh'
          ? plan.source.packsFromHand
          : 0),
      0,
    );
    if (used > yeast.packsOnHand)
      c.report(
        '4 packs-on-hand',
        yeast.yeast,
        used - yeast.packsOnHand,
        'packs',
        `${used} packs of ${yeast.yeast} are taken from ${yeast.packsOnHand}.`,
      );
  }
}

/** Rule 4 but for the shelf, and the arithmetic of every pitch and harvest. */
export function checkAmounts(c: Case): void {
  for (const p of c.placed)
    if (!p.plan.done) {
      checkPitch(c, p);
      checkViability(c, p);
    }
  for (const h of c.plan.harvests) {
    const p = c.placedOf.get(h.brew);
    if (p !== undefined) checkCrop(c, h, p);
    checkHarvestDraws(c, h);
  }
  checkJarDraws(c);
  checkHand(c);
}
