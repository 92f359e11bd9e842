// The code on a jar's lid: three letters for the beer it was harvested from and a fourth sign for the jar, told apart by wet hands.
import type { House } from '../model/index.ts';

/**
 * Signs that are not taken for one another when they are written in haste, smeared, or read upside down on a lid.
 * Left out is all but one of each of: 0 O Q D, 1 I L, 2 Z, 3 E, 4 9, 5 S, 6 9 G, 8 B, M W, A V U.
 * Common practice, no source.
 */
export const LETTERS = 'ACEFHJKMNPRTXY';
const FIGURES = '245678';
/** Figures come first: most harvests fill few jars. */
const FOURTH = FIGURES + LETTERS;
/** Jars that are drawn count from the front of the signs, spare ones from the back. */
const EACH_WAY = FOURTH.length / 2;
const LEAVES = LETTERS.length ** 3;

/** Whether a text could be the code of a jar. */
export function looksLikeCode(text: string): boolean {
  return new RegExp(`^[${LETTERS}]{3}[${FOURTH}]*$`).test(text.toUpperCase());
}

/** FNV-1a over the code units of a name: the same on every machine (Fowler, Noll, Vo; RFC 9923). */
function hash(name: string): number {
  let h = 0x811c9dc5;
  for (let at = 0; at < name.length; at++) h = Math.imul(h ^ name.charCodeAt(at), 0x01000193);
  return h >>> 0;
}

function lettersOf(n: number): string {
  const letter = (at: number) => LETTERS[at % LETTERS.length] ?? '';
  const { length } = LETTERS;
  return letter(Math.floor(n / length / length)) + letter(Math.floor(n / length)) + letter(n);
}

export type JarCoder = {
  /** The three letters of a beer; also the code of what a harvest gave beyond the jars of the plan. */
  beer(brew: string): string;
  /** The code of a jar; `at` counts from 0, apart for jars that are drawn and for spare ones. */
  jar(brew: string, at: number, spare: boolean): string;
};

/**
 * Codes of all jars that a house's beers can give. They come of the names alone and not of the plan, so that a
 * label stays right when the plan changes; no two jars of the house share one, jars of its own list included. Of
 * two beers whose names fall together the later one on the list moves on to the next free letters.
 * @param more beers that are not on the house's list (any longer)
 */
export function jarCoder(
  house: Pick<House, 'brews' | 'jars'>,
  more: Iterable<string> = [],
): JarCoder {
  const taken = new Set(
    house.jars.flatMap(({ jar }) => (looksLikeCode(jar) ? [jar.toUpperCase().slice(0, 3)] : [])),
  );
  const beers = new Map<string, string>();
  for (const brew of [...house.brews.map((row) => row.brew), ...more]) {
    if (beers.has(brew)) continue;
    const start = hash(brew) % LEAVES;
    for (let step = 0; step < LEAVES; step++) {
      const letters = lettersOf((start + step) % LEAVES);
      if (taken.has(letters)) continue;
      taken.add(letters);
      beers.set(brew, letters);
      break;
    }
  }
  // No season has as many beers as there are letters (2,000 against 2,744): a name that is left stands for itself.
  const beer = (brew: string) => beers.get(brew) ?? brew;
  return { beer, jar: (brew, at, spare) => beer(brew) + fourth(at, spare) };
}

/** One sign for the first ten jars either way; from the eleventh on a fifth sign follows. */
function fourth(at: number, spare: boolean): string {
  const place = at % EACH_WAY;
  const sign = FOURTH[spare ? FOURTH.length - 1 - place : place] ?? '';
  const round = Math.floor(at / EACH_WAY);
  return round === 0 ? sign : sign + further(round - 1);
}

function further(n: number): string {
  const sign = FOURTH[n % FOURTH.length] ?? '';
  return n < FOURTH.length ? sign : further(Math.floor(n / FOURTH.length) - 1) + sign;
}
