// The real server killed twenty times under writes and re-plans; `npm run kill` does two hundred.
import { beforeAll, expect, test } from 'vitest';
import { buildServer } from '../../api/prepare.mjs';
import { killRounds } from './rounds.ts';

beforeAll(() => buildServer(), 240_000);

test('twenty kills: no acknowledged write is lost, the plan in force is whole', async () => {
  const killed = await killRounds(20, 7);
  expect(killed.wrong).toEqual([]);
  // With fewer there would have been nothing to lose.
  expect(killed.acknowledged).toBeGreaterThan(40);
}, 600_000);
