// The command as a brewer runs it: the built program in its own process, on real folders.
import { spawn } from 'node:child_process';
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import ICAL from 'ical.js';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readFolder } from '../../api/folder/index.ts';
import { Plan, tasks } from '../../planner/index.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const season = (name: string) => join(root, 'tests', 'seasons', name);

type Ended = { code: number | null; stdout: string; stderr: string };

function ran(program: string, args: string[], cwd = root): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { cwd, stdio: ['ignore', 'pipe', 'pipe'] });
    let stdout = '';
    let stderr = '';
    child.stdout.setEncoding('utf8').on('data', (text) => {
      stdout += text;
    });
    child.stderr.setEncoding('utf8').on('data', (text) => {
      stderr += text;
    });
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, stdout, stderr }));
  });
}

const planned = (...args: string[]) =>
  ran(process.execPath, [join('api', 'start.mjs'), 'plan', ...args]);

// Enough to see that it works; how good the plans are is tested elsewhere.
const QUICK = ['--steps', '300'];

let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'barmline-plan-'));
  // The first run may have to build.
  await planned('--help');
}, 120_000);
afterAll(() => rm(folder, { recursive: true }));

test.each([
  ['lantern-shed', 24],
  ['quay-seven', 60],
])('%s: a table, chains and tasks on stdout', async (name, brews) => {
  const { code, stdout } = await planned(season(name), ...QUICK);
  expect(code).toBe(0);
  expect(stdout).toMatch(new RegExp(`^\\d+ of ${brews} brews placed`, 'm'));
  for (const heading of ['Where the yeast goes', 'Harvests', 'Next tasks', 'Cash saved']) {
    expect(stdout).toContain(heading);
  }
  const { house } = await readFolder(season(name));
  for (const { brew } of house?.brews ?? []) expect(stdout).toContain(brew);
});

test('--json prints one plan of the published shape and nothing else on stdout', async () => {
  const { code, stdout } = await planned(season('lantern-shed'), '--json', ...QUICK);
  expect(code).toBe(0);
  const plan = Plan.parse(JSON.parse(stdout));
  expect(plan).toMatchObject({ house: 'Lantern Shed', seed: 1, steps: 300, today: '2027-01-03' });
});

test('npm run plan -- FOLDER --json keeps npm itself off stdout', async () => {
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const args = ['run', 'plan', '--', 'lantern-shed', '--json', ...QUICK];
  // from another folder of the project: paths are meant from where the brewer stands
  const { code, stdout } = await ran(npm, args, join(root, 'tests', 'seasons'));
  expect(code).toBe(0);
  expect(Plan.parse(JSON.parse(stdout)).house).toBe('Lantern Shed');
});

test('the same folder, seed and steps give the same bytes; --today and --seed are heeded', async () => {
  const [once, again, other] = await Promise.all([
    planned(season('lantern-shed'), '--json', ...QUICK),
    planned(season('lantern-shed'), '--json', ...QUICK),
    planned(season('lantern-shed'), '--json', ...QUICK, '--seed', '7', '--today', '2027-01-05'),
  ]);
  expect(again.stdout).toBe(once.stdout);
  expect(JSON.parse(other.stdout)).toMatchObject({ seed: 7, today: '2027-01-05' });
});

test('--ics writes every task of the plan as a calendar that an independent parser reads', async () => {
  const file = join(folder, 'lantern.ics');
  const { code, stdout } = await planned(season('lantern-shed'), '--ics', file, '--json', ...QUICK);
  expect(code).toBe(0);
  const { house } = await readFolder(season('lantern-shed'));
  if (house === null) throw new Error('not read');
  const wanted = tasks(Plan.parse(JSON.parse(stdout)), house);
  const events = new ICAL.Component(ICAL.parse(await readFile(file, 'utf8'))).getAllSubcomponents(
    'vevent',
  );
  const titles = events.map((event) => String(event.getFirstPropertyValue('summary'))).sort();
  expect(titles).toEqual(
    wanted.map((task) => (task.done ? `Done: ${task.title}` : task.title)).sort(),
  );
  expect(new Set(events.map((event) => event.getFirstPropertyValue('uid'))).size).toBe(
    events.length,
  );
});

// The places of the faults that were put into tests/seasons/twenty-faults, and a word of what is said.
const FAULTS: [place: string, says: RegExp][] = [
  ['house.json:4:timeZone', /Europe\/Dublinn/],
  ['house.json:13:deliveryCost', /-6; it must be a number from 0/],
  ['house.json:16:rules.gravityCeilng', /Rename it to gravityCeiling/],
  ['brews.csv:1:colour', /column “colour” that is not known/],
  ['brews.csv:2:og', /1048.*1\.048/s],
  ['brews.csv:2:volume_l', /20 L; the tanks of this house take 8 to 12 L/],
  ['brews.csv:3:og', /If this is °P, write the specific gravity: 1\.045/],
  ['brews.csv:4:og', /1\.5; it must be a number from 0\.98 to 1\.2/],
  ['brews.csv:4:not_before', /after its ready_by/],
  ['brews.csv:5:ibu', /-36/],
  ['brews.csv:5:not_before', /06\/02\/2027.*YYYY-MM-DD/s],
  ['brews.csv:5:yeast', /“Ferry Yeast”, which no row/],
  ['brews.csv:6:fg', /not below its og/],
  ['brews.csv:6:dry_hop_day', /leaves the tank after 12/],
  ['brews.csv:6:not_before', /no open brew day/],
  ['brews.csv:7:value', /missing/],
  ['brews.csv:7:brew_on', /before the season’s “from”/],
  ['tanks.csv:3:tank', /two tanks named “Keg A”/],
  ['tanks.csv:4:bottom_outlet', /maybe/],
  ['tanks.csv:4:min_c', /above its max_c/],
  ['yeasts.csv:2:min_c', /above its max_c/],
  ['yeasts.csv:3:packs_on_hand', /whole number/],
  ['jars.csv:2:measured_viability', /0\.93 for 93 %/],
  ['jars.csv:3:harvested_on', /day of the calendar/],
  ['jars.csv:3:state', /sound, watch, suspect/],
  ['jars.csv:3:yeast', /Write “Harbour Lager”/],
];

test('a folder full of faults: every one at once, exit code 2, nothing planned and nothing written', async () => {
  const before = await readdir(folder);
  const { code, stdout, stderr } = await planned(
    season('twenty-faults'),
    '--json',
    '--ics',
    join(folder, 'never.ics'),
  );
  expect(code).toBe(2);
  expect(stdout).toBe('');
  const said = stderr.split(/^(?=\S+\.(?:csv|json):)/m);
  for (const [place, says] of FAULTS) {
    const block = said.find((text) => text.startsWith(`${place}\n`)) ?? '';
    expect(block, place).toMatch(says);
    expect(block.replace(/\s+/g, ' '), `${place} names what to do`).toMatch(/→ [A-Z].*\./);
  }
  expect(stderr).toContain(`${FAULTS.length} errors in`);
  expect(stderr).not.toMatch(/\bat .*\.(js|ts|mjs):\d+/);
  expect(await readdir(folder)).toEqual(before);
});

test.each([
  [['--jsn', season('lantern-shed')], 'There is no option --jsn'],
  [[], 'Name the season’s folder'],
  [['no-such-folder'], 'There is no folder no-such-folder.'],
  [[season('lantern-shed'), '--steps', 'many'], '--steps is “many”'],
  [[season('lantern-shed'), '--ics', join('no', 'such', 'folder', 'a.ics')], 'there is no folder'],
  [[season('lantern-shed'), '--ics', root], 'which is a folder'],
])('%j ends with a sentence and code 2', async (args, says) => {
  const { code, stdout, stderr } = await planned(...args);
  expect(stderr).toContain(says);
  expect(code).toBe(2);
  expect(stdout).toBe('');
  expect(stderr).not.toContain('    at ');
});
