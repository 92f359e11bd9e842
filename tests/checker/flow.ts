// Rule 3: yeast flows forward, of a strain that the brew accepts; and the days on which it is harvested.
import type { PlannedHarvest } from '../../planner/index.ts';
import { type Case, type Placed, platoOf } from './case.ts';
import { iso, num } from './days.ts';
import { checkKept } from './kept.ts';

/** The earliest day on which yeast can be taken from below, by the brew's own word or by its kind. */
function earliestCrop(c: Case, p: Placed): number {
  if (p.brew.harvestDay !== null) return p.D + p.brew.harvestDay;
  const days = p.yeast?.kind === 'lager' ? c.S.cropDayLager : c.S.cropDayAle;
  const slow = platoOf(p.brew.og) > c.S.strongBeerP || p.yeast?.flocculation === 'low';
  return p.D + days + (slow ? c.S.cropDaysExtra : 0);
}

function checkHarvestDay(c: Case, h: PlannedHarvest, p: Placed): void {
  const H = num(h.day);
  const say = (clause: string, days: number, says: string) =>
    c.report(`dates ${clause}`, h.brew, Math.max(1, days), 'days', `Harvest of ${h.brew}: ${says}`);
  if (!c.calendar.isWorkDay(H)) say('harvest-work-day', 1, `${h.day} is no work day.`);
  if (H < c.today) say('harvest-past', c.today - H, `${h.day} is over.`);
  if (p.E !== null && p.tank !== undefined) {
    if (!p.tank.bottomOutlet && H !== p.E)
      say(
        'harvest-at-emptying',
        Math.abs(H - p.E),
        `${p.tank.tank} has no outlet and is emptied on ${iso(p.E)}.`,
      );
    if (p.tank.bottomOutlet && H > p.E)
      say('harvest-late', H - p.E, `the tank is empty from ${iso(p.E)}.`);
    // On the day of emptying the yeast is there to be had, however short the beer stood.
    if (p.tank.bottomOutlet && H < Math.min(p.E, earliestCrop(c, p)))
      say('harvest-early', earliestCrop(c, p) - H, `no crop before ${iso(earliestCrop(c, p))}.`);
  }
  if (h.crashed) {
    const crash = p.plan.crashOn === null ? null : num(p.plan.crashOn);
    if (crash === null || crash + c.S.crashDays > H)
      say(
        'crash-before-harvest',
        1,
        `it is called crashed, the crash begins on ${p.plan.crashOn}.`,
      );
  }
  if (num(h.usableFrom) !== H + c.house.store.settleDays)
    say(
      'usable-from',
      Math.abs(num(h.usableFrom) - H - c.house.store.settleDays),
      'it settles for other days.',
    );
}

/** Harvests: of a brew that is in the plan, of its strain, on a day on which yeast can be had. */
export function checkHarvests(c: Case): void {
  const seen = new Set<string>();
  for (const h of c.plan.harvests) {
    if (seen.has(h.brew))
      c.report('3 harvest-twice', h.brew, 1, 'harvests', `${h.brew} is harvested twice.`);
    seen.add(h.brew);
    const p = c.placedOf.get(h.brew);
    if (p === undefined) {
      c.report(
        '3 harvest-of-nothing',
        h.brew,
        1,
        'harvests',
        `${h.brew} is harvested but not brewed.`,
      );
      continue;
    }
    if (h.yeast !== p.plan.yeast)
      c.report(
        '3 harvest-strain',
        h.brew,
        1,
        'harvests',
        `${h.brew} ferments with ${p.plan.yeast}, not ${h.yeast}.`,
      );
    if (h.done) continue;
    if (h.ofStarter) checkKept(c, h, p);
    else checkHarvestDay(c, h, p);
  }
}

function checkSlurry(c: Case, p: Placed): void {
  const { source, brew: name } = p.plan;
  if (source.kind === 'fresh') return;
  const origin = source.kind === 'jar' ? c.jarOf.get(source.jar) : c.harvestOf.get(source.brew);
  const label = source.kind === 'jar' ? `jar ${source.jar}` : `the harvest of ${source.brew}`;
  if (origin === undefined) {
    c.report('3 no-such-yeast', name, 1, 'brews', `${name} draws on ${label}, and there is none.`);
    return;
  }
  const harvestedOn = 'harvestedOn' in origin ? origin.harvestedOn : origin.day;
  const H = num(harvestedOn);
  const ready = H + c.house.store.settleDays;
  if (p.draw < ready)
    c.report(
      '3 too-early',
      name,
      ready - p.draw,
      'days',
      `${label} can be drawn from ${iso(ready)}, not ${iso(p.draw)}.`,
    );
  if (origin.yeast !== p.plan.yeast)
    c.report(
      '3 strain-of-source',
      name,
      1,
      'brews',
      `${label} holds ${origin.yeast}, not ${p.plan.yeast}.`,
    );
  if (source.harvestedOn !== harvestedOn)
    c.report('dates harvested-on', name, 1, 'days', `${label} was harvested on ${harvestedOn}.`);
  if (source.ageDays !== p.draw - H)
    c.report(
      'dates age',
      name,
      Math.abs(source.ageDays - (p.draw - H)),
      'days',
      `${label} is ${p.draw - H} days old when drawn.`,
    );
  if (p.draw < c.today && !p.begun)
    c.report('3 past', name, c.today - p.draw, 'days', `${name} would draw on a day that is over.`);
}

/** The jar is checked when it is there and before it is drawn; the fallback then still saves the day. */
function checkCheck(c: Case, p: Placed): void {
  const { checkOn, fallback, brew: name } = p.plan;
  const { source } = p.plan;
  if (source.kind === 'fresh') return;
  const say = (clause: string, says: string) =>
    c.report(`dates ${clause}`, name, 1, 'days', `${name}: ${says}`);
  if (checkOn === null) {
    say('check', 'its slurry is never checked.');
    return;
  }
  const day = num(checkOn);
  if (day > p.draw) say('check', `checked on ${checkOn}, after it is drawn.`);
  if (day < num(source.harvestedOn)) say('check', `checked on ${checkOn}, before it is harvested.`);
  if (day < c.today && !p.begun) say('check', `checked on ${checkOn}, which is over.`);
  if (c.calendar.isClosed(day)) say('check-closed', `checked on ${checkOn}, a closed day.`);
  if (fallback.kind === 'none' || fallback.decideBy === null) return;
  const decide = num(fallback.decideBy);
  if (day > decide) say('fallback', `checked on ${checkOn}, but decided by ${fallback.decideBy}.`);
  if (fallback.kind === 'order' && decide + c.house.orderLeadDays > p.D)
    say('fallback', `packs ordered on ${fallback.decideBy} come too late.`);
}

/** Rule 3 for one pitch, packs included: ordered in time, not before today, there when they are used. */
function checkPacks(c: Case, p: Placed): void {
  const { source, brew: name } = p.plan;
  if (source.kind !== 'fresh') return;
  const bought = source.packs - source.packsFromHand;
  if (source.packs < 1 || bought < 0)
    c.report(
      '4 packs',
      name,
      1,
      'packs',
      `${name} gets ${source.packs} packs, ${source.packsFromHand} from hand.`,
    );
  if (bought > 0) {
    if (source.orderOn === null || source.arrivesOn === null) {
      c.report('3 order', name, bought, 'packs', `${name} needs packs that nobody orders.`);
    } else {
      const orderOn = num(source.orderOn);
      const arrivesOn = num(source.arrivesOn);
      if (orderOn < c.today)
        c.report(
          '3 order-past',
          name,
          c.today - orderOn,
          'days',
          `The order for ${name} is on a day that is over.`,
        );
      if (arrivesOn < orderOn + c.house.orderLeadDays)
        c.report(
          '3 order-lead',
          name,
          orderOn + c.house.orderLeadDays - arrivesOn,
          'days',
          `An order takes ${c.house.orderLeadDays} days.`,
        );
      if (arrivesOn > p.draw)
        c.report(
          '3 order-late',
          name,
          arrivesOn - p.draw,
          'days',
          `The packs for ${name} come after they are used.`,
        );
      const made = arrivesOn - c.house.packAgeOnArrivalDays;
      if (source.packsFromHand === 0 && num(source.packsMadeOn) !== made)
        c.report(
          'dates pack-made',
          name,
          Math.abs(num(source.packsMadeOn) - made),
          'days',
          `Packs arrive ${c.house.packAgeOnArrivalDays} days old.`,
        );
    }
  }
  const age = p.draw - num(source.packsMadeOn);
  if (source.packAgeDays !== age)
    c.report(
      'dates pack-age',
      name,
      Math.abs(source.packAgeDays - age),
      'days',
      `The packs for ${name} are ${age} days old.`,
    );
  const expiry = p.yeast?.form === 'dry' ? c.S.dryExpiryDays : c.S.liquidExpiryDays;
  if (age > expiry)
    c.report(
      '10 pack-expired',
      name,
      age - expiry,
      'days',
      `The packs for ${name} expired ${age - expiry} days before.`,
    );
}

/** Rule 3. */
export function checkFlow(c: Case): void {
  for (const p of c.placed) {
    if (p.plan.done) continue;
    if (!p.brew.yeasts.includes(p.plan.yeast))
      c.report(
        '3 strain',
        p.plan.brew,
        1,
        'brews',
        `${p.plan.brew} does not accept ${p.plan.yeast}.`,
      );
    if (p.yeast === undefined) {
      c.report('3 strain', p.plan.brew, 1, 'brews', `${p.plan.yeast} is no yeast of the house.`);
    } else {
      const degrees = Math.max(p.yeast.minC - p.brew.fermentC, p.brew.fermentC - p.yeast.maxC);
      if (degrees > 1e-9)
        c.report(
          '3 strain-temperature',
          p.plan.brew,
          degrees,
          '°C',
          `${p.plan.yeast} does not ferment at ${p.brew.fermentC} °C.`,
        );
    }
    checkSlurry(c, p);
    checkCheck(c, p);
    checkPacks(c, p);
  }
}
