// What the app is built from: everything that a test may want to choose comes in here.
import type { IsoDay } from '../../planner/index.ts';
import type { Runs } from '../runs/index.ts';
import type { Store } from '../store/index.ts';

export type Parts = {
  store: Store;
  runs: Runs;
  /** Steps of a run that names none; null: the planner's own budget. */
  steps: number | null;
  /** The clock's date in a time zone. */
  today: (timeZone: string) => IsoDay;
  /** Key from which the addresses of the feeds are derived. */
  feedKey: Buffer;
  /** The address that links and feeds are built on, without a slash at its end. */
  base: string;
  /** Host names under which requests are answered; anything else may be a rebinding attack. */
  hosts: readonly string[];
  /** Folder of the built page; null: no page is served. */
  pageFolder: string | null;
  version: string;
  /** One line for the terminal. */
  report: (line: string) => void;
};
