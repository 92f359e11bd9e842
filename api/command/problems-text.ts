// Problems as they are read in a terminal: place, sentence, advice, and what of the season is sound.
import type { House, Problem } from '../../planner/index.ts';
import { plain, wrapped } from './table.ts';

const count = (amount: number, one: string) => `${amount} ${one}${amount === 1 ? '' : 's'}`;

/** Each problem on its own lines; the advice stands by itself. */
export function problemLines(problems: readonly Problem[]): string[] {
  return problems.flatMap(({ path, level, message, remedy }) => [
    plain(`${path}${level === 'warning' ? ' (warning)' : ''}`),
    ...wrapped(message, '  '),
    ...wrapped(`→ ${remedy}`, '  '),
  ]);
}

/** What is said of a folder that cannot be planned. */
export function refusalText(
  folder: string,
  problems: readonly Problem[],
  rest: House | null,
): string {
  const errors = problems.filter((problem) => problem.level === 'error').length;
  const warnings = problems.length - errors;
  const sum = [count(errors, 'error'), ...(warnings > 0 ? [count(warnings, 'warning')] : [])];
  const sound = rest && [
    count(rest.brews.length, 'brew'),
    count(rest.tanks.length, 'tank'),
    count(rest.yeasts.length, 'yeast'),
    count(rest.jars.length, 'jar'),
  ];
  return `${[
    ...problemLines(problems),
    '',
    plain(`${sum.join(' and ')} in ${folder}: nothing was planned and nothing written.`),
    sound
      ? `Sound as it stands: ${sound.join(', ')}.`
      : 'Once house.json is sound, the rows of the other files can be shown.',
  ].join('\n')}\n`;
}
