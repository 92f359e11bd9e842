// The record as people read it: what was told, newest first, and which entry ticked which task.
import { shortDay } from '../../parts/days.ts';
import type { Told } from '../../queries/record.ts';
import type { TaskRow } from '../../queries/tasks.ts';

/** Entries that still hold: those taken back, and the taking back itself, are left out. */
export function standing(entries: readonly Told[]): Told[] {
  const undone = new Set<number>();
  // Later entries decide over earlier ones: a taking back can itself be taken back.
  for (const entry of entries.toReversed()) {
    if (entry.news.kind === 'undone' && !undone.has(entry.no)) undone.add(entry.news.entry);
  }
  return entries.filter((entry) => entry.news.kind !== 'undone' && !undone.has(entry.no));
}

/** Number of the entry that ticked a task, to take it back; null: the record does not say so itself. */
export function entryOfTask(task: TaskRow, entries: readonly Told[]): number | null {
  const ticked = standing(entries).findLast(({ news }) => {
    if (news.kind === 'task-done') return news.task === task.key;
    if (news.kind === 'brewed') return task.key === `brew-pitch:${news.brew}`;
    return news.kind === 'harvested' && task.key === `harvest:${news.brew}`;
  });
  return ticked?.no ?? null;
}

/** One piece of news in words. */
export function newsWords(
  { news, says }: Pick<Told, 'news' | 'says'>,
  titleOf: (task: string) => string | null,
): string {
  switch (news.kind) {
    case 'brewed': {
      const drawn =
        news.drawnMl === null ? '' : `, ${Math.round(news.drawnMl)} mL of slurry pitched`;
      return `${news.brew} was brewed on ${shortDay(news.day)}${drawn}`;
    }
    case 'slipped':
      return `${news.brew} slipped to ${shortDay(news.to)} or later`;
    case 'harvested':
      return `${news.brew} gave ${Math.round(news.settledMl)} mL on ${shortDay(news.day)}`;
    case 'jar-gone':
      return `Jar ${news.jar} is gone since ${shortDay(news.day)}`;
    case 'task-done':
      return `Done on ${shortDay(news.day)}: ${titleOf(news.task) ?? news.task}`;
    default:
      return says;
  }
}
