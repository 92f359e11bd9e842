// A user who never stops: tells news, edits the house, adopts drafts, makes addresses, and notes all that was acknowledged.

/** What the server said yes to, and so may not lose. */
export type Acknowledged = {
  /** Number of the entry to the news that it was told. */
  news: Map<number, string>;
  /** Revision of the house to its name. */
  houses: Map<number, string>;
  feeds: Set<string>;
  adopted: string[];
};

export const nothingYet = (): Acknowledged => ({
  news: new Map(),
  houses: new Map(),
  feeds: new Set(),
  adopted: [],
});

type Named = { key: string; kind: string; done: boolean };

/** Numbers from 0 to 1 that are the same for the same seed (mulberry32). */
export function dice(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** One request as JSON. */
export async function ask<T>(
  base: string,
  method: string,
  path: string,
  body?: unknown,
  headers: Record<string, string> = {},
): Promise<{ status: number; json: T }> {
  const response = await fetch(`${base}${path}`, {
    method,
    headers: { 'Content-Type': 'application/json', ...headers },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  return { status: response.status, json: (await response.json()) as T };
}

/**
 * Writes until the server no longer answers, or until it is told to stop.
 * @param round told apart in the names that are written
 * @param pauseMs between two deeds
 */
export async function writeOn(
  base: string,
  round: number,
  roll: () => number,
  kept: Acknowledged,
  pauseMs = 0,
  goesOn: () => boolean = () => true,
): Promise<void> {
  try {
    for (let count = 0; goesOn(); count += 1) {
      const die = roll();
      if (die < 0.45) await tellTask(base, roll, kept);
      else if (die < 0.6) await slip(base, roll, kept);
      else if (die < 0.75) await rename(base, `Round ${round}, edit ${count}`, kept);
      else if (die < 0.9) await adopt(base, kept);
      else if (die < 0.95) await addFeed(base, kept);
      else await ask(base, 'POST', '/api/backups');
      if (pauseMs > 0) await new Promise((resolve) => setTimeout(resolve, pauseMs));
    }
  } catch {
    // The server is gone: what was under way was not acknowledged.
  }
}

async function tell(base: string, news: object, kept: Acknowledged): Promise<void> {
  const { status, json } = await ask<{ entry: number }>(base, 'POST', '/api/news', news);
  if (status === 201) kept.news.set(json.entry, JSON.stringify(news));
}

async function tellTask(base: string, roll: () => number, kept: Acknowledged): Promise<void> {
  const { json } = await ask<{ tasks: Named[]; today: string }>(base, 'GET', '/api/tasks');
  const open = json.tasks.filter(({ done, kind }) => !done && !/brew|harvest|hop/.test(kind));
  const task = open[Math.floor(roll() * open.length)];
  if (task === undefined) return;
  await tell(base, { kind: 'task-done', task: task.key, day: json.today }, kept);
}

async function slip(base: string, roll: () => number, kept: Acknowledged): Promise<void> {
  type Planned = { plan: { brews: { brew: string; day: string }[] } | null };
  const { json } = await ask<Planned>(base, 'GET', '/api/plan');
  const brews = json.plan?.brews ?? [];
  const brew = brews[Math.floor(roll() * brews.length)];
  if (brew !== undefined)
    await tell(base, { kind: 'slipped', brew: brew.brew, to: brew.day }, kept);
}

async function rename(base: string, name: string, kept: Acknowledged): Promise<void> {
  type Kept = { house: object; revision: number };
  const { json } = await ask<Kept>(base, 'GET', '/api/house');
  const saved = await ask<Kept>(
    base,
    'PUT',
    '/api/house',
    { ...json.house, name },
    { 'If-Match': String(json.revision) },
  );
  if (saved.status === 200) kept.houses.set(saved.json.revision, name);
}

async function adopt(base: string, kept: Acknowledged): Promise<void> {
  type Draft = { id: string; stale: boolean };
  const { json } = await ask<{ draft: Draft | null }>(base, 'GET', '/api/draft');
  if (json.draft === null || json.draft.stale) {
    await ask(base, 'POST', '/api/runs', { steps: 20, replace: true });
    return;
  }
  const { status } = await ask(base, 'POST', '/api/draft/adopt', { draft: json.draft.id });
  if (status === 200) kept.adopted.push(json.draft.id);
}

async function addFeed(base: string, kept: Acknowledged): Promise<void> {
  const made = await ask<{ made: { id: string } }>(base, 'POST', '/api/feeds', {});
  if (made.status === 201) kept.feeds.add(made.json.made.id);
}
