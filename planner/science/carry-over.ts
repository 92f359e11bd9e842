// What a draw of slurry brings along from the beer it came out of: volume, colour, bitterness, alcohol.
//
// Plain mixing by volume. The beer share follows from 40 % wet solids in stored slurry (Quain; Boulton &
// Quain 2001, Fig. 7.9): the rest is beer.
import { SETTINGS } from '../model/settings.ts';

/** Litres of the old beer in `drawMl` of settled slurry. */
export function carriedBeerL(
  drawMl: number,
  beerShare: number = SETTINGS.slurryBeerShare.home,
): number {
  return drawMl > 0 ? (drawMl / 1000) * beerShare : 0;
}

/** A property of the batch once the carried beer is mixed in (colour, bitterness, alcohol), by volume. */
export function mixed(
  valueOfBatch: number,
  volumeOfBatchL: number,
  valueCarried: number,
  volumeCarriedL: number,
): number {
  const total = volumeOfBatchL + volumeCarriedL;
  if (!(total > 0)) return valueOfBatch;
  return (valueOfBatch * volumeOfBatchL + valueCarried * volumeCarriedL) / total;
}

/** How far the carried beer moves a property of the batch; negative where the old beer had less. */
export function carriedChange(
  valueOfBatch: number,
  volumeOfBatchL: number,
  valueCarried: number,
  volumeCarriedL: number,
): number {
  const total = volumeOfBatchL + volumeCarriedL;
  if (!(total > 0)) return 0;
  return ((valueCarried - valueOfBatch) * volumeCarriedL) / total;
}
