// From the timeline that the search found to the plan that is published.
import type { CostLine, Facts, Finding, House, Pin, Plan, Totals } from '../model/index.ts';
import type { Desk } from '../search/desk.ts';
import type { Judge } from '../search/score.ts';
import { isoDay } from '../timeline/calendar.ts';
import { TOO_LITTLE } from '../timeline/reserve.ts';
import { fillKettle } from '../timeline/room.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { tellWhy } from './alternatives.ts';
import { publishBrew } from './brews.ts';
import { publishChains } from './chains.ts';
import { tellFallback } from './fallback.ts';
import { tellLeftOut } from './left-out.ts';
import { spokenFinding, spokenPlan } from './spoken.ts';
import { publishHarvests, publishOrders, publishShelf } from './stock.ts';
import { totals } from './totals.ts';
import { hardFindings, weigh } from './weighing.ts';

export type Publishing = {
  house: House;
  today: string;
  facts: Facts;
  pins: readonly Pin[];
  inForce: Plan | null;
  seed: number;
  steps: number;
  stepsDone: number;
  baselines: { freshOnly: Totals; dateOrder: Totals };
  bound: Plan['bound'];
  noBound: string | null;
};

/** Publishes an unfolded timeline. The desk lends its judge and its scratch plan. */
export function publish(desk: Desk, t: Timeline, about: Publishing): Plan {
  const p = t.problem;
  const judge = desk.judge;
  const sums = totals(judge, t);
  const base = weigh(judge, t);
  const costs = costLines(desk, t);
  const riskOf = new Map<number, number>();
  for (const { rule, weight } of judge.costs) {
    if (!rule.joinsHazards) continue;
    rule.check(t, weight, (amount, subject) =>
      riskOf.set(subject, (riskOf.get(subject) ?? 0) + amount),
    );
  }
  const kettle = new Map<number, { day: number; turns: number }[]>();
  fillKettle(p, t, (b, day, turns) => kettle.set(b, [...(kettle.get(b) ?? []), { day, turns }]));
  const pinOf = new Map(about.pins.map((pin) => [pin.brew, pin]));

  const brews: Plan['brews'] = [];
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    judge.joinHazards(t);
    const body = publishBrew(judge, t, b, kettle.get(b) ?? [], riskOf.get(b) ?? 0);
    brews.push({
      ...body,
      ...tellFallback(desk, t, b),
      ...tellWhy(desk, t, base, b),
      pins: pinOf.get(body.brew) ?? null,
    });
  }
  const leftOut: Plan['leftOut'] = [];
  for (let b = 0; b < t.placed.length; b++) {
    if (!t.placed[b]) leftOut.push(tellLeftOut(desk, t, b, leftOut.length, about));
  }
  const broken = findings(judge, t);
  return spokenPlan({
    format: 'barmline-plan-1',
    house: about.house.name,
    currency: about.house.currency,
    minorPerMajor: p.minorPerMajor,
    today: about.today,
    seed: about.seed,
    steps: about.steps,
    stepsDone: about.stepsDone,
    status: broken.length > 0 ? 'broken' : leftOut.length > 0 ? 'some-left-out' : 'whole',
    totals: sums,
    brews,
    leftOut,
    harvests: publishHarvests(t),
    orders: publishOrders(t),
    shelf: publishShelf(t),
    chains: publishChains(judge, t),
    broken,
    costs,
    baselines: about.baselines,
    bound: about.bound,
    ...(about.noBound === null ? {} : { noBound: about.noBound }),
    notes: notes(t),
  });
}

/** What breaks a hard rule in an unfolded plan, in the rules' own words. */
export function findings(judge: Judge, t: Timeline): Finding[] {
  return hardFindings(judge, t).map(({ rule, fact }) =>
    spokenFinding({
      rule: rule.id,
      subject: rule.subject(t, fact),
      amount: fact.amount,
      unit: rule.unit,
      says: rule.explain(t, fact),
      remedy: rule.remedy(t, fact),
    }),
  );
}

function costLines(desk: Desk, t: Timeline): CostLine[] {
  const lines: CostLine[] = [];
  desk.judge.joinHazards(t);
  for (const { rule, weight } of desk.judge.costs) {
    rule.check(t, weight, (amount, subject, other) => {
      const fact = { amount, subject, other };
      lines.push({
        rule: rule.id,
        part: rule.part,
        amountMinor: amount,
        subject: rule.subject(t, fact),
        says: rule.explain(t, fact),
      });
    });
  }
  return lines;
}

/** What the brewer should know: weak low values, jars that go to waste. */
function notes(t: Timeline): string[] {
  const p = t.problem;
  const out: string[] = [];
  const settle = p.house.store.settleDays;
  if (settle === 1)
    out.push(
      'Slurry is read after one day of settling: volumes are larger and less sure than after two.',
    );
  if (settle === 0)
    out.push(
      'Slurry is pitched unsettled: its volume is a guess. Two days of settling make it a reading.',
    );
  const without = p.brews.filter((_, b) => t.reserveUntil[b] === TOO_LITTLE);
  if (without.length > 0)
    out.push(
      `No reserve is kept of ${without.map(({ name }) => name).join(', ')}: less than a fifth of a jar is left after the draws.`,
    );
  for (const jar of p.jars) {
    if (!jar.gone && jar.state !== 'sound')
      out.push(`Jar ${jar.name} is marked ${jar.state} and is not pitched.`);
    if (
      !jar.gone &&
      jar.state === 'sound' &&
      jar.harvestedDay + p.settings.maxStorageDays < p.today
    ) {
      out.push(
        `Jar ${jar.name} passed its storage limit on ${isoDay(jar.harvestedDay + p.settings.maxStorageDays)}.`,
      );
    }
  }
  return out;
}
