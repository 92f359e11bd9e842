// The moves that the search draws from, one file each.
import { crop } from './crop.ts';
import { home } from './home.ts';
import { keep } from './keep.ts';
import type { Move } from './move.ts';
import { overtake } from './overtake.ts';
import { pull } from './pull.ts';
import { push } from './push.ts';
import { relocate } from './relocate.ts';
import { resource } from './resource.ts';
import { swap } from './swap.ts';
import { wake } from './wake.ts';

export const MOVES: readonly Move[] = [
  relocate,
  resource,
  swap,
  push,
  overtake,
  pull,
  wake,
  crop,
  keep,
  home,
];
