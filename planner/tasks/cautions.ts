// Every caution of every task: how the work can hurt someone, what to do, and where that is known from.
// These are the usual cautions of the trade and no legal advice; local codes and licensed practice go first.

export type Caution = {
  says: string;
  source: string;
  /** Ends with the sentence that local codes and licensed practice go first. */
  codes: boolean;
};

export const CAUTIONS = {
  'closed-jar': {
    says: 'A closed jar of yeast goes on giving off CO2, in the cold too: it can bulge, foam over or burst. Keep the lid loose or fit a one-way valve, never tighten it, and open it slowly over a sink with your face turned away.',
    source:
      'Woodland Brewing; fullstackbrewing 2017; Escarpment Labs KB 274 (docs/tasks.md, Cautions)',
    codes: false,
  },
  'old-jar': {
    says: 'An old jar may hold pressure. Do not twist a bulging lid: cool the jar, put a thick cloth over it, wear gloves and glasses, and let the gas out little by little.',
    source:
      'forum report of a year-old bottle that burst on opening; the way of opening: common practice, no source',
    codes: false,
  },
  'warming-jar': {
    says: 'Yeast wakes as it warms and gives off more CO2: loosen the lid before it leaves the cold and stand the jar in a tray.',
    source: 'Escarpment Labs KB 274; the tray: common practice, no source',
    codes: false,
  },
  'swollen-pack': {
    says: 'A liquid pack can swell as it warms. Open it slowly, pointed away from your face.',
    source: 'common practice, no source',
    codes: false,
  },
  pressure: {
    says: 'Let the pressure out of the vessel completely before you loosen a clamp, lid or valve, and never go above the pressure it is rated for.',
    source:
      'C. White, quoted by brewplus.com (vent before opening); the rating: common practice, no source',
    codes: true,
  },
  co2: {
    says: 'CO2 cannot be smelled and gathers low, in cellars, pits and tanks; a few per cent of it knock people out. Air the room, keep a CO2 alarm near the floor, and leave at once when it sounds or your breath runs short.',
    source:
      'Brewing Business issue 2, citing HSE: limits 5,000 ppm (8 h) and 15,000 ppm (15 min); 7 % can kill within 5 minutes',
    codes: true,
  },
  'no-entry': {
    says: 'Never put your head or body into a tank: entry is for trained people with a permit, a gas test and a second person outside.',
    source: 'OSHA summaries of confined-space rules; sigmahellas, citing NIOSH 1976',
    codes: true,
  },
  'hot-wort': {
    says: 'Boiling wort scalds and boils over. Watch the kettle as it comes to the boil, wear closed waterproof boots outside your trousers and long gloves, and carry no open vessel of hot wort.',
    source: 'beerandbrewing.com on protective gear: boil-overs and boots filled with hot wort',
    codes: true,
  },
  'hot-pot': {
    says: 'Boiling wort scalds and boils over: take a pot of twice the size, stay with it, and carry it only once it has cooled.',
    source:
      'beerandbrewing.com on protective gear (boil-overs); the pot: common practice, no source',
    codes: false,
  },
  burner: {
    says: 'A gas burner gives off carbon monoxide: light it only where there is a strong draught of fresh air.',
    source: 'from memory',
    codes: true,
  },
  'hot-glass': {
    says: 'Glass can crack between hot and cold: boil in a pot or in glass made for it, cool it slowly and wear gloves.',
    source: 'common practice, no source',
    codes: false,
  },
  'starter-vent': {
    says: 'Cover a starter loosely with foil or foam and never close it tight: it makes gas.',
    source: 'common practice, no source',
    codes: false,
  },
  gush: {
    says: 'Hops dropped into beer that holds CO2 can make it gush. Let the pressure out first, add a handful and wait, and keep your face away from the opening.',
    source: 'from memory',
    codes: false,
  },
  ladder: {
    says: 'Work from a firm platform, not at full stretch from a ladder.',
    source: 'common practice, no source',
    codes: true,
  },
  vacuum: {
    says: 'A closed tank pulls a vacuum as it cools and can draw air in or buckle. Give it a little CO2 or leave its relief open, as its maker says.',
    source: 'from memory',
    codes: true,
  },
  bottles: {
    says: 'Bottles and kegs burst when beer goes on fermenting in them. Package only at a steady final gravity, measure the sugar, use bottles made for pressure and wear glasses.',
    source:
      'steady gravity on 3 consecutive days: Mad Hopper; the rest: common practice, no source',
    codes: true,
  },
  chemicals: {
    says: 'Cleaners burn skin and eyes. Add the chemical to the water, never water to the chemical; wear gloves and a face shield; never mix acid with caustic or with anything that holds chlorine; rinse in between.',
    source: 'brewthletics 2019; MBAA brewpub safety sheet; chlorine: from memory',
    codes: true,
  },
  'caustic-co2': {
    says: 'Air the CO2 out of the tank before caustic goes in: caustic swallows the gas and a closed tank can collapse.',
    source: 'from memory',
    codes: true,
  },
} as const satisfies Record<string, Caution>;

export type CautionId = keyof typeof CAUTIONS;

/** Up to this much wort is boiled in a kitchen pot, litres. Common practice, no source. */
const POT_LITRES = 5;

/** What boiling so much wort is warned of with: a pot on a stove, or a kettle. */
export const boilingCaution = (litres: number): 'hot-pot' | 'hot-wort' =>
  litres > POT_LITRES ? 'hot-wort' : 'hot-pot';

export const LOCAL_CODES = 'Local codes and licensed practice go before anything said here.';

/** The cautions as one text, in the order given; none gives null. */
export function cautionText(...ids: readonly CautionId[]): string | null {
  if (ids.length === 0) return null;
  const cautions: Caution[] = ids.map((id) => CAUTIONS[id]);
  const parts = cautions.map((caution) => caution.says);
  if (cautions.some((caution) => caution.codes)) parts.push(LOCAL_CODES);
  return parts.join(' ');
}
