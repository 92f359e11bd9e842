// Only a strain that the brew accepts.
import { FRESH } from '../timeline/problem.ts';
import { brewName, brewSubject, hardByBrew, sourceBeer, yeastName } from './rule.ts';

export const acceptedStrain = hardByBrew({
  id: 'accepted-strain',
  title: 'A strain the brew accepts',
  level: 'hard',
  unit: 'brews',
  says: 'A brew is pitched only with a strain that it accepts, and slurry stays the strain it is.',
  at(t, b, found) {
    const nJars = t.problem.jars.length;
    const y = t.yeast[b] as number;
    if (!t.problem.brews[b]?.yeasts.includes(y)) found(1, b, 0);
    const source = t.source[b] as number;
    if (source === FRESH) return;
    const strain =
      source < nJars ? t.problem.jars[source]?.yeast : (t.yeast[source - nJars] as number);
    if (strain !== y) found(1, b, 1);
  },

  bars(t, b, source) {
    if (source === FRESH) return false;
    const nJars = t.problem.jars.length;
    const strain =
      source < nJars ? t.problem.jars[source]?.yeast : (t.yeast[source - nJars] as number);
    return strain !== t.yeast[b];
  },
  subject: brewSubject,
  explain: (t, f) =>
    f.other === 0
      ? `${brewName(t, f.subject)} does not accept ${yeastName(t, f.subject)}.`
      : `${brewName(t, f.subject)} wants ${yeastName(t, f.subject)}, but ${sourceBeer(t, f.subject)?.name ?? 'its source'} holds another strain.`,
  remedy: (t, f) => `Add the strain to those that ${brewName(t, f.subject)} accepts.`,
});
