// Families of yeast as the record tells them: what was pitched from what, what comes of what, what came from one harvest.
import type { CultureRef } from '../model/index.ts';
import { cultureKey, type Ledger } from './ledger.ts';

type Kin = Pick<Ledger, 'brewed' | 'harvested'>;

/** What went into a beer (null: fresh packs), or the beer that slurry was harvested from (null: a jar of the shelf). */
export function parentOf(kin: Kin, of: CultureRef): CultureRef | null {
  if (of.kind === 'jar') return null;
  if (of.kind === 'harvest') return { kind: 'beer', brew: of.brew };
  const source = kin.brewed.get(of.brew)?.fact.source;
  if (source === undefined || source.kind === 'fresh') return null;
  return source.kind === 'jar'
    ? { kind: 'jar', jar: source.jar }
    : { kind: 'harvest', brew: source.brew };
}

/** The beers pitched from slurry, or the slurry harvested from a beer, in the order in which they were told. */
export function childrenOf(kin: Kin, of: CultureRef): CultureRef[] {
  if (of.kind === 'beer') {
    return kin.harvested.has(of.brew) ? [{ kind: 'harvest', brew: of.brew }] : [];
  }
  const own = cultureKey(of);
  return [...kin.brewed.keys()].flatMap((brew): CultureRef[] => {
    const beer: CultureRef = { kind: 'beer', brew };
    const parent = parentOf(kin, beer);
    return parent !== null && cultureKey(parent) === own ? [beer] : [];
  });
}

/** It and all that comes of it, nearest first. */
export function withDescendants(kin: Kin, of: CultureRef): CultureRef[] {
  const found: CultureRef[] = [of];
  const seen = new Set([cultureKey(of)]);
  for (let at = 0; at < found.length; at++) {
    for (const child of childrenOf(kin, found[at] as CultureRef)) {
      if (seen.has(cultureKey(child))) continue;
      seen.add(cultureKey(child));
      found.push(child);
    }
  }
  return found;
}

/** What goes on watch when something is suspect: what it came from, the beer behind that, and its siblings. */
export function onWatchWith(kin: Kin, of: CultureRef): CultureRef[] {
  const parent = parentOf(kin, of);
  if (parent === null) return [];
  const own = cultureKey(of);
  const siblings = childrenOf(kin, parent).filter((one) => cultureKey(one) !== own);
  const beer = parent.kind === 'harvest' ? parentOf(kin, parent) : null;
  return [parent, ...(beer === null ? [] : [beer]), ...siblings];
}
