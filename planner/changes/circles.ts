// Reasons that lean on other brews' changes must not lead round in a circle: A moved for B, and B for A.
import type { Change } from '../model/index.ts';
import type { Reason } from './reason.ts';

/** A change with every reason that fits it, the weightiest first; the last rests on nothing else. */
export type Reasoned = Change & { reasons: readonly Reason[] };

/**
 * Gives each change its weightiest reason, but for one in every circle: that one gets the first of its reasons that
 * leads out of it. The same changes give the same reasons.
 */
export function withoutCircles(changes: readonly Reasoned[]): Change[] {
  const leansOn = new Map<string, Set<string>>();
  const given = new Map<Reasoned, string>();
  // who is put off leans on who comes before, and not the other way about
  for (const change of [...changes].sort((a, z) => Number(putOff(z)) - Number(putOff(a)))) {
    const { reasons } = change;
    const chosen = reasons.find(({ of }) => of === null || !reaches(leansOn, of, change.brew));
    if (chosen?.of != null) {
      const others = leansOn.get(change.brew) ?? new Set();
      leansOn.set(change.brew, others.add(chosen.of));
    }
    given.set(change, chosen?.says ?? change.reason);
  }
  return changes.map((change) => {
    const { reasons: _reasons, ...rest } = change;
    return { ...rest, reason: given.get(change) ?? rest.reason };
  });
}

const putOff = ({ kind, before, after }: Change): boolean =>
  kind === 'moved' && (after ?? '') > (before ?? '');

/** Whether the reasons given so far lead from one brew to another. */
function reaches(leansOn: Map<string, Set<string>>, from: string, to: string): boolean {
  const seen = new Set<string>([from]);
  for (const at of seen) {
    if (at === to) return true;
    for (const next of leansOn.get(at) ?? []) seen.add(next);
  }
  return false;
}
