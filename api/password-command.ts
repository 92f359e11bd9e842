// `npm run password`: sets the password that opens the doors, or takes it away.
import { fileURLToPath } from 'node:url';
import { passwordProblem, removePassword, setPassword } from './doors/password.ts';
import { askHidden, readAll } from './doors/typing.ts';
import { dataFolderOf } from './environment.ts';

const say = (line: string) => process.stderr.write(`${line}\n`);

const root = fileURLToPath(
  new URL(import.meta.url.endsWith('.ts') ? '..' : '../..', import.meta.url),
);

/** Typed twice at a terminal; else the first line of what is piped in. Null: the two differ. */
async function readNew(): Promise<string | null> {
  if (!process.stdin.isTTY) return (await readAll(process.stdin)).split(/\r?\n/)[0] ?? '';
  const once = await askHidden('New password: ');
  const again = await askHidden('Once more:    ');
  return once === again ? once : null;
}

/** Runs the command. @returns the exit code: 0 done, 1 not, 2 not understood */
export async function run(args: readonly string[]): Promise<number> {
  const folder = dataFolderOf(process.env, root);
  if (args.length === 1 && args[0] === '--remove') {
    removePassword(folder);
    say(`There is no password in ${folder} any more: the server answers to this machine alone.`);
    return 0;
  }
  if (args.length > 0) {
    say('npm run password asks for a new password; npm run password -- --remove takes it away.');
    return 2;
  }
  const password = await readNew();
  const problem = password === null ? 'The two are not the same.' : passwordProblem(password);
  if (password === null || problem !== null) {
    say(`${problem} Nothing was changed.`);
    return 1;
  }
  try {
    await setPassword(folder, password);
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    say(`The password could not be stored in ${folder} (${detail}). Nothing was changed.`);
    return 1;
  }
  say(
    `The password is set in ${folder}. It counts at once; whoever was signed in has to sign in again.`,
  );
  return 0;
}
