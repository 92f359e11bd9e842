// Types of real-server.mjs.
export type RealServer = {
  base: string;
  /** A GET of the API, parsed. */
  read: <T>(path: string) => Promise<T>;
  port: number;
  /** The data folder. */
  folder: string;
  /** Stops it; the data folder goes too, unless it is kept for the next server. */
  stop: (keep?: boolean) => Promise<void>;
  /** All that the server has said so far. */
  said: () => string;
};
export function startRealServer(
  today: string,
  kept?: string | null,
  envOf?: (port: number) => Record<string, string>,
): Promise<RealServer>;
