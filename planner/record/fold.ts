// A record of entries folded to what holds now: facts, pins and tasks done.
import type { Facts, Pin } from '../model/index.ts';
import type { DoneTask } from '../tasks/index.ts';
import { conflict } from './conflicts.ts';
import type { RecordEntry } from './entry.ts';
import { emptyLedger, type Ledger, write } from './ledger.ts';
import type { Refusal } from './refusal.ts';

export type RecordState = {
  facts: Facts;
  /** What is held fast of brews that are not brewed yet. */
  pins: Pin[];
  done: DoneTask[];
  /** The record that this was folded from, in order. */
  entries: readonly RecordEntry[];
};

/** The entries that hold: not taken back, or taken back by an entry that was itself taken back. */
export function standing(entries: readonly RecordEntry[]): RecordEntry[] {
  const takenBack = new Set<number>();
  // An entry can only be taken back by a later one, so from the end on each one's fate is known when it is met.
  for (const entry of [...entries].reverse()) {
    if (entry.fact.kind === 'undone' && !takenBack.has(entry.no)) takenBack.add(entry.fact.entry);
  }
  return entries.filter((entry) => !takenBack.has(entry.no));
}

/** Reads the standing entries in order; those that contradict what came before are told and left out. */
export function readLedger(entries: readonly RecordEntry[]): {
  ledger: Ledger;
  clashes: { entry: RecordEntry; refusal: Refusal }[];
} {
  const ledger = emptyLedger();
  const clashes: { entry: RecordEntry; refusal: Refusal }[] = [];
  for (const entry of standing(entries)) {
    const refusal = conflict(ledger, entry);
    if (refusal === null) write(ledger, entry);
    else clashes.push({ entry, refusal });
  }
  return { ledger, clashes };
}

/**
 * What a record says now. The same entries give the same state; an entry that was taken back leaves no trace but its
 * own lines in `entries`. A brew that has been brewed is held by that: pins and slips of it are spent.
 */
export function foldRecord(entries: readonly RecordEntry[]): RecordState {
  const { ledger } = readLedger(entries);
  const open = (brew: string) => !ledger.brewed.has(brew);
  return {
    facts: {
      brewed: [...ledger.brewed.values()].map(({ fact }) => fact),
      harvested: [...ledger.harvested.values()].map(({ fact }) => fact),
      notBefore: [...ledger.notBefore]
        .filter(([brew]) => open(brew))
        .map(([brew, { day }]) => ({ brew, day })),
      begun: [...ledger.begun.values()].map(({ fact }) => fact).filter((fact) => open(fact.brew)),
      bought: ledger.bought.map(({ line }) => line),
      goneJars: [...ledger.gone.keys()],
    },
    pins: [...ledger.pins.values()].map(({ pin }) => pin).filter((pin) => open(pin.brew)),
    done: [...ledger.done].map(([key, { day }]) => ({ key, day })),
    entries: [...entries],
  };
}
