// What the command line understands, and what it says to what it does not.
import { expect, test } from 'vitest';
import { readArguments } from '../../../api/command/arguments.ts';

const DEFAULTS = { folder: 'season', ics: null, json: false, steps: null, seed: 1, today: null };

test.each([
  [['season'], {}],
  [['season', '--json'], { json: true }],
  [['--ics', 'a.ics', 'season'], { ics: 'a.ics' }],
  [['season', '--ics=a.ics'], { ics: 'a.ics' }],
  [['--steps', '0', '--seed', '4294967295', 'season'], { steps: 0, seed: 4_294_967_295 }],
  [['season', '--today', '2027-01-04'], { today: '2027-01-04' }],
  [['--', '--json'], { folder: '--json' }],
])('%j is understood', (args, asked) => {
  expect(readArguments(args)).toEqual({ kind: 'asked', asked: { ...DEFAULTS, ...asked } });
});

test.each([[['--help']], [['-h', 'season']]])('%j asks for help', (args) => {
  expect(readArguments(args)).toEqual({ kind: 'help' });
});

test.each([
  [[], ['Name the season’s folder']],
  [['a', 'b'], ['“b” is too much']],
  [['season', '--jsn'], ['There is no option --jsn']],
  [['season', '-x'], ['There is no option -x']],
  [['season', '--ics'], ['--ics needs a value']],
  [['season', '--ics', '--json'], ['--ics needs a value']],
  [['season', '--json=yes'], ['--json takes no value']],
  [['season', '--seed', '1', '--seed', '2'], ['--seed stands there twice']],
  [
    ['season', '--steps', '-5'],
    ['--steps is “-5”; it must be a whole number from 0 to 1000000000.'],
  ],
  [['season', '--steps', '1e3'], ['--steps is “1e3”']],
  [['season', '--seed', '4294967296'], ['--seed is “4294967296”']],
  [['season', '--today', '2027-02-30'], ['--today is “2027-02-30”']],
  // all at once
  [
    ['--jsn', '--steps', 'x', '--today', 'y'],
    ['--jsn', '--steps is', '--today is', 'Name the season'],
  ],
])('%j is answered with a sentence for each mistake', (args, says) => {
  const read = readArguments(args);
  if (read.kind !== 'wrong') throw new Error(`understood as ${JSON.stringify(read)}`);
  expect(read.sentences).toHaveLength(says.length);
  for (const part of says) expect(read.sentences.join('\n')).toContain(part);
});
