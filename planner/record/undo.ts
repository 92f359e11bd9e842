// Why an entry of the record cannot be taken back: it is not there, or what stands would no longer hold together.
import type { House } from '../model/index.ts';
import { brewsOf, jarsOf, type RecordEntry } from './entry.ts';
import { readLedger, standing } from './fold.ts';
import type { Refusal } from './refusal.ts';

/** The conflict of taking entry `no` back by `undo`, with the way out; null: it can be. */
export function undoConflict(
  undo: RecordEntry,
  no: number,
  entries: readonly RecordEntry[],
  house: House,
): Refusal | null {
  const entry = entries.find((one) => one.no === no);
  const about = { field: 'entry', value: String(no) };
  if (entry === undefined) {
    const last = entries.reduce((most, one) => Math.max(most, one.no), 0);
    return {
      code: 'no-such-entry',
      ...about,
      bound: last === 0 ? 'the record is empty' : `1 to ${last}`,
      message: `The record has no entry ${no}.`,
      remedy: 'Look the number up in the record.',
    };
  }
  if (!standing(entries).includes(entry)) {
    return {
      code: 'already-undone',
      ...about,
      message: `Entry ${no} has been taken back already.`,
      remedy: 'To have it again, take back the entry that took it back.',
    };
  }
  const after = [...entries, undo];
  const clash = readLedger(after).clashes[0];
  const rest =
    clash === undefined
      ? orphan(after, house)
      : { no: clash.entry.no, says: clash.refusal.message };
  if (rest === null) return null;
  return {
    code: 'others-rest-on-it',
    ...about,
    message: `With entry ${no} taken back, entry ${rest.no} no longer holds: ${rest.says}`,
    remedy: `Take entry ${rest.no} back first.`,
  };
}

/** A standing entry about a brew or jar that only news had added, and that is added no longer. */
function orphan(
  entries: readonly RecordEntry[],
  house: House,
): { no: number; says: string } | null {
  const added = (list: readonly RecordEntry[]) => ({
    brews: list.flatMap(({ fact }) => (fact.kind === 'brew-added' ? [fact.row.brew] : [])),
    jars: list.flatMap(({ fact }) => (fact.kind === 'jar-found' ? [fact.row.jar] : [])),
  });
  const ever = added(entries);
  const stands = standing(entries);
  const now = added(stands);
  const lost = (names: readonly string[], kept: readonly string[], entered: readonly string[]) =>
    new Set(names.filter((name) => !kept.includes(name) && !entered.includes(name)));
  const brews = lost(
    ever.brews,
    now.brews,
    house.brews.map((brew) => brew.brew),
  );
  const jars = lost(
    ever.jars,
    now.jars,
    house.jars.map((jar) => jar.jar),
  );
  for (const { no, fact } of stands) {
    const brew = brewsOf(fact).find((name) => brews.has(name));
    if (brew !== undefined) return { no, says: `there is no brew called ${brew} any more.` };
    const jar = jarsOf(fact).find((name) => jars.has(name));
    if (jar !== undefined) return { no, says: `there is no jar called ${jar} any more.` };
  }
  return null;
}
