// Sentences are written with ISO days; people read weekdays. One place turns the one into the other.
import type { Finding, Plan } from '../model/index.ts';
import { capital } from '../record/words.ts';
import { sayDay } from '../tasks/days.ts';

const ISO_DAY = /\b\d{4}-\d{2}-\d{2}\b/g;

/** The same sentence with its days as people say them: `Sat 23 January`; a sentence begins with a capital. */
export const spoken = (sentence: string): string =>
  capital(sentence.replace(ISO_DAY, (day) => sayDay(day)));

/** A finding whose sentences can be read out. */
export const spokenFinding = (finding: Finding): Finding => ({
  ...finding,
  says: spoken(finding.says),
  remedy: spoken(finding.remedy),
});

const says = <T extends { says: string }>(x: T): T => ({ ...x, says: spoken(x.says) });

/** A plan whose sentences can be read out; days that programs read stay as they are. */
export function spokenPlan(plan: Plan): Plan {
  return {
    ...plan,
    brews: plan.brews.map((brew) => ({
      ...brew,
      fallback: says(brew.fallback),
      hazards: brew.hazards.map(says),
      why: brew.why.map(spoken),
      alternative: brew.alternative && {
        ...says(brew.alternative),
        brokenBy: brew.alternative.brokenBy && spoken(brew.alternative.brokenBy),
      },
    })),
    leftOut: plan.leftOut.map((out) => ({
      ...out,
      blockedBy: out.blockedBy.map(says),
      wayOut: spoken(out.wayOut),
    })),
    chains: plan.chains.map((chain) => ({ ...chain, endsBecause: spoken(chain.endsBecause) })),
    broken: plan.broken.map(spokenFinding),
    costs: plan.costs.map(says),
    notes: plan.notes.map(spoken),
  };
}
