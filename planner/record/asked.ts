// What each kind of news is worked out from, and what comes of it: a fact, or why not.
import type { House, IsoDay, Plan } from '../model/index.ts';
import type { RecordFact } from './entry.ts';
import type { RecordState } from './fold.ts';
import type { Ledger } from './ledger.ts';
import type { Refusal } from './refusal.ts';

/** What news is worked out from. */
export type Asked = {
  state: RecordState;
  ledger: Ledger;
  /** The house as it is now, by what was told so far. */
  house: House;
  inForce: Plan;
  today: IsoDay;
};
export type Resolved = { fact: RecordFact } | { refusals: Refusal[] };
