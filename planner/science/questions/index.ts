// The single questions that a brewer can ask without a season, in the order of a page.
export type { Answer, AnyQuestion, Asked, Figure, Found } from './ask.ts';
export { boundOf, type Field, type Fields, schemaOf } from './field.ts';

import type { AnyQuestion } from './ask.ts';
import { beerQuestion } from './beer.ts';
import { carryQuestion } from './carry.ts';
import { countQuestion } from './count.ts';
import { cropQuestion } from './crop.ts';
import { jarQuestion } from './jar.ts';
import { keepQuestion } from './keep.ts';
import { packsQuestion } from './packs.ts';
import { pitchQuestion } from './pitch.ts';
import { starterQuestion } from './starter.ts';
import { panelQuestion, tasteQuestion } from './taste.ts';
import { unitsQuestion } from './units.ts';
import { wakeQuestion } from './wake.ts';
import { weighQuestion } from './weigh.ts';

export const QUESTIONS: readonly AnyQuestion[] = [
  jarQuestion,
  pitchQuestion,
  packsQuestion,
  starterQuestion,
  keepQuestion,
  wakeQuestion,
  cropQuestion,
  countQuestion,
  weighQuestion,
  tasteQuestion,
  panelQuestion,
  beerQuestion,
  carryQuestion,
  unitsQuestion,
];
