// The moves that the search draws from, one file each.
import { crop } from './crop.ts';
import { exchange } from './exchange.ts';
import { follow } from './follow.ts';
import { home } from './home.ts';
import { insert } from './insert.ts';
import { instead } from './instead.ts';
import { keep } from './keep.ts';
import { keepStarter } from './keep-starter.ts';
import type { Move } from './move.ts';
import { pull } from './pull.ts';
import { relocate } from './relocate.ts';
import { resource } from './resource.ts';
import { shift } from './shift.ts';
import { tails } from './tails.ts';
import { tap } from './tap.ts';
import { trade } from './trade.ts';
import { wake } from './wake.ts';

export const MOVES: readonly Move[] = [
  relocate,
  resource,
  exchange,
  insert,
  shift,
  follow,
  instead,
  tails,
  pull,
  wake,
  tap,
  trade,
  crop,
  keep,
  keepStarter,
  home,
];
