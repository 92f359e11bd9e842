// How often somebody may guess at the password: so often from one address, so often in all.
import { RateLimiterMemory, RateLimiterRes } from 'rate-limiter-flexible';

const WINDOW_S = 15 * 60;
export const TRIES_PER_ADDRESS = 5;
/** Bounds what guessing from many addresses at once may cost this machine; sessions that are open go on. */
export const TRIES_IN_ALL = 100;

/** Tries are remembered by this server while it runs. */
export function createTries() {
  const byAddress = new RateLimiterMemory({ points: TRIES_PER_ADDRESS, duration: WINDOW_S });
  const inAll = new RateLimiterMemory({ points: TRIES_IN_ALL, duration: WINDOW_S });

  /** Seconds to wait where a limiter says no. */
  const waitOf = async (limiter: RateLimiterMemory, key: string): Promise<number> => {
    try {
      await limiter.consume(key);
      return 0;
    } catch (refused) {
      if (!(refused instanceof RateLimiterRes)) throw refused;
      return Math.max(1, Math.ceil(refused.msBeforeNext / 1000));
    }
  };

  return {
    /** Counts a try before the password is looked at, so that many at once are no way around. @returns seconds to wait; 0: go on */
    count: async (address: string): Promise<number> =>
      (await waitOf(byAddress, network(address))) || waitOf(inAll, 'all'),
    /** The password was right: what came before it from there is forgotten. */
    forget: (address: string) => byAddress.delete(network(address)),
  };
}

/** One household is one network of the newer protocol, whichever of its many addresses it uses. */
function network(address: string): string {
  if (!address.includes(':') || address.includes('.')) return address;
  const [head = '', tail] = address.split('::');
  const groups = head === '' ? [] : head.split(':');
  const missing = tail === undefined ? 0 : 8 - groups.length - tail.split(':').length;
  return [...groups, ...Array.from({ length: Math.max(0, missing) }, () => '0')]
    .concat(tail === undefined ? [] : tail.split(':'))
    .slice(0, 4)
    .join(':');
}
