// Random news about a season as it stands: what may be told of its brews, jars, tanks and days, sense or nonsense.
import fc from 'fast-check';
import type { House, News, Plan } from '../../planner/model/index.ts';
import { aBrew, aJar } from './season.ts';

/** What news is drawn from. */
export type Told = { house: House; plan: Plan; today: string };

/** One number decides each choice; the same numbers, the same news. */
export type Draw = (below: number) => number;

const plus = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);

/** One piece of news of any kind but taking back; whether it is taken is the record's business. */
export function drawNews({ house, plan, today }: Told, draw: Draw, n: number): News {
  const pick = <T>(items: readonly T[], or: T): T => items[draw(Math.max(1, items.length))] ?? or;
  const brews = house.brews.map((brew) => brew.brew);
  const done = plan.brews.filter((brew) => brew.done).map((brew) => brew.brew);
  const open = plan.brews.filter((brew) => !brew.done).map((brew) => brew.brew);
  const brew = pick(draw(4) === 0 ? brews : open, 'Nobody');
  const brewed = pick(draw(4) === 0 ? brews : done, 'Nobody');
  const jar = pick(
    house.jars.map((row) => row.jar),
    'None',
  );
  const tank = pick(
    house.tanks.map((row) => row.tank),
    'None',
  );
  const yeast = pick(
    house.yeasts.map((row) => row.yeast),
    'None',
  );
  const day = plus(today, -draw(3));
  const later = plus(today, draw(25));
  const slurry =
    draw(2) === 0 ? ({ kind: 'jar', jar } as const) : ({ kind: 'harvest', brew: brewed } as const);
  const culture = draw(3) === 0 ? ({ kind: 'beer', brew: brewed } as const) : slurry;
  const source = pick(
    [
      { kind: 'fresh' as const },
      { kind: 'jar' as const, jar },
      { kind: 'harvest' as const, brew: pick(brews, 'Nobody') },
    ],
    { kind: 'fresh' as const },
  );
  const planned = plan.brews.find((one) => one.brew === brew);
  const all: (() => News)[] = [
    () => ({ kind: 'brewed', brew, day, tank: null, drawnMl: null }),
    () => ({ kind: 'brewed', brew, day: today, tank, drawnMl: null }),
    () => ({ kind: 'slipped', brew, to: later }),
    () => ({ kind: 'slipped', brew, to: plus(planned?.day ?? today, 1 + draw(10)) }),
    () => ({ kind: 'not-yet', brew }),
    () => ({ kind: 'brew-added', row: aBrew({ brew: `N${n}`, yeasts: [yeast] }) }),
    () => ({ kind: 'brew-dropped', brew }),
    () => ({ kind: 'resized', brew, volumeL: 12 + draw(18) }),
    () => ({ kind: 'slow', brew: brewed, until: later }),
    () => ({ kind: 'gravity', brew: brewed, og: 1.04 + draw(50) / 1000, fg: 1.012 }),
    () => ({ kind: 'lag', brew: brewed, hours: 4 + draw(60) }),
    () => ({ kind: 'hopped', brew: brewed, day }),
    () => ({ kind: 'passed', brew: brewed, day }),
    () => ({ kind: 'harvested', brew: brewed, day, settledMl: draw(400) }),
    () => ({ kind: 'harvest-lost', brew: brewed, day }),
    () => ({ kind: 'jar-found', row: aJar({ jar: `F${n}`, yeast, harvestedOn: plus(today, -9) }) }),
    () => ({ kind: 'jar-gone', jar, day }),
    () => ({ kind: 'frozen', of: slurry, day }),
    () => ({
      kind: 'measured',
      of: slurry,
      day,
      stained: null,
      total: null,
      viability: 0.5 + draw(50) / 100,
      millionPerMl: null,
    }),
    () => ({ kind: 'suspect', of: culture, day }),
    () => ({ kind: 'suspect', of: { kind: 'beer', brew: brewed }, day }),
    () => ({ kind: 'sound', of: culture, day }),
    () => ({ kind: 'packs-bought', yeast, packs: 1 + draw(3), arrivesOn: later }),
    () => ({ kind: 'packs-late', yeast, arrivesOn: later, expectedOn: null }),
    () => ({ kind: 'starter-failed', brew, day }),
    () => ({ kind: 'tank-out', tank, from: later, to: plus(later, draw(12)) }),
    () => ({ kind: 'day-closed', day: later }),
    () => ({ kind: 'pinned', brew, day: planned?.day ?? later, tank: null, source: null }),
    () => ({ kind: 'pinned', brew, day: null, tank, source: null }),
    () => ({ kind: 'pinned', brew, day: null, tank: null, source }),
    () => ({ kind: 'unpinned', brew, what: pick([null, 'day', 'tank', 'source'] as const, null) }),
    () => ({ kind: 'source-forbidden', brew, source }),
    () => ({ kind: 'source-allowed', brew, source }),
  ];
  return pick(all, () => ({ kind: 'not-yet', brew }) as const)();
}

/** Numbers that decide: as many as anybody asks for. */
export const decisions = fc.infiniteStream(fc.nat({ max: 9999 })).map((numbers): Draw => {
  return (below) => (numbers.next().value ?? 0) % below;
});
