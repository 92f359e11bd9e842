// What has happened stays: brewed brews keep their day, tank and source.
import { brewName, brewSubject, type HardRule } from './rule.ts';

export const factsStay: HardRule = {
  id: 'facts-stay',
  title: 'What happened stays',
  level: 'hard',
  unit: 'facts',
  says: 'Brewed brews, harvested jars and finished tasks are facts; no plan changes them.',
  check(t, found) {
    t.problem.brews.forEach((brew, b) => {
      const done = brew.done;
      if (!done) return;
      if (!t.placed[b]) found(1, b, 0);
      else if (t.day[b] !== done.day || t.tank[b] !== done.tank) found(1, b, 1);
      else if (t.source[b] !== done.source || t.yeast[b] !== done.yeast) found(1, b, 2);
    });
  },
  subject: brewSubject,
  explain: (t, f) =>
    f.other === 0
      ? `${brewName(t, f.subject)} has been brewed but is missing from the plan.`
      : `${brewName(t, f.subject)} has been brewed otherwise than this plan says.`,
  remedy: (t, f) => `If that is wrong, take back the news about ${brewName(t, f.subject)}.`,
};
