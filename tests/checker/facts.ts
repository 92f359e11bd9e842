// Rule 12: what has happened stays as it happened; and what the brewer holds fast.
import type { Facts, Pin, PlannedBrew } from '../../planner/index.ts';
import { type Case, near } from './case.ts';

type BrewedFact = Facts['brewed'][number];

function sameSource(planned: PlannedBrew['source'], fact: BrewedFact['source']): boolean {
  if (planned.kind === 'fresh') return fact.kind === 'fresh' && fact.packs === planned.packs;
  if (planned.kind === 'jar')
    return (
      fact.kind === 'jar' && fact.jar === planned.jar && near(fact.drawMl, planned.drawMl, 0.001)
    );
  return (
    fact.kind === 'harvest' &&
    fact.brew === planned.brew &&
    near(fact.drawMl, planned.drawMl, 0.001)
  );
}

function checkBrewed(c: Case, fact: BrewedFact): void {
  const planned = c.placedOf.get(fact.brew)?.plan;
  if (planned === undefined || !planned.done) {
    c.report(
      '12 brewed',
      fact.brew,
      1,
      'brews',
      `${fact.brew} is brewed, and the plan does not say so.`,
    );
    return;
  }
  const changed = (clause: string, same: boolean) => {
    if (!same)
      c.report(
        `12 ${clause}`,
        fact.brew,
        1,
        'brews',
        `${fact.brew} was brewed with another ${clause}.`,
      );
  };
  changed('day', planned.day === fact.day);
  changed('tank', planned.tank === fact.tank);
  changed('yeast', planned.yeast === fact.yeast);
  changed('source', sameSource(planned.source, fact.source));
  // Of a starter that has been pitched nothing is left to plan; where it is shown, it is the same one.
  const litres = planned.starter?.litres ?? fact.starterLitres;
  changed('starter', near(litres, fact.starterLitres, 0.001));
  changed('generation', planned.generation === fact.generation);
  changed('cells', near(planned.pitchedB, fact.pitchedB, 0.001));
  changed('emptying', fact.emptiedOn === null || planned.emptiedOn === fact.emptiedOn);
}

function checkHarvested(c: Case, fact: Facts['harvested'][number]): void {
  const planned = c.harvestOf.get(fact.brew);
  const drawn = c.placed.some(
    (p) => p.plan.source.kind === 'harvest' && p.plan.source.brew === fact.brew,
  );
  if (planned === undefined) {
    if (drawn)
      c.report('12 harvested', fact.brew, 1, 'harvests', `The harvest of ${fact.brew} is missing.`);
    return;
  }
  if (!planned.done || planned.day !== fact.day)
    c.report(
      '12 harvested',
      fact.brew,
      1,
      'harvests',
      `${fact.brew} was harvested on ${fact.day}.`,
    );
  if (!near(planned.settledMl.likely, fact.settledMl, 0.001))
    c.report(
      '12 harvested-ml',
      fact.brew,
      Math.abs(planned.settledMl.likely - fact.settledMl),
      'mL',
      `${fact.brew} gave ${fact.settledMl} mL.`,
    );
}

function checkPin(c: Case, pin: Pin): void {
  const planned = c.placedOf.get(pin.brew)?.plan;
  if (planned === undefined) {
    // Only a day is a place to stay at; with a tank or a source alone there may be no day at all.
    if (pin.day !== null)
      c.report(
        '12 pin-placed',
        pin.brew,
        1,
        'brews',
        `${pin.brew} is held on ${pin.day} and left out.`,
      );
    return;
  }
  if (planned.done) return;
  const { source } = planned;
  const isFrom = (ref: Pin['forbidden'][number]): boolean =>
    ref.kind === 'fresh'
      ? source.kind === 'fresh'
      : ref.kind === 'jar'
        ? source.kind === 'jar' && source.jar === ref.jar
        : source.kind === 'harvest' && source.brew === ref.brew;
  if (pin.forbidden.some(isFrom))
    c.report('12 forbidden', pin.brew, 1, 'brews', `${pin.brew} is kept from its source.`);
  if (pin.day !== null && planned.day !== pin.day)
    c.report('12 pin-day', pin.brew, 1, 'brews', `${pin.brew} is held on ${pin.day}.`);
  if (pin.tank !== null && planned.tank !== pin.tank)
    c.report('12 pin-tank', pin.brew, 1, 'brews', `${pin.brew} is held in ${pin.tank}.`);
  if (pin.source !== null && !isFrom(pin.source))
    c.report('12 pin-source', pin.brew, 1, 'brews', `${pin.brew} is held to another source.`);
}

/** A starter that stands ready is pitched as it was made. */
function checkBegun(c: Case, fact: Facts['begun'][number]): void {
  const p = c.placedOf.get(fact.brew);
  if (!p?.begun || p.plan.done) return;
  if (!near(p.plan.starter?.litres ?? 0, fact.litres, 0.001))
    c.report(
      '12 begun',
      fact.brew,
      1,
      'starters',
      `The starter for ${fact.brew} is of another size.`,
    );
}

/** Rule 12, and the pins. */
export function checkFacts(c: Case): void {
  for (const fact of c.facts.begun) checkBegun(c, fact);
  const brewed = new Set(c.facts.brewed.map((fact) => fact.brew));
  const harvested = new Set(c.facts.harvested.map((fact) => fact.brew));
  for (const fact of c.facts.brewed) checkBrewed(c, fact);
  for (const fact of c.facts.harvested) checkHarvested(c, fact);
  for (const { plan } of c.placed)
    if (plan.done && !brewed.has(plan.brew))
      c.report('12 not-brewed', plan.brew, 1, 'brews', `${plan.brew} has not been brewed yet.`);
  for (const h of c.plan.harvests)
    if (h.done && !harvested.has(h.brew))
      c.report('12 not-harvested', h.brew, 1, 'harvests', `${h.brew} has not been harvested yet.`);
  const gone = new Set(c.facts.goneJars);
  for (const { plan } of c.placed)
    if (!plan.done && plan.source.kind === 'jar' && gone.has(plan.source.jar))
      c.report('12 gone-jar', plan.brew, 1, 'jars', `Jar ${plan.source.jar} is gone.`);
  for (const pin of c.pins) checkPin(c, pin);
}
