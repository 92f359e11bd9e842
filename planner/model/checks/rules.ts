// Checks of what a house says about rules: only rules that exist, and only those that may be changed so.
import { RULES } from '../../rules/index.ts';
import { nearest, type Report } from './report.ts';

const RELAXABLE = RULES.flatMap((rule) =>
  rule.level === 'hard' && rule.relaxedTo !== undefined ? [rule.id] : [],
);

const WEIGHTED = RULES.flatMap((rule) => {
  if (rule.level === 'hard') return rule.relaxedTo === undefined ? [] : [rule.id];
  return rule.level === 'left-out' || rule.weight === null ? [] : [rule.id];
});

function advice(id: string, known: readonly string[]): string {
  const meant = nearest(id, known);
  return meant === null ? 'Correct the name, or remove it.' : `Write ${meant}, or remove it.`;
}

/** Weights and relaxed rules name rules of the planner. */
export function checkRuleNames(report: Report): void {
  const { relaxed, weights } = report.draft.head;
  relaxed?.forEach((id, at) => {
    if (RELAXABLE.includes(id)) return;
    const exists = RULES.some((rule) => rule.id === id);
    report.say({
      code: exists ? 'rule-not-relaxable' : 'unknown-rule',
      at: ['relaxed', at],
      value: id,
      bound: `one of ${RELAXABLE.join(', ')}`,
      message: exists
        ? `${report.field('relaxed')} names the rule “${id}”, which no house can relax.`
        : `${report.field('relaxed')} names the rule “${id}”, which does not exist.`,
      remedy: exists ? 'Remove it.' : advice(id, RELAXABLE),
    });
  });
  for (const id of Object.keys(weights ?? {})) {
    if (WEIGHTED.includes(id)) continue;
    report.say({
      code: 'unknown-weight',
      at: ['weights', id],
      value: id,
      bound: `one of ${WEIGHTED.join(', ')}`,
      message: `${report.field('weights')} names “${id}”, which is no rule that has a weight.`,
      remedy: advice(id, WEIGHTED),
    });
  }
}
