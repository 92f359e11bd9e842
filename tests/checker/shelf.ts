// Rule 4, the shelf: jars that stand in the cold on each day, and the day on which each leaves.
import type { Case } from './case.ts';
import { iso, num } from './days.ts';

type Stay = { from: number; to: number };

function harvestJars(c: Case): Stay[] {
  return c.plan.harvests.flatMap((h) =>
    h.jars.map((jar) => {
      const user = jar.for === null ? undefined : c.placedOf.get(jar.for);
      if (user !== undefined && !user.plan.done && num(jar.leavesOn) !== user.draw)
        c.report(
          'dates jar-leaves',
          h.brew,
          Math.abs(num(jar.leavesOn) - user.draw),
          'days',
          `The jar of ${h.brew} for ${jar.for} leaves on ${iso(user.draw)}.`,
        );
      // The draw says when the jar is gone, whatever is written on the jar.
      return { from: num(h.day), to: user?.draw ?? num(jar.leavesOn) };
    }),
  );
}

function houseJars(c: Case): Stay[] {
  const gone = new Set(c.facts.goneJars);
  const used = new Map(
    c.placed.flatMap((p) =>
      p.plan.source.kind === 'jar' ? [[p.plan.source.jar, p] as const] : [],
    ),
  );
  const shown = new Map(c.plan.shelf.map((jar) => [jar.jar, jar]));
  return c.house.jars.flatMap((jar): Stay[] => {
    if (gone.has(jar.jar)) return [];
    const row = shown.get(jar.jar);
    const user = used.get(jar.jar);
    if (user?.plan.done === true || user?.begun === true) return [];
    if (row === undefined) {
      c.report('sums shelf', jar.jar, 1, 'jars', `Jar ${jar.jar} is not on the plan's shelf.`);
      return [];
    }
    if (row.usedFor !== (user?.plan.brew ?? null))
      c.report(
        'sums shelf-use',
        jar.jar,
        1,
        'jars',
        `Jar ${jar.jar} is shown as used for ${row.usedFor}.`,
      );
    if (user !== undefined && num(row.leavesOn) !== user.draw)
      c.report(
        'dates shelf-leaves',
        jar.jar,
        Math.abs(num(row.leavesOn) - user.draw),
        'days',
        `Jar ${jar.jar} leaves on ${iso(user.draw)}.`,
      );
    return [{ from: num(jar.harvestedOn), to: user?.draw ?? num(row.leavesOn) }];
  });
}

/** A jar takes room from the day it is filled up to, not including, the day of its draw. */
export function checkShelf(c: Case): void {
  const stays = [...harvestJars(c), ...houseJars(c)];
  const days = new Set([c.today, ...stays.map((stay) => stay.from).filter((day) => day > c.today)]);
  for (const day of [...days].sort((a, b) => a - b)) {
    const over =
      stays.filter((stay) => stay.from <= day && day < stay.to).length - c.house.store.maxJars;
    if (over > 0)
      c.report(
        '4 shelf',
        iso(day),
        over,
        'jars',
        `${over} jars too many on the shelf on ${iso(day)}.`,
      );
  }
}
