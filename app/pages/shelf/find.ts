// Finds what an address names: a jar by the code on its lid, or a jar, a harvest or a beer by its name.
import type { Culture, Shelf, StandingJar } from '../../../planner/index.ts';
import type { ShelfView } from '../../router.ts';
import { keyOf, nameOf } from './tree.ts';

export type Found = {
  culture: Culture;
  /** The jar itself, where it stands or is to come. */
  jar: StandingJar | null;
  /** All jars of it that stand or are to come. */
  jars: StandingJar[];
};

/** null: nothing is called so. */
export function findOn(shelf: Shelf, view: ShelfView, name: string): Found | null {
  const jars = [...shelf.jars, ...shelf.toCome];
  const ofCulture = (culture: Culture | undefined, jar: StandingJar | null): Found | null =>
    culture === undefined
      ? null
      : { culture, jar, jars: jars.filter((one) => keyOf(one.of) === keyOf(culture.of)) };
  if (view === 'code') {
    const code = name.trim().toUpperCase();
    const jar = jars.find((one) => one.code === name) ?? jars.find((one) => one.code === code);
    const key = jar === undefined ? null : keyOf(jar.of);
    const culture =
      key === null
        ? shelf.cultures.find(({ of }) => of.kind === 'jar' && of.jar === name)
        : shelf.cultures.find(({ of }) => keyOf(of) === key);
    return ofCulture(culture, jar ?? null);
  }
  const culture = shelf.cultures.find(({ of }) => of.kind === view && nameOf(of) === name);
  const jar = view === 'jar' ? jars.find(({ of }) => of.kind === 'jar' && of.jar === name) : null;
  return ofCulture(culture, jar ?? null);
}

/** The letters that begin the codes of each harvest, by its key. */
export function harvestCodes(shelf: Shelf): Map<string, string> {
  return new Map(
    [...shelf.jars, ...shelf.toCome].flatMap(({ of, code }) =>
      of.kind === 'harvest' ? [[keyOf(of), code.slice(0, 3)]] : [],
    ),
  );
}
