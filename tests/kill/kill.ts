// `npm run kill`: 200 rounds unless a number is given; ends with code 1 when anything was lost.
import { killRounds } from './rounds.ts';

const rounds = Number(process.argv[2] ?? 200);
const seed = Number(process.argv[3] ?? Math.floor(Math.random() * 1e9));
if (!Number.isInteger(rounds) || rounds < 1 || !Number.isInteger(seed)) {
  process.stderr.write('How many rounds, as a whole number: npm run kill -- 200\n');
  process.exit(2);
}
const say = (line: string) => process.stdout.write(`${line}\n`);
say(`${rounds} rounds, seed ${seed}`);
const killed = await killRounds(rounds, seed, say);
for (const line of killed.wrong) say(line);
say(
  `${killed.rounds} kills (${killed.whileStarting} while starting), ` +
    `${killed.acknowledged} writes acknowledged, ${killed.wrong.length} lost or by half`,
);
process.exitCode = killed.wrong.length > 0 ? 1 : 0;
