// Which kinds of news fit a task, a brew or the house as a whole, and what is known of each before it is told. Pure.
import type { House, Plan, PlannedBrew } from '../../../../planner/index.ts';
import { addDays } from '../../../parts/days.ts';
import type { Told } from '../../../queries/record.ts';
import { standing } from '../told.ts';
import type { NewsField, NewsKind } from './news-form.ts';

/** Where the form was opened. */
export type Subject = { brew: string } | 'house';

export type Offer = {
  kind: NewsKind;
  /** The fields that are known from where it was opened. */
  fixed: Readonly<Record<string, unknown>>;
};
export type OfferGroup = { title: string; offers: Offer[] };

const offer = (kind: NewsKind, fixed: Readonly<Record<string, unknown>>): Offer => ({
  kind,
  fixed,
});

/** What has happened, whether or not the plan in force knows it yet. */
export type Happened = { brewed: ReadonlySet<string>; harvested: ReadonlySet<string> };

/** Read from the plan and from what was told since: a draft that waits to be looked at changes no fact. */
export function happenedBy(plan: Plan, entries: readonly Told[]): Happened {
  const told = standing(entries).map(({ news }) => {
    if (news.kind === 'task-done') return news.task;
    if (news.kind === 'brewed') return `brew-pitch:${news.brew}`;
    return news.kind === 'harvested' ? `harvest:${news.brew}` : '';
  });
  const keys = new Set(told);
  const names = (of: readonly { brew: string; done: boolean }[], kind: string) =>
    of.filter(({ brew, done }) => done || keys.has(`${kind}:${brew}`)).map(({ brew }) => brew);
  return {
    brewed: new Set(names(plan.brews, 'brew-pitch')),
    harvested: new Set(names(plan.harvests, 'harvest')),
  };
}

/** The kinds that fit, in groups by what they are about. */
export function offersFor(subject: Subject, plan: Plan, happened: Happened): OfferGroup[] {
  if (subject === 'house') return HOUSE;
  const brew = plan.brews.find((one) => one.brew === subject.brew);
  if (brew === undefined) {
    const fixed = { brew: subject.brew };
    return [
      { title: subject.brew, offers: [offer('resized', fixed), offer('brew-dropped', fixed)] },
    ];
  }
  return happened.brewed.has(brew.brew) ? brewedOffers(brew, happened) : openOffers(brew, happened);
}

function openOffers(brew: PlannedBrew, happened: Happened): OfferGroup[] {
  const fixed = { brew: brew.brew };
  const kinds: NewsKind[] = ['brewed', 'slipped', 'not-yet', 'resized', 'brew-dropped'];
  if (brew.starter !== null) kinds.push('starter-failed');
  const { source, yeast, tank } = brew;
  const groups = [
    { title: 'The brew', offers: kinds.map((kind) => offer(kind, fixed)) },
    { title: `Tank ${tank}`, offers: [offer('tank-out', { tank })] },
  ];
  if (source.kind === 'fresh') {
    const offers = [offer('packs-bought', { yeast }), offer('packs-late', { yeast })];
    return [...groups, { title: `Packs of ${yeast}`, offers }];
  }
  if (source.kind === 'jar') {
    const of = { kind: 'jar', jar: source.jar } as const;
    return [
      ...groups,
      {
        title: `Jar ${source.jar}`,
        offers: [offer('jar-gone', { jar: source.jar }), ...slurryOffers(of)],
      },
    ];
  }
  return happened.harvested.has(source.brew) ? [...groups, harvestGroup(source.brew)] : groups;
}

function brewedOffers(brew: PlannedBrew, { harvested }: Happened): OfferGroup[] {
  const fixed = { brew: brew.brew };
  const of = { kind: 'beer', brew: brew.brew } as const;
  const kinds: NewsKind[] = ['lag', 'slow', 'gravity', 'hopped', 'passed'];
  return [
    {
      title: 'The beer',
      offers: [
        ...kinds.map((kind) => offer(kind, fixed)),
        offer('suspect', { of }),
        offer('sound', { of }),
      ],
    },
    ...(harvested.has(brew.brew)
      ? [harvestGroup(brew.brew)]
      : [
          {
            title: 'Its yeast',
            offers: [offer('harvested', fixed), offer('harvest-lost', fixed)],
          },
        ]),
    { title: `Tank ${brew.tank}`, offers: [offer('tank-out', { tank: brew.tank })] },
  ];
}

function harvestGroup(brew: string): OfferGroup {
  const title = `The harvest of ${brew}`;
  const own = [offer('harvested', { brew }), offer('harvest-lost', { brew })];
  return { title, offers: [...own, ...slurryOffers({ kind: 'harvest', brew })] };
}

const slurryOffers = (of: Readonly<Record<string, string>>): Offer[] =>
  (['measured', 'frozen', 'suspect', 'sound'] as const).map((kind) => offer(kind, { of }));

const bare = (...kinds: NewsKind[]): Offer[] => kinds.map((kind) => offer(kind, {}));

/** Everything that can be told, whatever it is about; a tick and a taking back have their own places. */
const HOUSE: OfferGroup[] = [
  { title: 'The house', offers: bare('tank-out', 'day-closed') },
  { title: 'Packs', offers: bare('packs-bought', 'packs-late', 'starter-failed') },
  {
    title: 'Brews',
    offers: bare('brew-added', 'brew-dropped', 'resized', 'brewed', 'slipped', 'not-yet'),
  },
  { title: 'Beers in their tanks', offers: bare('lag', 'slow', 'gravity', 'hopped', 'passed') },
  {
    title: 'Harvests and jars',
    offers: bare('harvested', 'harvest-lost', 'jar-found', 'jar-gone', 'frozen', 'measured'),
  },
  { title: 'Gone bad, or not', offers: bare('suspect', 'sound') },
  {
    title: 'Wishes',
    offers: bare('pinned', 'unpinned', 'source-forbidden', 'source-allowed'),
  },
];

export type Choice = { value: string; says: string };

/** What a field may name, of the house and its plan as they are. */
export function choicesOf(
  field: Pick<NewsField, 'names' | 'among'>,
  kind: NewsKind,
  plan: Plan,
  house: House,
  happened: Happened,
): Choice[] {
  const plain = (names: readonly string[]) => names.map((value) => ({ value, says: value }));
  const brewed = [...happened.brewed];
  const open = [
    ...plan.brews.map((one) => one.brew).filter((brew) => !happened.brewed.has(brew)),
    ...plan.leftOut.map((one) => one.brew),
  ];
  const jars = house.jars.map((one) => one.jar);
  const has = (culture: string) => field.among.includes(culture);
  const ref = (value: Readonly<Record<string, string>>, says: string): Choice => ({
    value: JSON.stringify(value),
    says,
  });
  switch (field.names) {
    case 'tank':
      return plain(house.tanks.map((one) => one.tank));
    case 'yeast':
      return plain(house.yeasts.map((one) => one.yeast));
    case 'jar':
      return plain(jars);
    case 'brew':
      return plain(OF_BREWED.has(kind) ? brewed : open);
    case 'culture':
      return [
        ...jars.map((jar) => ref({ kind: 'jar', jar }, `Jar ${jar}`)),
        ...(has('harvest')
          ? brewed.map((brew) => ref({ kind: 'harvest', brew }, `Harvest of ${brew}`))
          : []),
        ...(has('beer') ? brewed.map((brew) => ref({ kind: 'beer', brew }, `Beer ${brew}`)) : []),
      ];
    case 'source':
      return [
        ref({ kind: 'fresh' }, 'Fresh packs'),
        ...jars.map((jar) => ref({ kind: 'jar', jar }, `Jar ${jar}`)),
        ...plan.brews.map(({ brew }) => ref({ kind: 'harvest', brew }, `Harvest of ${brew}`)),
      ];
    default:
      return [];
  }
}

/** Kinds about a beer that is in its tank or was. */
const OF_BREWED: ReadonlySet<NewsKind> = new Set<NewsKind>([
  'lag',
  'slow',
  'gravity',
  'hopped',
  'passed',
  'harvested',
  'harvest-lost',
]);

/** A week is how long a tank is most often away; nothing hangs on it but what the field starts with. */
const WEEK = 7;

/** What a field starts with: a figure of the plan or a day; nothing where a guess would be taken for a fact. */
export function startOf(
  path: string,
  { kind, fixed }: Offer,
  plan: Plan,
  house: House,
  today: string,
): unknown {
  const brew = plan.brews.find((one) => one.brew === fixed.brew);
  const later = (day: string) => addDays(day < today ? today : day, 1);
  switch (`${kind}.${path}`) {
    case 'slipped.to':
      return later(brew?.day ?? today);
    case 'slow.until':
      return later(brew?.emptiedOn ?? today);
    case 'day-closed.day':
    case 'tank-out.from':
    case 'packs-bought.arrivesOn':
      return today;
    case 'packs-late.arrivesOn':
      return addDays(today, WEEK);
    case 'tank-out.to':
      return addDays(today, WEEK);
    case 'pinned.day':
      return null;
    case 'resized.volumeL':
      return house.brews.find((one) => one.brew === fixed.brew)?.volumeL ?? null;
    case 'packs-bought.packs':
      return 1;
    default:
      return path === 'day' ? today : null;
  }
}
