// Which beers and harvests are suspect or on watch, worked out from what was marked and from the family of each.
import type { CultureRef, CultureState, Overlay } from '../model/index.ts';
import { onWatchWith, withDescendants } from './family.ts';
import { cultureKey, type Ledger, type Mark, type Told } from './ledger.ts';

export type Doubt = {
  state: CultureState;
  /** The mark that it goes back to. */
  root: Told<Mark> | null;
};

const SOUND: Doubt = { state: 'sound', root: null };

export type Doubts = {
  of(culture: CultureRef): Doubt;
  /** The mark that stands on the thing itself. */
  own(culture: CultureRef): Told<Mark> | null;
  jarStates: Overlay['jarStates'];
};

/**
 * Reads the marks in order. A suspicion holds until the thing itself is marked sound; being on watch ends when it is
 * passed after that. What descends from something suspect is suspect whatever was said of it.
 */
export function doubtsOf(ledger: Ledger): Doubts {
  const own = standingMarks(ledger.marks);
  const suspect = new Map<string, Told<Mark>>();
  const watch = new Map<string, Told<Mark>>();
  const jarStates: Overlay['jarStates'] = [];
  for (const mark of ledger.marks) {
    const key = cultureKey(mark.of);
    if (mark.as === 'sound' || mark.as === 'counted') {
      pass(watch, mark);
      if (mark.as === 'sound' && mark.of.kind === 'jar') {
        jarStates.push({ jar: mark.of.jar, state: 'sound', mates: false });
      }
      continue;
    }
    if (own.get(key) !== mark) continue;
    if (mark.as === 'frozen') {
      watch.set(key, mark);
      continue;
    }
    for (const kin of withDescendants(ledger, mark.of)) suspect.set(cultureKey(kin), mark);
    for (const kin of onWatchWith(ledger, mark.of)) {
      watch.set(cultureKey(kin), mark);
      // what came out of a beer on watch is held back with it
      if (kin.kind === 'beer') watch.set(cultureKey({ kind: 'harvest', brew: kin.brew }), mark);
    }
    if (mark.of.kind === 'jar') jarStates.push({ jar: mark.of.jar, state: 'suspect', mates: true });
  }
  for (const key of watch.keys()) {
    if (suspect.has(key) || !key.startsWith('jar ')) continue;
    jarStates.push({ jar: key.slice('jar '.length), state: 'watch', mates: false });
  }
  const of = (culture: CultureRef): Doubt => {
    const key = cultureKey(culture);
    const bad = suspect.get(key);
    if (bad !== undefined) return { state: 'suspect', root: bad };
    const held = watch.get(key);
    return held === undefined ? SOUND : { state: 'watch', root: held };
  };
  return { of, own: (culture) => own.get(cultureKey(culture)) ?? null, jarStates };
}

/** A thing passed comes off watch; a beer passed takes its harvest along. A frozen one has to be counted. */
function pass(watch: Map<string, Told<Mark>>, mark: Told<Mark>): void {
  const passed: CultureRef[] = [mark.of];
  if (mark.of.kind === 'beer') passed.push({ kind: 'harvest', brew: mark.of.brew });
  for (const one of passed) {
    const held = watch.get(cultureKey(one));
    if (held === undefined) continue;
    if ((held.as === 'frozen') === (mark.as === 'counted')) watch.delete(cultureKey(one));
  }
}

/** The suspicions and frosts that have not been lifted since, by thing. */
function standingMarks(marks: readonly Told<Mark>[]): Map<string, Told<Mark>> {
  const own = new Map<string, Told<Mark>>();
  for (const mark of marks) {
    const key = cultureKey(mark.of);
    const was = own.get(key);
    if (mark.as === 'suspect') own.set(key, mark);
    else if (mark.as === 'frozen' && was?.as !== 'suspect') own.set(key, mark);
    else if (mark.as === 'sound' && was?.as === 'suspect') own.delete(key);
    else if (mark.as === 'counted' && was?.as === 'frozen') own.delete(key);
  }
  return own;
}
