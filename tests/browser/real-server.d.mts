// Types of real-server.mjs.
export type RealServer = {
  base: string;
  /** A GET of the API, parsed. */
  read: <T>(path: string) => Promise<T>;
  stop: () => Promise<void>;
  /** All that the server has said so far. */
  said: () => string;
};
export function startRealServer(today: string): Promise<RealServer>;
