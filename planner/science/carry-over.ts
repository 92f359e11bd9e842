// What a draw of slurry brings along from the beer it came out of: volume, colour, bitterness, alcohol.
//
// Plain mixing by volume. The beer share follows from 40 % wet solids in stored slurry (Quain; Boulton &
// Quain 2001, Fig. 7.9): the rest is beer.
import { SETTINGS, type Settings } from '../model/settings.ts';

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

/** A beer as far as a draw of its slurry can carry it. */
export type CarriedBeer = { ebc: number; ibu: number; abvPercent: number };

/** What a draw does to the next batch. */
export type CarryOver = {
  volumeL: number;
  ebcChange: number;
  ibuChange: number;
  abvChange: number;
  /** The colour or the bitterness moves as far as the house takes to be noticed. */
  colourNoticed: boolean;
  bitternessNoticed: boolean;
};

/** Volume, colour, bitterness and alcohol that a draw brings into a batch. Hop matter: see docs/science.md. */
export function carryOver(
  draw: { ml: number; from: CarriedBeer },
  batch: { volumeL: number; beer: CarriedBeer },
  s: Settings,
): CarryOver {
  const volumeL = carriedBeerL(draw.ml, s.slurryBeerShare);
  const change = (what: keyof CarriedBeer) =>
    carriedChange(batch.beer[what], batch.volumeL, draw.from[what], volumeL);
  const ebcChange = change('ebc');
  const ibuChange = change('ibu');
  return {
    volumeL,
    ebcChange,
    ibuChange,
    abvChange: change('abvPercent'),
    colourNoticed: Math.abs(ebcChange) >= s.noticeEbc,
    bitternessNoticed: Math.abs(ibuChange) >= s.noticeIbu,
  };
}
