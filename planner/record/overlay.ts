// What news changed about the house: folded out of the record, and laid over the house that was entered.
import {
  type Brew,
  type BrewOverlay,
  type House,
  type Jar,
  NO_OVERLAY,
  type Overlay,
} from '../model/index.ts';
import { daysBetween } from '../tasks/days.ts';
import type { Doubts } from './doubts.ts';
import type { Ledger } from './ledger.ts';

/** What the record says about the house. */
export function overlayOf(ledger: Ledger, doubts: Doubts): Overlay {
  const brews = new Set([
    ...ledger.resized.keys(),
    ...ledger.gravity.keys(),
    ...ledger.slow.keys(),
    ...ledger.hopped.keys(),
  ]);
  return {
    ...NO_OVERLAY,
    brewsAdded: [...ledger.added.values()].map(({ row }) => row),
    brewsDropped: [...ledger.dropped.keys()],
    brews: [...brews].map((brew) => brewOverlay(ledger, brew)),
    tanksOut: ledger.tanksOut.map(({ tank, from, to }) => ({ tank, from, to })),
    closed: [...ledger.closed.keys()],
    jarsFound: [...ledger.found.values()].map(({ row }) => row),
    jarStates: doubts.jarStates,
    jarsCounted: [...ledger.counted.values()].flatMap(({ of, day, viability }) =>
      of.kind === 'jar' && viability !== null ? [{ jar: of.jar, day, viability }] : [],
    ),
    counts: ledger.counts,
  };
}

function brewOverlay(ledger: Ledger, brew: string): BrewOverlay {
  const brewedOn = ledger.brewed.get(brew)?.fact.day;
  const since = (day: string | undefined): number | null =>
    brewedOn === undefined || day === undefined ? null : daysBetween(brewedOn, day);
  return {
    brew,
    volumeL: ledger.resized.get(brew)?.volumeL ?? null,
    og: ledger.gravity.get(brew)?.og ?? null,
    fg: ledger.gravity.get(brew)?.fg ?? null,
    tankDaysAtLeast: since(ledger.slow.get(brew)?.until),
    dryHopDay: since(ledger.hopped.get(brew)?.day),
  };
}

/**
 * The house as it is now: the one that was entered with what news changed about it. The house given is not touched,
 * and laying the same over it twice changes nothing more.
 */
export function houseNow(house: House, overlay: Overlay): House {
  const dropped = new Set(overlay.brewsDropped);
  const parts = new Map(overlay.brews.map((part) => [part.brew, part]));
  const has = new Set(house.brews.map((brew) => brew.brew));
  const brews = [...house.brews, ...overlay.brewsAdded.filter((brew) => !has.has(brew.brew))]
    .filter((brew) => !dropped.has(brew.brew))
    .map((brew) => withPart(brew, parts.get(brew.brew)));
  return {
    ...house,
    closed: [...new Set([...house.closed, ...overlay.closed])],
    tanks: house.tanks.map((tank) => {
      const out = overlay.tanksOut
        .filter((one) => one.tank === tank.tank)
        .map(({ from, to }) => ({ from, to }))
        .filter(({ from, to }) => !tank.outOfUse.some((was) => was.from === from && was.to === to));
      return out.length === 0 ? tank : { ...tank, outOfUse: [...tank.outOfUse, ...out] };
    }),
    jars: jarsNow(house.jars, overlay),
    counts: withCounts(house, overlay),
    brews,
  };
}

function withPart(brew: Brew, part: BrewOverlay | undefined): Brew {
  if (part === undefined) return brew;
  const tankDays = Math.max(brew.tankDays, part.tankDaysAtLeast ?? 0);
  const harvestDay =
    part.tankDaysAtLeast === null
      ? brew.harvestDay
      : Math.max(brew.harvestDay ?? 0, part.tankDaysAtLeast);
  return {
    ...brew,
    volumeL: part.volumeL ?? brew.volumeL,
    og: part.og ?? brew.og,
    fg: part.fg ?? brew.fg,
    tankDays,
    harvestDay,
    dryHopDay: part.dryHopDay ?? brew.dryHopDay,
  };
}

/** Jars filled from the same beer on the same day. The list does not name the beer: strain, generation and day do. */
function matesOf(jar: Jar, jars: readonly Jar[]): Jar[] {
  return jars.filter(
    (one) =>
      one.jar !== jar.jar &&
      one.yeast === jar.yeast &&
      one.harvestedOn === jar.harvestedOn &&
      one.generation === jar.generation &&
      one.sourceOg === jar.sourceOg,
  );
}

function jarsNow(jars: readonly Jar[], overlay: Overlay): Jar[] {
  const has = new Set(jars.map((jar) => jar.jar));
  const all = [...jars, ...overlay.jarsFound.filter((jar) => !has.has(jar.jar))];
  const states = new Map(all.map((jar) => [jar.jar, jar.state]));
  for (const { jar: name, state, mates } of overlay.jarStates) {
    const was = states.get(name);
    if (was === undefined) continue;
    if (state !== 'watch' || was === 'sound') states.set(name, state);
    const jar = all.find((one) => one.jar === name);
    if (!mates || jar === undefined) continue;
    for (const mate of matesOf(jar, all)) {
      if (states.get(mate.jar) === 'sound') states.set(mate.jar, 'watch');
    }
  }
  const counted = new Map(overlay.jarsCounted.map((one) => [one.jar, one]));
  return all.map((jar) => {
    const count = counted.get(jar.jar);
    const state = states.get(jar.jar) ?? jar.state;
    if (count === undefined && state === jar.state) return jar;
    return {
      ...jar,
      state,
      ...(count === undefined ? {} : { measuredViability: count.viability, measuredOn: count.day }),
    };
  });
}

/** A count that the house holds already is not added again. */
function withCounts(house: House, overlay: Overlay): House['counts'] {
  if (overlay.counts.length === 0) return house.counts;
  const text = (count: House['counts'][number]) => JSON.stringify(Object.entries(count).sort());
  const has = new Set(house.counts.map(text));
  return [...house.counts, ...overlay.counts.filter((count) => !has.has(text(count)))];
}
