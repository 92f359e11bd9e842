// How long yeast of a strain usually lies on its beer in this house before it is harvested. A count does not say it.
import type { Brew, House, Settings, Tank, Yeast } from '../model/index.ts';
import { earliestCropDay, platoFromSg } from '../science/index.ts';

/** Days on the beer after fermentation, warm and chilled, averaged over the house's brews and tanks. */
export type OnBeer = readonly { days: number; tempC: number }[];

/**
 * The mean over all brews that accept this yeast and all tanks that suit them, each harvested as the plan does it:
 * from a bottom outlet on the brew's harvest day, else when the tank is emptied; in the crash where the tank
 * can and there is time.
 */
export function usualTimeOnBeer(house: House, yeast: Yeast, s: Settings): OnBeer {
  const pairs = house.brews
    .filter((brew) => brew.yeasts.includes(yeast.yeast))
    .flatMap((brew) =>
      house.tanks.filter((tank) => suits(brew, tank)).map((tank) => stretch(brew, tank, yeast, s)),
    );
  const mean = (of: (pair: { warm: number; cold: number; warmC: number }) => number) =>
    pairs.length === 0 ? 0 : pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
  return [
    { days: mean((pair) => pair.warm), tempC: mean((pair) => pair.warmC) },
    { days: mean((pair) => pair.cold), tempC: s.crashC },
  ];
}

const suits = (brew: Brew, tank: Tank): boolean =>
  brew.volumeL >= tank.minFillL &&
  brew.volumeL <= tank.maxFillL &&
  brew.fermentC >= tank.minC &&
  brew.fermentC <= tank.maxC;

function stretch(
  brew: Brew,
  tank: Tank,
  yeast: Yeast,
  s: Settings,
): { warm: number; cold: number; warmC: number } {
  const { flocculation } = yeast;
  const beer = { lager: yeast.kind === 'lager', ogP: platoFromSg(brew.og), flocculation };
  const fermented = Math.min(earliestCropDay(beer, s), brew.tankDays);
  const harvest = tank.bottomOutlet ? (brew.harvestDay ?? fermented) : brew.tankDays;
  const days = Math.max(0, Math.min(harvest, brew.tankDays) - fermented);
  const hopped = brew.dryHopDay === null || brew.dryHopDay < harvest;
  const crashed = hopped && tank.minC <= s.crashC && s.crashDays > 0 && days >= s.crashDays;
  const cold = crashed ? s.crashDays : 0;
  return { warm: days - cold, cold, warmC: brew.fermentC };
}
