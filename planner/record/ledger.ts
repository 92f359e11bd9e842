// The record while it is read: who was brewed, what was harvested, what was drawn, by which entry.
import type { BegunFact, BrewedFact, HarvestedFact, IsoDay, Pin } from '../model/index.ts';
import { shelfKey, taskKey } from '../tasks/context.ts';
import type { RecordEntry } from './entry.ts';

/** A thing of the record and the entry that it was told in. */
type Told<T> = T & { no: number };

export type BoughtLine = { yeast: string; packs: number; arrivesOn: IsoDay };

export type Ledger = {
  brewed: Map<string, Told<{ fact: BrewedFact }>>;
  harvested: Map<string, Told<{ fact: HarvestedFact }>>;
  notBefore: Map<string, Told<{ day: IsoDay }>>;
  gone: Map<string, Told<{ day: IsoDay }>>;
  pins: Map<string, Told<{ pin: Pin }>>;
  done: Map<string, Told<{ day: IsoDay }>>;
  bought: Told<{ line: BoughtLine }>[];
  begun: Map<string, Told<{ fact: BegunFact }>>;
};

export function emptyLedger(): Ledger {
  return {
    brewed: new Map(),
    harvested: new Map(),
    notBefore: new Map(),
    gone: new Map(),
    pins: new Map(),
    done: new Map(),
    bought: [],
    begun: new Map(),
  };
}

/** mL that recorded pitches drew from the harvest of a brew. */
export function drawnMl(ledger: Ledger, brew: string): number {
  let sum = 0;
  for (const { fact } of ledger.brewed.values()) {
    if (fact.source.kind === 'harvest' && fact.source.brew === brew) sum += fact.source.drawMl;
  }
  return sum;
}

/** Writes an entry into the ledger. It must not contradict it: ask `conflict` first. */
export function write(ledger: Ledger, entry: RecordEntry): void {
  const { fact, no, news } = entry;
  const tick = (key: string, day: IsoDay) => ledger.done.set(key, { day, no });
  switch (fact.kind) {
    case 'brewed':
      ledger.brewed.set(fact.brewed.brew, { fact: fact.brewed, no });
      tick(taskKey('brew-pitch', fact.brewed.brew), fact.brewed.day);
      break;
    case 'harvested':
      ledger.harvested.set(fact.harvested.brew, { fact: fact.harvested, no });
      tick(taskKey('harvest', fact.harvested.brew), fact.harvested.day);
      break;
    case 'read': {
      const was = ledger.harvested.get(fact.brew);
      if (was !== undefined) {
        const read = { ...was.fact, settledMl: fact.settledMl };
        ledger.harvested.set(fact.brew, { fact: read, no });
      }
      tick(taskKey('read-volume', fact.brew), fact.day);
      break;
    }
    case 'emptied': {
      const was = ledger.brewed.get(fact.brew);
      if (was !== undefined) {
        ledger.brewed.set(fact.brew, { fact: { ...was.fact, emptiedOn: fact.day }, no: was.no });
      }
      break;
    }
    case 'discarded': {
      const was = ledger.harvested.get(fact.brew);
      if (was !== undefined) {
        const left = Math.max(drawnMl(ledger, fact.brew), was.fact.settledMl - fact.ml);
        ledger.harvested.set(fact.brew, { fact: { ...was.fact, settledMl: left }, no: was.no });
      }
      break;
    }
    case 'not-before':
      ledger.notBefore.set(fact.brew, { day: fact.day, no });
      break;
    case 'jar-gone':
      ledger.gone.set(fact.jar, { day: fact.day, no });
      tick(shelfKey(fact.jar), fact.day);
      break;
    case 'pinned': {
      const was = ledger.pins.get(fact.pin.brew)?.pin;
      const pin = {
        brew: fact.pin.brew,
        day: fact.pin.day ?? was?.day ?? null,
        tank: fact.pin.tank ?? was?.tank ?? null,
        source: fact.pin.source ?? was?.source ?? null,
      };
      ledger.pins.set(pin.brew, { pin, no });
      break;
    }
    case 'unpinned':
      ledger.pins.delete(fact.brew);
      break;
    case 'begun':
      ledger.begun.set(fact.begun.brew, { fact: fact.begun, no });
      break;
    case 'bought':
      for (const line of fact.lines) ledger.bought.push({ line, no });
      break;
    case 'ticked':
    case 'undone':
      break;
  }
  if (news.kind === 'task-done') tick(news.task, news.day);
}
