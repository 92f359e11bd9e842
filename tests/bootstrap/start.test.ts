// From bare sources to a running program: what is prepared, and what is not prepared twice.
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { House } from '../../planner/index.ts';
import { copyOfProject, type Ended, ran, remove, root, start } from './copy.ts';

const LONG = 300_000;
// What a second start may take (issue: 'seconds'); other tests run beside, so the best of some tries.
const SECOND_START_S = 3;

async function bestOf(tries: number, run: () => Promise<Ended>): Promise<Ended> {
  let best = await run();
  for (let left = tries - 1; left > 0 && best.seconds > SECOND_START_S; left--) {
    const next = await run();
    if (next.seconds < best.seconds) best = next;
  }
  return best;
}

/** Makes Node say that it is another version than it is. */
const pretending = (version: string) => [
  '--import',
  `data:text/javascript,Object.defineProperty(process,'versions',{value:{...process.versions,node:'${version}'}})`,
];

describe('the version of Node', () => {
  test.each(['18.20.4', '20.18.3', '21.7.3', '22.11.0'])(
    '%s is too old: a sentence',
    async (version) => {
      const { code, stdout, stderr } = await ran([...pretending(version), 'api/start.mjs'], root);
      expect(stderr).toMatch(/^Barmline needs Node\.js 20\.19 or newer/);
      expect(stderr).toContain(`this is Node.js ${version}`);
      expect(stderr).not.toContain('    at ');
      expect([code, stdout]).toEqual([1, '']);
    },
  );

  test.each(['20.19.0', '22.12.0', '24.0.0'])('%s will do', async (version) => {
    const args = [...pretending(version), 'api/start.mjs', 'schema', 'house'];
    expect(await ran(args, root)).toMatchObject({ code: 0 });
  });
});

describe('building', () => {
  let copy = '';
  beforeAll(() => {
    copy = copyOfProject();
  });
  afterAll(() => remove(copy));
  const schema = () => ran(['api/start.mjs', 'schema', 'house'], copy);

  test(
    'builds once, with stdout kept free, and again only when a source has changed',
    async () => {
      const first = await schema();
      expect(first.stderr).toContain('Building the server');
      expect(JSON.parse(first.stdout)).toMatchObject({ $defs: { House: { type: 'object' } } });

      const second = await bestOf(3, schema);
      expect(second.stderr).toBe('');
      expect(second.stdout).toBe(first.stdout);
      expect(second.seconds).toBeLessThan(SECOND_START_S);

      const file = join(copy, 'planner', 'model', 'house.ts');
      const source = readFileSync(file, 'utf8');
      const changed = source.replace('Colour, EBC', 'Colour in EBC');
      expect(changed).not.toBe(source);
      writeFileSync(file, changed);
      const third = await schema();
      expect(third.stderr).toContain('Building the server');
      expect(third.stdout).toContain('Colour in EBC');

      // A build that fails says so and leaves no half of a build behind.
      appendFileSync(file, '\nexport const = 1;\n');
      const broken = await schema();
      expect(broken.code).toBe(1);
      expect(broken.stdout).toBe('');
      expect(broken.stderr).toMatch(
        /Building the server failed; what went wrong stands above\.\n$/,
      );
      writeFileSync(file, changed);
      expect((await schema()).stdout).toBe(third.stdout);
    },
    LONG,
  );
});

test('the printed schema takes what the model takes', async () => {
  const { stdout } = await ran(['api/start.mjs', 'schema'], root);
  const { house, plan } = JSON.parse(stdout);
  expect(Object.keys(house.$defs.House.properties)).toEqual(Object.keys(House.shape));
  expect(plan.$defs.Plan.properties.format).toMatchObject({ const: 'barmline-plan-1' });
});

describe('the server', () => {
  let copy = '';
  beforeAll(() => {
    copy = copyOfProject();
  });
  afterAll(() => remove(copy));

  test(
    'starts on nothing, stops on Ctrl-C, and opens what is there the second time',
    async () => {
      // A port that nobody else is likely to have; a taken one would end the start with a sentence.
      const port = 20_000 + (process.pid % 20_000);
      const variables = { BARMLINE_DATA: join(copy, 'data'), BARMLINE_PORT: String(port) };
      const page = `http://127.0.0.1:${port}/`;
      const opened = async (signal: NodeJS.Signals) => {
        const from = performance.now();
        const server = start(['api/start.mjs'], copy, variables);
        await server.until(page);
        const seconds = (performance.now() - from) / 1000;
        const answer = await fetch(page);
        const feed = /http:\S+\.ics/;
        server.kill(signal);
        const ended = await server.ended;
        expect(answer.status).toBe(200);
        expect(ended.code).toBe(0);
        return { ...ended, seconds, feed: feed.exec(ended.stdout)?.[0] };
      };
      const first = await opened('SIGINT');
      expect(first.stderr).toContain('Building the');
      expect(first.stdout).toContain('Where the yeast goes');
      expect(first.feed).toBeDefined();

      let second = await opened('SIGTERM');
      for (let tries = 0; tries < 2 && second.seconds > SECOND_START_S; tries++) {
        second = await opened('SIGINT');
      }
      expect(second.stderr).toBe('');
      expect(second.feed).toBe(first.feed);
      expect(second.stdout).not.toContain('planned …');
      expect(second.seconds).toBeLessThan(SECOND_START_S);
    },
    LONG,
  );
});
