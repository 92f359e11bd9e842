// Rounds of: start the real server, write and re-plan, kill it at a random moment, look at what it left.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { wrongAfterwards } from './afterwards.ts';
import { startServer } from './server.ts';
import { type Acknowledged, dice, nothingYet, writeOn } from './user.ts';

export type Killed = {
  rounds: number;
  /** Acknowledged writes over all rounds. */
  acknowledged: number;
  /** Rounds in which the server was killed while it was still starting. */
  whileStarting: number;
  wrong: string[];
};

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

const size = ({ news, houses, feeds, adopted }: Acknowledged) =>
  news.size + houses.size + feeds.size + adopted.length;

/** Waits until more writes than that were acknowledged, ten seconds at most. */
async function moreThan(kept: Acknowledged, count: number): Promise<void> {
  const end = Date.now() + 10_000;
  while (size(kept) <= count && Date.now() < end) await pause(2);
}

/** @param say one line a round, for whoever watches */
export async function killRounds(
  rounds: number,
  seed: number,
  say: (line: string) => void = () => undefined,
): Promise<Killed> {
  const folder = mkdtempSync(join(tmpdir(), 'barmline-kill-'));
  const roll = dice(seed);
  const kept = nothingYet();
  const result: Killed = { rounds, acknowledged: 0, whileStarting: 0, wrong: [] };
  const today = { BARMLINE_TODAY: '2027-01-02' };
  try {
    // The first start plans the demo house; from then on there is something to lose.
    const first = await startServer(folder, today);
    await first.up;
    first.child.kill('SIGKILL');
    await first.gone;
    for (let round = 1; round <= rounds; round += 1) {
      const server = await startServer(folder, today);
      if (roll() < 0.15) {
        result.whileStarting += 1;
        await pause(roll() * 500);
      } else {
        await server.up;
        const users = [1, 2, 3].map(() => writeOn(server.base, round, roll, kept));
        await moreThan(kept, size(kept) + Math.floor(roll() * 15));
        await pause(roll() * 60);
        server.child.kill('SIGKILL');
        await Promise.all(users);
      }
      server.child.kill('SIGKILL');
      await server.gone;
      const wrong = await wrongAfterwards(folder, kept);
      result.wrong.push(...wrong.map((line) => `round ${round}: ${line}`));
      result.acknowledged = size(kept);
      say(`round ${round}: ${result.acknowledged} writes acknowledged, ${wrong.length} wrong`);
      if (wrong.length > 0) break;
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  return result;
}
