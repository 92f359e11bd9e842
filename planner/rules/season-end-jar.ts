// Worth something: one sound jar of each strain when the season ends.
import { givenGeneration } from '../timeline/kept.ts';
import { cropDensity } from '../timeline/pitch.ts';
import type { Timeline } from '../timeline/timeline.ts';
import { beerOf, type CostRule, hoppedDaysBefore, money, sourceName } from './rule.ts';
import { doubtful } from './suspect.ts';

export const seasonEndJar: CostRule = {
  id: 'season-end-jar',
  title: 'A jar for the next season',
  level: 'cost',
  follows: 'plan',
  part: 'risk',
  unit: 'money',
  weight: null,
  says: 'One sound jar of each strain at the end of the season is worth a little.',
  check(t, _weight, found) {
    const worth = money(t.problem, t.problem.settings.endJarValue);
    if (worth === 0) return;
    for (let y = 0; y < t.keep.length; y++) if (sound(t, y)) found(-worth, y, t.keep[y] as number);
  },
  subject: (t, f) => t.problem.yeasts[f.subject]?.row.yeast ?? '?',
  explain: (t, f) =>
    `A jar of ${t.problem.yeasts[f.subject]?.row.yeast} is kept for the next season: ${sourceName(t, f.other)}.`,
  remedy: () => 'Nothing to mend.',
};

/** A kept jar counts only if it could still be pitched on the season's last day. */
function sound(t: Timeline, y: number): boolean {
  const source = t.keep[y] as number;
  if (source < 0) return false;
  const p = t.problem;
  const s = p.settings;
  const nJars = p.jars.length;
  const isJar = source < nJars;
  // null: what was kept of a starter has been in no beer
  const beer = beerOf(t, source);
  const strain = isJar ? p.jars[source]?.yeast : t.yeast[source - nJars];
  const generation = isJar ? (p.jars[source]?.generation ?? 0) : givenGeneration(t, source - nJars);
  const from = isJar
    ? (p.jars[source]?.harvestedDay ?? 0)
    : (t.harvestDay[source - nJars] as number);
  const strong = (beer?.ogP ?? 0) > s.strongBeerP ? s.maxGenerationAfterStrong : s.maxGeneration;
  const limit = Math.min(s.maxGeneration, p.yeasts[y]?.maxGeneration ?? s.maxGeneration, strong);
  const density = isJar ? (p.jars[source]?.density ?? 1) : cropDensity(p, t, source - nJars);
  return (
    strain === y &&
    (isJar ? !p.jars[source]?.gone : t.placed[source - nJars] === 1) &&
    generation <= limit &&
    from <= p.to &&
    p.to - from <= s.maxStorageDays &&
    (t.keepViability[y] as number) >= s.viabilityFloor &&
    (beer?.ogSg ?? 0) < s.gravityCeiling - 1e-9 &&
    (beer?.souring ?? null) === null &&
    (beer?.additions.length ?? 0) === 0 &&
    hoppedDaysBefore(t, source) === 0 &&
    !doubtful(t, source) &&
    // less than half a pitch is no jar worth keeping
    (t.keepMl[y] as number) * (t.keepViability[y] as number) * density >=
      (p.keepNeedB[y] as number) / 2
  );
}
