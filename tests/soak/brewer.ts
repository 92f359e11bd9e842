// A brewer who lets a brew slip, waits for the draft, adopts it, and later takes the slip back: re-plans that reach the feed.
import { ask, dice } from '../kill/user.ts';

export type Lived = { slips: number; takenBack: number; runs: number; adopted: number };

type Planned = { plan: { brews: { brew: string; day: string }[] } | null };
type Draft = { draft: { id: string; stale: boolean } | null };

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** How many slips stand at once: a season of nothing but slips would be no season. */
const STANDING = 3;

function nextDay(day: string): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
}

/** Waits until no run is under way. */
async function quiet(base: string): Promise<void> {
  for (;;) {
    const { json } = await ask<{ run: { state: string } | null }>(base, 'GET', '/api/runs/current');
    if (json.run?.state !== 'running') return;
    await pause(200);
  }
}

/** Adopts the draft that news led to; where others wrote meanwhile, plans once more. */
async function adoptAnswer(base: string, lived: Lived): Promise<void> {
  for (let attempt = 0; attempt < 3; attempt += 1) {
    await quiet(base);
    const { json } = await ask<Draft>(base, 'GET', '/api/draft');
    if (json.draft === null) return;
    if (!json.draft.stale) {
      const { status } = await ask(base, 'POST', '/api/draft/adopt', { draft: json.draft.id });
      if (status === 200) {
        lived.adopted += 1;
        return;
      }
    }
    await ask(base, 'POST', '/api/runs', { steps: 2000, replace: true });
    lived.runs += 1;
  }
}

/** Goes on until the server no longer answers, or until it is told to stop. */
export async function brewOn(
  base: string,
  seed: number,
  lived: Lived,
  goesOn: () => boolean,
): Promise<void> {
  const roll = dice(seed);
  const standing: number[] = [];
  try {
    while (goesOn()) {
      const oldest = standing.length >= STANDING ? standing.shift() : undefined;
      if (oldest === undefined) {
        const { json } = await ask<Planned>(base, 'GET', '/api/plan');
        const brews = json.plan?.brews ?? [];
        const slipped = brews[Math.floor(roll() * brews.length)];
        if (slipped !== undefined) {
          const news = { kind: 'slipped', brew: slipped.brew, to: nextDay(slipped.day) };
          const told = await ask<{ entry: number }>(base, 'POST', '/api/news', news);
          if (told.status === 201) standing.push(told.json.entry);
          lived.slips += 1;
        }
      } else {
        await ask(base, 'POST', '/api/news', { kind: 'undone', entry: oldest });
        lived.takenBack += 1;
      }
      lived.runs += 1;
      await adoptAnswer(base, lived);
      await pause(1000);
    }
  } catch {
    // The server is gone.
  }
}
