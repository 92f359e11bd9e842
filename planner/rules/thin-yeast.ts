// Regret, where a house asks for slack: yeast whose low value is below the floor.
import { slurryAlive } from '../timeline/alive.ts';
import { FRESH } from '../timeline/problem.ts';
import { brewName, brewSubject, costByBrew, money, sourceNameOf } from './rule.ts';

/** Percent points below the floor that cost the weight once. */
const POINTS = 10;

export const thinYeast = costByBrew({
  id: 'thin-yeast',
  title: 'Yeast that may prove too weak',
  level: 'cost',
  follows: 'source',
  part: 'risk',
  unit: 'money',
  weight: {
    home: 3,
    nano: 36,
    unit: 'currency ten percent points',
    says: 'How much dearer a plan may be for yeast that is strong enough even if it keeps badly.',
    source: 'a house choice',
  },
  says: 'Where slack days are asked for, slurry whose low value is below the viability floor costs, if no starter wakes it.',
  at(t, b, weight, found) {
    const p = t.problem;
    const source = t.source[b] as number;
    if (p.settings.slackDays <= 0 || source === FRESH || (t.starterLitres[b] as number) > 0) return;
    const { low } = slurryAlive(p, t, source, t.useDay[b] as number);
    const short = (p.settings.viabilityFloor - low) * 100;
    if (short > 1e-9) found(money(p, (weight * short) / POINTS), b, Math.round(low * 100));
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${sourceNameOf(t, f.subject)} may be only ${f.other} % alive for ${brewName(t, f.subject)}; the floor is ${Math.round(t.problem.settings.viabilityFloor * 100)} %.`,
  remedy: () => 'Pitch it sooner, wake it with a starter, or count its cells.',
});
