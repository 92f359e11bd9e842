// The record while it is read: who was brewed, what was harvested, what was drawn, by which entry.
import type {
  BegunFact,
  Brew,
  BrewedFact,
  CultureRef,
  Facts,
  HarvestedFact,
  IsoDay,
  Jar,
  Pin,
  SlurryRef,
  SourceRef,
  YeastCount,
} from '../model/index.ts';
import { shelfKey, taskKey } from '../tasks/context.ts';
import type { RecordEntry } from './entry.ts';

/** A thing of the record and the entry that it was told in. */
export type Told<T> = T & { no: number };

export type BoughtLine = { yeast: string; packs: number; arrivesOn: IsoDay };
export type Mark = { of: CultureRef; as: 'suspect' | 'frozen' | 'sound' | 'counted' };
export type Count = {
  of: SlurryRef;
  day: IsoDay;
  viability: number | null;
  densityBPerMl: number | null;
};
export type Held = Omit<Pin, 'forbidden'>;

export type Ledger = {
  brewed: Map<string, Told<{ fact: BrewedFact }>>;
  harvested: Map<string, Told<{ fact: HarvestedFact }>>;
  slow: Map<string, Told<{ until: IsoDay }>>;
  gravity: Map<string, Told<{ og: number; fg: number | null }>>;
  hopped: Map<string, Told<{ day: IsoDay }>>;
  passed: Map<string, Told<{ day: IsoDay }>>;
  notBefore: Map<string, Told<{ day: IsoDay }>>;
  added: Map<string, Told<{ row: Brew }>>;
  dropped: Map<string, Told<object>>;
  resized: Map<string, Told<{ volumeL: number }>>;
  found: Map<string, Told<{ row: Jar }>>;
  gone: Map<string, Told<{ day: IsoDay }>>;
  /** By `cultureKey`: the last count of each. */
  counted: Map<string, Told<Count>>;
  counts: YeastCount[];
  /** In the order in which they were told. */
  marks: Told<Mark>[];
  tanksOut: Told<{ tank: string; from: IsoDay; to: IsoDay }>[];
  closed: Map<IsoDay, Told<object>>;
  pins: Map<string, Told<{ pin: Held }>>;
  /** By brew, then by `sourceKey`. */
  forbidden: Map<string, Map<string, Told<{ source: SourceRef }>>>;
  done: Map<string, Told<{ day: IsoDay }>>;
  bought: Told<{ line: BoughtLine }>[];
  begun: Map<string, Told<{ fact: BegunFact }>>;
  lostPacks: Facts['lostPacks'];
};

export function emptyLedger(): Ledger {
  return {
    brewed: new Map(),
    harvested: new Map(),
    slow: new Map(),
    gravity: new Map(),
    hopped: new Map(),
    passed: new Map(),
    notBefore: new Map(),
    added: new Map(),
    dropped: new Map(),
    resized: new Map(),
    found: new Map(),
    gone: new Map(),
    counted: new Map(),
    counts: [],
    marks: [],
    tanksOut: [],
    closed: new Map(),
    pins: new Map(),
    forbidden: new Map(),
    done: new Map(),
    bought: [],
    begun: new Map(),
    lostPacks: [],
  };
}

/** One text for a jar, a harvest or a beer; different ones never share it. */
export const cultureKey = (of: CultureRef): string =>
  `${of.kind} ${of.kind === 'jar' ? of.jar : of.brew}`;
/** The same for a source of yeast. */
export const sourceKey = (of: SourceRef): string =>
  of.kind === 'fresh' ? 'fresh' : cultureKey(of);

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
    case 'discarded':
      takeOut(ledger, fact.brew, fact.ml);
      break;
    case 'slow':
      ledger.slow.set(fact.brew, { until: fact.until, no });
      break;
    case 'gravity':
      ledger.gravity.set(fact.brew, { og: fact.og, fg: fact.fg, no });
      break;
    case 'lag':
      // hindsight alone reads it, out of the entry
      break;
    case 'hopped':
      ledger.hopped.set(fact.brew, { day: fact.day, no });
      tick(taskKey('dry-hop', fact.brew), fact.day);
      break;
    case 'passed':
      ledger.passed.set(fact.brew, { day: fact.day, no });
      ledger.marks.push({ of: { kind: 'beer', brew: fact.brew }, as: 'sound', no });
      break;
    case 'not-before':
      ledger.notBefore.set(fact.brew, { day: fact.day, no });
      break;
    case 'brew-added':
      ledger.added.set(fact.row.brew, { row: fact.row, no });
      break;
    case 'brew-dropped':
      ledger.dropped.set(fact.brew, { no });
      break;
    case 'resized':
      ledger.resized.set(fact.brew, { volumeL: fact.volumeL, no });
      break;
    case 'jar-found':
      ledger.found.set(fact.row.jar, { row: fact.row, no });
      break;
    case 'jar-gone':
      ledger.gone.set(fact.jar, { day: fact.day, no });
      tick(shelfKey(fact.jar), fact.day);
      break;
    case 'measured': {
      const { of, day, viability, densityBPerMl } = fact;
      const was = ledger.counted.get(cultureKey(of));
      ledger.counted.set(cultureKey(of), {
        of,
        day: viability === null ? (was?.day ?? day) : day,
        viability: viability ?? was?.viability ?? null,
        densityBPerMl: densityBPerMl ?? was?.densityBPerMl ?? null,
        no,
      });
      if (viability !== null) ledger.marks.push({ of, as: 'counted', no });
      if (fact.count !== null) ledger.counts.push(fact.count);
      break;
    }
    case 'marked':
      ledger.marks.push({ of: fact.of, as: fact.as, no });
      break;
    case 'tank-out':
      ledger.tanksOut.push({ tank: fact.tank, from: fact.from, to: fact.to, no });
      break;
    case 'day-closed':
      ledger.closed.set(fact.day, { no });
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
      unpin(ledger, fact.brew, fact.what ?? null);
      break;
    case 'source-forbidden': {
      const barred = ledger.forbidden.get(fact.brew) ?? new Map();
      barred.set(sourceKey(fact.source), { source: fact.source, no });
      ledger.forbidden.set(fact.brew, barred);
      break;
    }
    case 'source-allowed':
      ledger.forbidden.get(fact.brew)?.delete(sourceKey(fact.source));
      break;
    case 'begun':
      ledger.begun.set(fact.begun.brew, { fact: fact.begun, no });
      break;
    case 'starter-failed':
      failStarter(ledger, fact.brew, fact.day, no);
      break;
    case 'bought':
      for (const line of fact.lines) ledger.bought.push({ line, no });
      break;
    case 'packs-late': {
      ledger.bought = ledger.bought.map((one) =>
        one.line.yeast === fact.yeast && one.line.arrivesOn === fact.was
          ? { line: { ...one.line, arrivesOn: fact.arrivesOn }, no }
          : one,
      );
      break;
    }
    case 'ticked':
    case 'undone':
      break;
  }
  if (news.kind === 'task-done') tick(news.task, news.day);
}

/** mL leave a harvest; what was pitched out of it was there. */
function takeOut(ledger: Ledger, brew: string, ml: number): void {
  const was = ledger.harvested.get(brew);
  if (was === undefined) return;
  const left = Math.max(drawnMl(ledger, brew), was.fact.settledMl - ml);
  ledger.harvested.set(brew, { fact: { ...was.fact, settledMl: left }, no: was.no });
}

function unpin(ledger: Ledger, brew: string, what: 'day' | 'tank' | 'source' | null): void {
  const was = ledger.pins.get(brew);
  if (was === undefined) return;
  const pin = { ...was.pin, ...(what === null ? {} : { [what]: null }) };
  const idle = pin.day === null && pin.tank === null && pin.source === null;
  if (what === null || idle) ledger.pins.delete(brew);
  else ledger.pins.set(brew, { pin, no: was.no });
}

/** The starter is gone with what was in it: an opened jar's remainder counts as thrown away. */
function failStarter(ledger: Ledger, brew: string, day: IsoDay, no: number): void {
  const begun = ledger.begun.get(brew)?.fact;
  if (begun === undefined) return;
  ledger.begun.delete(brew);
  ledger.done.delete(taskKey('starter', brew));
  for (const step of [1, 2]) ledger.done.delete(taskKey('chill-decant', brew, step));
  const { source } = begun;
  if (source.kind === 'jar') ledger.gone.set(source.jar, { day, no });
  if (source.kind === 'harvest') takeOut(ledger, source.brew, source.drawMl);
  if (source.kind === 'fresh' && source.packs > 0) {
    const { packs, packsFromHand } = source;
    ledger.lostPacks.push({ yeast: begun.yeast, packs, packsFromHand });
  }
}
