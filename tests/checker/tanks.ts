// Rule 2: one brew at a time in a tank that fits it, and room to condition.
import type { Case, Placed } from './case.ts';
import { iso, num } from './days.ts';

function checkFit(c: Case, p: Placed): void {
  const { brew, tank, plan } = p;
  if (tank === undefined) {
    c.report('2 tank', brew.brew, 1, 'brews', `${plan.tank} is no tank of the house.`);
    return;
  }
  const litres = Math.max(tank.minFillL - brew.volumeL, brew.volumeL - tank.maxFillL);
  if (litres > 1e-9)
    c.report('2 fill', brew.brew, litres, 'L', `${brew.volumeL} L do not fit ${tank.tank}.`);
  const degrees = Math.max(tank.minC - brew.fermentC, brew.fermentC - tank.maxC);
  if (degrees > 1e-9)
    c.report(
      '2 temperature',
      brew.brew,
      degrees,
      '°C',
      `${tank.tank} does not hold ${brew.fermentC} °C.`,
    );
  for (const out of tank.outOfUse)
    if (p.E !== null && p.D <= num(out.to) && p.E >= num(out.from))
      c.report(
        '2 out-of-use',
        brew.brew,
        1,
        'days',
        `${tank.tank} is out of use from ${out.from} to ${out.to}.`,
      );
}

function checkOneAtATime(c: Case): void {
  for (const tank of new Set(c.placed.map((p) => p.plan.tank))) {
    const inOrder = c.placed.filter((p) => p.plan.tank === tank).toSorted((a, b) => a.D - b.D);
    for (const [at, next] of inOrder.entries())
      for (const before of inOrder.slice(0, at)) {
        if (before.plan.done && next.plan.done) continue;
        // Two brews on one day share the tank even where it would be free again at once.
        const free = Math.max(before.free ?? before.D, before.D + 1);
        if (next.D < free)
          c.report(
            '2 one-at-a-time',
            tank,
            free - next.D,
            'days',
            `${next.plan.brew} goes into ${tank} on ${iso(next.D)}; ${before.plan.brew} holds it until ${iso(free)}.`,
          );
      }
  }
}

/** Beer conditions from the day it is emptied up to, not including, the day it is ready. */
function checkRoom(c: Case): void {
  const room = c.house.conditioningRoomL;
  if (room === null) return;
  const stays = c.placed.flatMap((p) =>
    p.E === null || p.R === null
      ? []
      : [{ from: p.E, to: p.R, litres: p.brew.volumeL, done: p.plan.done }],
  );
  for (const day of new Set(stays.map((stay) => stay.from))) {
    const there = stays.filter((stay) => stay.from <= day && day < stay.to);
    const litres = there.reduce((sum, stay) => sum + stay.litres, 0) - room;
    if (litres > 1e-9 && there.some((stay) => !stay.done))
      c.report(
        '2 conditioning',
        iso(day),
        litres,
        'L',
        `${litres} L more are conditioning than there is room for.`,
      );
  }
}

/** Rule 2. */
export function checkTanks(c: Case): void {
  for (const p of c.placed) if (!p.plan.done) checkFit(c, p);
  checkOneAtATime(c);
  checkRoom(c);
}
