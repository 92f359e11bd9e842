// Which calendar programs of others this machine has, and how they are set up for one feed in a folder of its own.
import { execFile, execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { promisify } from 'node:util';

/** The interpreter that Debian's packages belong to. */
const PYTHON = '/usr/bin/python3';

const runs = (program: string, ...args: string[]) => spawnSync(program, args).status === 0;
export const hasPrograms = runs('khal', '--version') && runs('vdirsyncer', '--version');
export const hasIcalendar = runs(PYTHON, '-c', 'import icalendar');
export const INSTALL = 'apt-get install khal vdirsyncer python3-icalendar';

export type PythonEvent = {
  uid: string;
  summary: string;
  description: string;
  start: string;
  end: string;
  sequence: number;
  alarms: number;
};

/** Reads calendar files with python3-icalendar. @throws what it complains of */
export function readWithPython(files: readonly string[]): PythonEvent[][] {
  const script = join(import.meta.dirname, 'read.py');
  const options = { encoding: 'utf8', maxBuffer: 256 * 1024 * 1024 } as const;
  return JSON.parse(execFileSync(PYTHON, [script, ...files], options)) as PythonEvent[][];
}

export type Seen = { uid: string; start: string; end: string; title: string };

/**
 * A subscription: vdirsyncer fetches the feed into a folder, khal shows the folder. Nothing of the user's own is
 * touched. NOTE: vdirsyncer gives what it fetches over HTTP a UID of its own, made from the content.
 */
export async function subscribe(folder: string, address: string, timeZone: string) {
  const local = join(folder, 'calendar');
  mkdirSync(local, { recursive: true });
  const fetchConfig = join(folder, 'vdirsyncer.conf');
  writeFileSync(
    fetchConfig,
    [
      '[general]',
      `status_path = "${join(folder, 'status')}"`,
      '[pair barmline]',
      'a = "feed"',
      'b = "folder"',
      'collections = null',
      'conflict_resolution = "a wins"',
      '[storage feed]',
      'type = "http"',
      `url = "${address}"`,
      '[storage folder]',
      'type = "filesystem"',
      `path = "${local}"`,
      'fileext = ".ics"',
      '',
    ].join('\n'),
  );
  const showConfig = join(folder, 'khal.conf');
  writeFileSync(
    showConfig,
    [
      '[calendars]',
      '[[barmline]]',
      `path = ${local}`,
      'type = calendar',
      '[locale]',
      `local_timezone = ${timeZone}`,
      `default_timezone = ${timeZone}`,
      'timeformat = %H:%M',
      'dateformat = %Y-%m-%d',
      'longdateformat = %Y-%m-%d',
      'datetimeformat = %Y-%m-%dT%H:%M',
      'longdatetimeformat = %Y-%m-%dT%H:%M',
      '[sqlite]',
      `path = ${join(folder, 'khal.db')}`,
      '',
    ].join('\n'),
  );
  const env = { ...process.env, HOME: folder, XDG_CONFIG_HOME: folder, XDG_DATA_HOME: folder };
  // Not waited for in place: a test that stands still would lose its connections to the server.
  const run = async (program: string, ...args: string[]): Promise<string> => {
    const { stdout, stderr } = await promisify(execFile)(program, args, {
      env,
      maxBuffer: 64 * 1024 * 1024,
    });
    return stdout + stderr;
  };
  await run('vdirsyncer', '-c', fetchConfig, 'discover', 'barmline');
  return {
    /** Fetches the feed as it is now. */
    sync: () => run('vdirsyncer', '-c', fetchConfig, 'sync', 'barmline'),
    /** Reads a calendar file into khal's own calendar: an entry that is there is changed, never doubled. */
    take: (file: string) =>
      run('khal', '-c', showConfig, 'import', '--batch', '-a', 'barmline', file),
    /** Every entry that khal shows between two days. */
    list: async (from: string, to: string): Promise<Seen[]> => {
      const format = '@@{uid}\t{start}\t{end}\t{title}';
      const shown = await run(
        'khal',
        '-c',
        showConfig,
        'list',
        '--day-format',
        '',
        '--format',
        format,
        '--notstarted',
        from,
        to,
      );
      return shown
        .split('@@')
        .slice(1)
        .map((line) => {
          const [uid = '', start = '', end = '', title = ''] = line.trim().split('\t');
          return { uid, start, end, title };
        });
    },
  };
}
