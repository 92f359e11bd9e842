// What the app is built from: everything that a test may want to choose comes in here.
import type { IsoDay } from '../../planner/index.ts';
import type { Backups } from '../backup/index.ts';
import type { Runs } from '../runs/index.ts';
import type { Surveys } from '../runs/surveys.ts';
import type { WhatIfs } from '../runs/what-if.ts';
import type { Store } from '../store/index.ts';

export type Doors = {
  /** The stored hash of the password, read anew each time; null: none is set. */
  password: () => string | null;
  /** Others than this machine can reach the server: it then never answers without a session. */
  reachable: boolean;
  /** Addresses of the reverse proxies whose X-Forwarded-For counts. */
  proxies: readonly string[];
};

export type Parts = {
  store: Store;
  runs: Runs;
  backups: Backups;
  /** Plans of houses that are not saved. */
  whatIfs: WhatIfs;
  /** Questions about the plan in force that take long. */
  surveys: Surveys;
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
  doors: Doors;
  /** Folder of the built page; null: no page is served. */
  pageFolder: string | null;
  version: string;
  /** One line for the terminal. */
  report: (line: string) => void;
};
