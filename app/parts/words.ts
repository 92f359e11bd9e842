// Sentences about a brew that picture, table and reading line share, so that they say the same.
import type { PlannedBrew } from '../../planner/index.ts';
import { shortDay } from './days.ts';
import { litres, millilitres, type Units } from './units.ts';

/** 'one pack', '3 packs' */
export function count(n: number, one: string, many = `${one}s`): string {
  return n === 1 ? `1 ${one}` : `${n} ${many}`;
}

/** A share as whole percent: '86 %', never broken over lines. */
export function percent(share: number): string {
  return `${Math.round(share * 100)}\u00a0%`;
}

/** Where the yeast of a brew comes from, with how much: '180 mL out of Millrace', '2 fresh packs'. */
export function sourceWords(brew: PlannedBrew, units: Units): string {
  const source = brew.source;
  const starter = brew.starter ? ` and a starter of ${litres(brew.starter.litres, units)}` : '';
  if (source.kind === 'fresh') return `${count(source.packs, 'fresh pack')}${starter}`;
  const ml = millilitres(source.drawMl, units);
  if (source.kind === 'harvest' && source.ofStarter)
    return `${ml} kept from the starter of ${source.brew}${starter}`;
  const from = source.kind === 'jar' ? `jar ${source.jar}` : source.brew;
  return `${ml} of slurry out of ${from}${starter}`;
}

/** The generation as a brewer reads it; said with what it counts. */
export function generationWords(generation: number): string {
  return generation === 0 ? 'fresh (generation 0)' : `generation ${generation}`;
}

/** Everything that the picture says of a brew, in one breath; also its name for a screen reader. */
export function brewWords(brew: PlannedBrew, units: Units): string {
  const late = brew.daysLate > 0 ? `, ${count(brew.daysLate, 'day')} late` : '';
  const hop = brew.dryHopOn ? ` Dry-hopped ${shortDay(brew.dryHopOn)}.` : '';
  const style = brew.style === '' ? '' : `, ${brew.style}`;
  return (
    `${brew.brew}${style}: ${brew.done ? 'brewed' : 'brew'} ${shortDay(brew.day)} in ${brew.tank}, ` +
    `emptied ${shortDay(brew.emptiedOn)}, ready ${shortDay(brew.readyOn)}${late}. ` +
    `${brew.yeast}, ${generationWords(brew.generation)}, from ${sourceWords(brew, units)}; ` +
    `likely ${percent(brew.viability.likely)} alive (${percent(brew.viability.low)} to ${percent(brew.viability.high)}).${hop}`
  );
}
