// How many packs, or fewer and a starter? What is alive in a pack of this age, and the ways to meet a need from packs.
import { boilingCaution, type CautionId } from '../../tasks/cautions.ts';
import { packExpiryDays, packLossPerDayAt, packRange } from '../packs.ts';
import { freshPitches } from '../starter-plan.ts';
import { type Found, figure, plain, predicted, question } from './ask.ts';

/** Above so many packs nobody thinks of a starter, and each smaller number would have to be tried. */
const MOST_PACKS = 100;
/** So many ways are told besides the cheapest. */
const TOLD_WAYS = 3;
/** With fewer alive than one in a thousand a number of packs would be a joke. */
const LEAST_ALIVE = 0.001;

export const packsQuestion = question({
  id: 'packs',
  title: 'How many packs, or fewer and a starter?',
  fields: {
    needB: {
      kind: 'number',
      label: 'Living cells needed',
      says: 'For the brew.',
      unit: 'billion',
      min: 0.01,
      max: 1_000_000,
    },
    form: {
      kind: 'choice',
      label: 'Yeast',
      says: 'Dry yeast gets no starter.',
      options: ['liquid', 'dry'],
    },
    packCellsB: {
      kind: 'number',
      label: 'Cells in a pack',
      says: 'When it was made; for dry yeast grams × billion a gram.',
      unit: 'billion',
      min: 0.1,
      max: 1_000_000,
    },
    ageDays: {
      kind: 'number',
      label: 'Days since it was made',
      says: 'On the day of the brew.',
      unit: 'days',
      min: 0,
      max: 3650,
    },
    storeC: {
      kind: 'number',
      label: 'Temperature that it was kept at',
      says: 'In that time.',
      unit: '°C',
      min: -25,
      max: 30,
      fallback: 4,
    },
    price: {
      kind: 'number',
      label: 'Price of a pack',
      says: 'In the money of the house; the ways are then compared.',
      unit: '',
      min: 0,
      max: 1_000_000,
      fallback: null,
    },
    maxLitres: {
      kind: 'number',
      label: 'Largest starter',
      says: 'What the vessel holds; 0 where no starter is made.',
      unit: 'L',
      min: 0,
      max: 100_000,
      fallback: 3,
    },
    stirred: {
      kind: 'yesNo',
      label: 'Stirred',
      says: 'On a stir plate or shaken all along.',
      fallback: true,
    },
  },
  formula:
    'Living cells in a pack = cells when it was made × share alive. The share alive falls first-order with the days, at a rate by kind and temperature. Packs = need ÷ living cells in one, rounded up; or fewer and the smallest starter that makes up for the rest. Cost = packs × price + starter wort + the starter’s minutes.',
  range: 'To the expiry of a pack, kept at about 4 °C; one starter in one step.',
  sources: [
    'Liquid: the maker’s figures over six months (second-hand); low end White Labs FAQ, 75–85 % after 30 days',
    'Dry: about 4 % a year cold, 20 % warm (from memory)',
    'Starters: Troester (from memory); White & Zainasheff 2010. Minutes: common practice, no source',
  ],
  contradictions: () => [],
  answer(input, s): Found {
    const alive = packRange(packLossPerDayAt(input.form, input.storeC, s) * input.ageDays, s);
    const packB = input.packCellsB * alive.likely;
    const cells = {
      low: input.packCellsB * alive.low,
      likely: packB,
      high: input.packCellsB * alive.high,
    };
    const figures = [
      predicted('living cells in a pack', cells, 'billion'),
      predicted('share alive', alive, 'share'),
    ];
    const beyond: string[] = [];
    const expires = packExpiryDays(input.form, s);
    if (input.ageDays > expires)
      beyond.push(
        `${plain(input.ageDays)} days is older than the ${expires} that this house uses ${input.form} packs for.`,
      );
    if (input.form === 'liquid' && Math.abs(input.storeC - 4) > 3)
      beyond.push(
        'What warmth or frost does to a liquid pack has not been published: it is taken to age as much faster or slower as slurry does.',
      );
    if (alive.likely < LEAST_ALIVE)
      return {
        says: ['Next to nothing in such a pack is alive: no number of them is enough.'],
        figures,
        beyond,
      };
    const dry = input.form === 'dry';
    const want = { needB: input.needB, packViableB: packB, packPrice: input.price ?? 0, dry };
    const many = input.needB / packB > MOST_PACKS || input.maxLitres === 0;
    const ways = freshPitches(
      want,
      { maxLitres: input.maxLitres, stirred: input.stirred, vessels: many ? 0 : 1 },
      s,
    );
    const word = (n: number) => `${plain(n)} ${n === 1 ? 'pack' : 'packs'}`;
    const cost = (money: number) => (input.price === null ? '' : `, at ${money.toFixed(2)}`);
    const told = ways.slice(0, TOLD_WAYS);
    const alone = ways.find(({ starterLitres }) => starterLitres === 0);
    if (alone && !told.includes(alone)) told.push(alone);
    const says = told.map((way, i) => {
      const what =
        way.starterLitres === 0
          ? `${word(way.packs)} without a starter`
          : `${word(way.packs)} and a starter of ${plain(way.starterLitres)} L`;
      return `${i === 0 ? (input.price === null ? '' : 'Cheapest: ') : 'Or '}${what}${cost(way.cost)}.`;
    });
    figures.push(figure('packs without a starter', alone?.packs ?? null, 'packs'));
    const largest = Math.max(...told.map(({ starterLitres }) => starterLitres));
    const work: CautionId[] =
      largest > 0 ? [boilingCaution(largest), 'hot-glass', 'starter-vent'] : [];
    return {
      says,
      figures,
      beyond,
      cautions: dry ? [] : ['swollen-pack', ...work],
    };
  },
});
