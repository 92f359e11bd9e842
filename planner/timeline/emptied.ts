// When the tanks of brewed beers were emptied, where nobody said so but other facts tell.
import type { Facts, House } from '../model/index.ts';
import { dayNumber } from './calendar.ts';

/**
 * By brew, the day on which its tank was empty at the latest: as told; or the day of the harvest in a tank
 * whose yeast is only to be had once it is empty; or the day on which the next beer went into it.
 */
export function emptiedDays(house: House, facts: Facts): Map<string, number> {
  const out = new Map<string, number>();
  const outlet = new Map(house.tanks.map((tank) => [tank.tank, tank.bottomOutlet]));
  const harvested = new Map(facts.harvested.map((fact) => [fact.brew, dayNumber(fact.day)]));
  for (const fact of facts.brewed) {
    if (fact.emptiedOn !== null) {
      out.set(fact.brew, dayNumber(fact.emptiedOn));
      continue;
    }
    const day = dayNumber(fact.day);
    const known: number[] = [];
    const harvest = harvested.get(fact.brew);
    // what was told for the brew day was kept of the starter
    if (harvest !== undefined && harvest > day && outlet.get(fact.tank) === false)
      known.push(harvest);
    for (const other of facts.brewed) {
      const next = dayNumber(other.day);
      if (other.brew !== fact.brew && other.tank === fact.tank && next > day) known.push(next);
    }
    if (known.length > 0) out.set(fact.brew, Math.min(...known));
  }
  return out;
}
