// The plan in force with the news applied and nothing else moved: what a re-plan may never be worse than.
import type { Plan } from '../model/index.ts';
import { dayNumber } from '../timeline/calendar.ts';
import { KEPT } from '../timeline/kept.ts';
import { FRESH, type Problem, STARTER_SIZES } from '../timeline/problem.ts';
import { placeDone, Timeline } from '../timeline/timeline.ts';
import { unfold } from '../timeline/unfold.ts';

/** Brews that slipped go to their first possible day on or after it; brewed ones are where they were brewed. */
export function standingPlan(problem: Problem, plan: Plan): Timeline {
  const t = new Timeline(problem);
  const brewAt = new Map(problem.brews.map((b, i) => [b.name, i]));
  const tankAt = new Map(problem.tanks.map((k, i) => [k.name, i]));
  const yeastAt = new Map(problem.yeasts.map((y, i) => [y.row.yeast, i]));
  const jarAt = new Map(problem.jars.map((j, i) => [j.name, i]));
  const nJars = problem.jars.length;
  problem.brews.forEach((brew, b) => {
    t.yeast[b] = brew.yeasts[0] ?? 0;
    t.tank[b] = brew.tanks[0] ?? 0;
    t.day[b] = brew.days[0] ?? problem.from;
  });
  for (const was of plan.brews) {
    const b = brewAt.get(was.brew);
    const brew = b === undefined ? undefined : problem.brews[b];
    if (b === undefined || !brew) continue;
    const tank = tankAt.get(was.tank);
    const yeast = yeastAt.get(was.yeast);
    if (tank === undefined || yeast === undefined) continue;
    let day = brew.done ? brew.done.day : dayNumber(was.day);
    if (!brew.done && day < brew.earliest)
      day = brew.days.find((d) => d >= brew.earliest) ?? brew.earliest;
    if (!brew.done && brew.pinDay >= 0) day = brew.pinDay;
    t.placed[b] = 1;
    t.day[b] = day;
    t.tank[b] = brew.done ? brew.done.tank : brew.pinTank >= 0 ? brew.pinTank : tank;
    t.yeast[b] = yeast;
    t.source[b] = FRESH;
    if (was.source.kind === 'jar') t.source[b] = jarAt.get(was.source.jar) ?? FRESH;
    if (was.source.kind === 'harvest' && !dropped(problem, was.source)) {
      const from = brewAt.get(was.source.brew);
      t.source[b] = from === undefined ? FRESH : nJars + from;
    }
    // what is pinned or growing already is news too
    if (!brew.done && brew.pinSource >= FRESH) t.source[b] = brew.pinSource;
    const litres = was.starter?.litres ?? 0;
    const most = problem.house.starterGear.maxLitres;
    t.starter[b] =
      most > 0 ? Math.min(STARTER_SIZES, Math.round((litres / most) * STARTER_SIZES)) : 0;
    t.crop[b] = -1;
    const crop = plan.harvests.find((h) => h.brew === was.brew);
    if (crop?.ofStarter) {
      if (problem.settings.keptStarterJars > 0) t.crop[b] = KEPT;
    } else if (crop && problem.tanks[t.tank[b] as number]?.bottomOutlet) {
      // the crop choice that comes out on the day that was planned, as far after the pitch as it was
      const wanted = day + dayNumber(crop.day) - dayNumber(was.day);
      for (let k = 0; k <= 40; k++) {
        t.crop[b] = k;
        unfold(t);
        if ((t.harvestDay[b] as number) >= wanted) break;
        if ((t.harvestDay[b] as number) >= (t.emptied[b] as number)) break;
      }
      if ((t.harvestDay[b] as number) >= (t.emptied[b] as number)) t.crop[b] = -1;
    }
  }
  for (const h of plan.harvests) {
    const b = brewAt.get(h.brew);
    const y = yeastAt.get(h.yeast);
    if (b === undefined || y === undefined || !t.placed[b]) continue;
    if (h.jars.some((jar) => jar.for === null && jar.untilPassed === undefined))
      t.keep[y] = nJars + b;
  }
  for (const jar of plan.shelf) {
    const j = jarAt.get(jar.jar);
    const y = yeastAt.get(jar.yeast);
    if (j !== undefined && y !== undefined && jar.kept) t.keep[y] = j;
  }
  placeDone(t);
  unfold(t);
  return t;
}

/** Whether a plan took from a starter what this house keeps of none any longer; what is in its jar stays there. */
function dropped(
  problem: Problem,
  source: { brew: string; ofStarter?: true | undefined },
): boolean {
  if (!source.ofStarter || problem.settings.keptStarterJars > 0) return false;
  return !problem.brews.some((brew) => brew.name === source.brew && brew.keptStarter);
}
