// What is written on the lid of a jar, and how a jar is named in a list of amounts.
import type { PlannedHarvest } from '../model/index.ts';
import { type CodedJar, outOf, sayWhatFor } from './context.ts';
import { sayDayOnLabel } from './days.ts';
import { sayMl } from './words.ts';

/** The line on the lid: enough to know the jar by a year later. */
export function label(jar: CodedJar, one: PlannedHarvest): string {
  return [
    jar.code,
    outOf(one),
    one.yeast,
    `generation ${one.generation} (a fresh pack is 0)`,
    sayDayOnLabel(one.day),
    sayMl(jar.ml),
    sayWhatFor(jar),
    `discard by ${sayDayOnLabel(one.discardBy)}`,
  ].join(' · ');
}

export function jarFor(jar: CodedJar): string {
  return `Jar ${jar.code}${jar.for === null ? ',' : ''} ${sayWhatFor(jar)}`;
}
