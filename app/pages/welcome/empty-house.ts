// A house with nothing in it yet: what most people would write first, to be changed. Pure but for what it is given.

import type { Written } from '../../parts/book/book.ts';
import { addDays } from '../../parts/days.ts';

/** Half a year, as most seasons are planned. */
const SEASON_DAYS = 181;

/** Countries' currencies by the region of a browser's language; a guess to begin with. */
const CURRENCIES: { readonly [region: string]: string } = {
  US: 'USD',
  GB: 'GBP',
  CA: 'CAD',
  AU: 'AUD',
  NZ: 'NZD',
  CH: 'CHF',
  SE: 'SEK',
  NO: 'NOK',
  DK: 'DKK',
  PL: 'PLN',
  CZ: 'CZK',
  JP: 'JPY',
};

/** A currency for a language such as 'en-GB'; the euro where nothing speaks for another. */
export function currencyFor(language: string): string {
  const region = /-([A-Z]{2})\b/.exec(language)?.[1] ?? '';
  return CURRENCIES[region] ?? 'EUR';
}

/**
 * An empty house.
 * @param today the season begins a week after it
 * @param timeZone such as Europe/Dublin
 */
export function emptyHouse(today: string, timeZone: string, language: string): Written {
  const from = addDays(today, 7);
  return {
    name: 'My brewery',
    kind: 'home',
    timeZone,
    currency: currencyFor(language),
    from,
    to: addDays(from, SEASON_DAYS),
    brewDays: ['sat', 'sun'],
    workDays: null,
    starterDays: null,
    closed: [],
    brewsPerDay: 1,
    brewLengthL: null,
    orderLeadDays: 5,
    packAgeOnArrivalDays: 30,
    deliveryCost: 5,
    conditioningRoomL: null,
    store: { tempC: 4, maxJars: 8, jarMl: 500, settleDays: 1 },
    starterGear: { vessels: 1, maxLitres: 3, stirred: true },
    rules: {},
    weights: {},
    relaxed: [],
    tanks: [],
    yeasts: [],
    jars: [],
    counts: [],
    brews: [],
  };
}
