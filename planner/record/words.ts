// How the things of the record are said in a sentence: sources, jars, harvests and beers.
import type { CultureRef, SourceRef } from '../model/index.ts';

/** `fresh packs`, `jar J1`, `the harvest of Millrace`. */
export function saySourceRef(source: SourceRef): string {
  return source.kind === 'fresh' ? 'fresh packs' : sayCulture(source);
}

/** `jar J1`, `the harvest of Millrace`, `Millrace`. */
export function sayCulture(of: CultureRef): string {
  if (of.kind === 'jar') return `jar ${of.jar}`;
  return of.kind === 'harvest' ? `the harvest of ${of.brew}` : of.brew;
}

/** The same text with a capital letter. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
