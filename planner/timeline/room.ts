// What the house has only so much of, day by day: the shelf, the starter vessels, the kettle.
import { FAR, type Problem } from './problem.ts';
import type { Timeline } from './timeline.ts';

/** The last day, not included, on which a jar of the shelf that nobody uses stands there. */
export function shelfJarLeaves(p: Problem, j: number): number {
  const jar = p.jars[j];
  if (!jar || jar.gone) return p.today;
  return Math.max(p.today, jar.harvestedDay + p.settings.maxStorageDays);
}

/** Jars coming (+) and going (−) by day from today on; `shelf` is all zero between calls. Returns the last day touched. */
function stand(t: Timeline, from: number, until: number, jars: number, last: number): number {
  const today = t.problem.today;
  const a = (from > today ? from : today) - today;
  const z = until - today;
  if (z <= a) return last;
  const { shelf } = t;
  shelf[a] = (shelf[a] as number) + jars;
  shelf[z] = (shelf[z] as number) - jars;
  return z > last ? z : last;
}

/** Counts the jars in the cold store from today on and keeps the worst day. */
export function fillShelf(p: Problem, t: Timeline): void {
  const nJars = p.jars.length;
  let last = -1;
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    const source = t.source[b] as number;
    if (source < 0) continue;
    const use = t.useDay[b] as number;
    last =
      source < nJars
        ? stand(t, p.today, use, 1, last)
        : stand(t, t.harvestDay[source - nJars] as number, use, t.drawJars[b] as number, last);
  }
  for (let j = 0; j < nJars; j++) {
    if (!t.draws[j]) last = stand(t, p.today, shelfJarLeaves(p, j), 1, last);
  }
  for (let y = 0; y < t.keep.length; y++) {
    const source = t.keep[y] as number;
    if (source < 0) continue;
    const from = source < nJars ? p.today : (t.harvestDay[source - nJars] as number);
    last = stand(t, from, p.to + 1, t.keepJars[y] as number, last);
  }
  if (p.settings.reserve > 0) {
    const end = p.days.first + p.days.count;
    for (let b = 0; b < t.reserveUntil.length; b++) {
      const until = t.reserveUntil[b] as number;
      if (until > 0) last = stand(t, t.harvestDay[b] as number, Math.min(until, end), 1, last);
    }
  }
  const { shelf } = t;
  const most = p.house.store.maxJars;
  let now = 0;
  let over = 0;
  let overDay = 0;
  for (let i = 0; i <= last; i++) {
    now += shelf[i] as number;
    shelf[i] = 0;
    if (now - most > over) {
      over = now - most;
      overDay = p.today + i;
    }
  }
  t.shelfOver = over;
  t.shelfOverDay = overDay;
}

/** Counts the starters that stand at once from today on and keeps the worst day; `vessels` is all zero between calls. */
export function fillVessels(p: Problem, t: Timeline): void {
  const { vessels } = t;
  let last = -1;
  for (let i = 0; i < t.orderCount; i++) {
    const b = t.order[i] as number;
    if ((t.starterLitres[b] as number) <= 0 || t.done[b]) continue;
    // the vessel is held on the day of the pitch too
    const a = Math.max(0, (t.starterStart[b] as number) - p.today);
    const z = (t.day[b] as number) + 1 - p.today;
    if (z <= a) continue;
    vessels[a] = (vessels[a] as number) + 1;
    vessels[z] = (vessels[z] as number) - 1;
    if (z > last) last = z;
  }
  const most = p.house.starterGear.vessels;
  let now = 0;
  let over = 0;
  let overDay = 0;
  for (let i = 0; i <= last; i++) {
    now += vessels[i] as number;
    vessels[i] = 0;
    if (now - most > over) {
      over = now - most;
      overDay = p.today + i;
    }
  }
  t.startersOver = over;
  t.startersOverDay = overDay;
}

/** Lays the turns of the kettle on the brew day and, where they do not fit, on the brew days right after it. */
export function fillKettle(
  p: Problem,
  t: Timeline,
  laid?: (brew: number, day: number, turns: number) => void,
): void {
  const cap = p.house.brewsPerDay;
  const { carryBrew, carryTurns } = t;
  const first = p.days.first;
  let carried = 0;
  let next = 0;
  let day = -FAR;
  t.turnsOver = 0;
  t.turnsOverDay = 0;
  while (next < t.orderCount || carried > 0) {
    const startDay = next < t.orderCount ? (t.day[t.order[next] as number] as number) : FAR;
    const carryDay = carried > 0 ? (p.days.brewDayAfter[day - first] as number) : FAR;
    day = Math.min(startDay, carryDay);
    while (next < t.orderCount && t.day[t.order[next] as number] === day) {
      const b = t.order[next++] as number;
      carryBrew[carried] = b;
      carryTurns[carried++] = p.brews[b]?.turns ?? 1;
    }
    // every brew under way takes at least one turn a day, those begun earlier take what is left first
    let spare = cap - carried;
    if (spare < 0) {
      // what was really brewed is no choice, however many turns it took
      let choices = 0;
      for (let i = 0; i < carried; i++) if (!t.done[carryBrew[i] as number]) choices++;
      const over = Math.min(-spare, choices);
      if (over > 0 && t.turnsOver === 0) t.turnsOverDay = day;
      t.turnsOver += over;
      spare = 0;
    }
    let kept = 0;
    for (let i = 0; i < carried; i++) {
      const wants = carryTurns[i] as number;
      const more = Math.min(spare, wants - 1);
      spare -= more;
      const b = carryBrew[i] as number;
      // the season's last brew day bounds every turn; a brew begun after it is the window's business
      if (day > p.to && (t.day[b] as number) < day && !t.done[b]) {
        if (t.turnsOver === 0) t.turnsOverDay = day;
        t.turnsOver += 1 + more;
      }
      laid?.(carryBrew[i] as number, day, 1 + more);
      if (wants - 1 - more > 0) {
        carryBrew[kept] = carryBrew[i] as number;
        carryTurns[kept++] = wants - 1 - more;
      }
    }
    carried = kept;
  }
}
