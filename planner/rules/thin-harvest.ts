// Regret, where a house asks for slack: more drawn from a harvest than its low value holds.
import { cropSpread } from '../timeline/crop-spread.ts';
import { brewName, brewSubject, costByBrew, money } from './rule.ts';

export const thinHarvest = costByBrew({
  id: 'thin-harvest',
  title: 'Harvests that may fall short',
  level: 'cost',
  follows: 'harvest',
  part: 'risk',
  unit: 'money',
  weight: {
    home: 8,
    nano: 96,
    unit: 'currency a harvest',
    says: 'How much dearer a plan may be for a harvest that is enough even if it is a small one.',
    source: 'a house choice',
  },
  says: 'Where slack days are asked for, a harvest from which more is drawn than its low value holds costs.',
  at(t, b, weight, found) {
    const p = t.problem;
    if (p.settings.slackDays <= 0 || p.brews[b]?.harvested) return;
    const drawn = t.drawnMl[p.jars.length + b] as number;
    const low = (t.cropMl[b] as number) / cropSpread(p, t.yeast[b] as number);
    if (drawn > low + 1e-6) found(money(p, (weight * (drawn - low)) / drawn), b, Math.round(low));
  },
  subject: brewSubject,
  explain: (t, f) =>
    `${Math.round(t.drawnMl[t.problem.jars.length + f.subject] as number)} mL are drawn out of ${brewName(t, f.subject)}, which may give only ${f.other} mL.`,
  remedy: () => 'Draw one of the pitches from another harvest, or keep packs at hand.',
});
