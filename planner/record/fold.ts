// A record of entries folded to what holds now: facts, pins and tasks done.
import type { Facts, Overlay, Pin } from '../model/index.ts';
import type { DoneTask } from '../tasks/index.ts';
import { conflict } from './conflicts.ts';
import { doubtsOf } from './doubts.ts';
import type { RecordEntry } from './entry.ts';
import { emptyLedger, type Ledger, write } from './ledger.ts';
import { overlayOf } from './overlay.ts';
import type { Refusal } from './refusal.ts';

export type RecordState = {
  facts: Facts;
  /** What is held fast or ruled out of brews that are not brewed yet. */
  pins: Pin[];
  /** What news changed about the house: `houseNow` lays it over the house that was entered. */
  overlay: Overlay;
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
  const open = (brew: string) => !ledger.brewed.has(brew) && !ledger.dropped.has(brew);
  const doubts = doubtsOf(ledger);
  return {
    facts: {
      brewed: [...ledger.brewed.values()].map(({ fact }) => ({
        ...fact,
        state: doubts.of({ kind: 'beer', brew: fact.brew }).state,
      })),
      harvested: [...ledger.harvested.values()].map(({ fact }) => ({
        ...fact,
        state: doubts.of({ kind: 'harvest', brew: fact.brew }).state,
      })),
      notBefore: [...ledger.notBefore]
        .filter(([brew]) => open(brew))
        .map(([brew, { day }]) => ({ brew, day })),
      begun: [...ledger.begun.values()].map(({ fact }) => fact).filter((fact) => open(fact.brew)),
      bought: ledger.bought.map(({ line }) => line),
      goneJars: [...ledger.gone.keys()],
      measured: [...ledger.counted.values()].map(({ no: _no, ...count }) => count),
      passed: [...ledger.passed].map(([brew, { day }]) => ({ brew, day })),
      lostPacks: ledger.lostPacks,
    },
    pins: pinsOf(ledger).filter((pin) => open(pin.brew)),
    overlay: overlayOf(ledger, doubts),
    done: [...ledger.done].map(([key, { day }]) => ({ key, day })),
    entries: [...entries],
  };
}

function pinsOf(ledger: Ledger): Pin[] {
  const barred = (brew: string) => [...(ledger.forbidden.get(brew)?.values() ?? [])];
  return [...new Set([...ledger.pins.keys(), ...ledger.forbidden.keys()])].flatMap((brew) => {
    const held = ledger.pins.get(brew)?.pin;
    const forbidden = barred(brew).map(({ source }) => source);
    if (held === undefined && forbidden.length === 0) return [];
    return [{ ...(held ?? { brew, day: null, tank: null, source: null }), forbidden }];
  });
}
