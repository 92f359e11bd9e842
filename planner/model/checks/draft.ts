// What is known of a house while it is being checked: sound fields only, so that one mistake hides no other.
import { Brew, House, Jar, Tank, Yeast, YeastCount } from '../house.ts';

export type PathPart = string | number;

/** Says where in the document (or in which file and line) a path lies, and what the field is called there. */
export type Placing = (path: readonly PathPart[]) => { path: string; field: string };

export const LISTS = ['tanks', 'yeasts', 'jars', 'brews', 'counts'] as const;
export type ListName = (typeof LISTS)[number];

/** What one row of each list is called, and the key that holds its name. */
export const ROW_NOUN = {
  tanks: 'tank',
  yeasts: 'yeast',
  jars: 'jar',
  brews: 'brew',
  counts: 'count',
} as const;

const ROW_SCHEMA = {
  tanks: Tank.partial(),
  yeasts: Yeast.partial(),
  jars: Jar.partial(),
  brews: Brew.partial(),
  counts: YeastCount.partial(),
} as const;

const HEAD_SCHEMA = House.omit({
  tanks: true,
  yeasts: true,
  jars: true,
  brews: true,
  counts: true,
}).partial();

/** As `T`, with any of its fields unknown. */
export type Loose<T> = { [K in keyof T]?: T[K] | undefined };

export type Head = Omit<House, ListName>;

/** A house with unknown parts: what failed to parse is undefined, every row keeps its place. */
export type Draft = {
  head: Loose<Head>;
  tanks: Loose<Tank>[];
  yeasts: Loose<Yeast>[];
  jars: Loose<Jar>[];
  brews: Loose<Brew>[];
  counts: Loose<YeastCount>[];
  /** Whether a list was there to be read at all. */
  given: Record<ListName, boolean>;
};

/** The draft of a house of which everything is known. */
export function draftOf(house: House): Draft {
  const { tanks, yeasts, jars, brews, counts, ...head } = house;
  return {
    head,
    tanks,
    yeasts,
    jars,
    brews,
    counts,
    given: { tanks: true, yeasts: true, jars: true, brews: true, counts: true },
  };
}

type Tree = { readonly [key: string]: unknown };

export const isRecord = (value: unknown): value is Tree =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The known keys of a record less the ones that are not sound. */
function soundPart(value: unknown, known: Tree, faulty: ReadonlySet<PathPart>): Tree {
  if (!isRecord(value)) return {};
  return Object.fromEntries(
    Object.entries(value).filter(([key]) => Object.hasOwn(known, key) && !faulty.has(key)),
  );
}

/** What is faulty is unknown: it must not look as if its default had been chosen. */
function without<T extends object>(row: T, faulty: ReadonlySet<PathPart>): Loose<T> {
  return Object.fromEntries(Object.entries(row).filter(([key]) => !faulty.has(key))) as Loose<T>;
}

/** The keys right below a path at which something is wrong. */
function faultyKeys(faults: readonly (readonly PropertyKey[])[], below: readonly PathPart[]) {
  const keys = new Set<PathPart>();
  for (const path of faults) {
    const key = path[below.length];
    if (below.every((part, at) => path[at] === part) && key !== undefined) {
      keys.add(typeof key === 'symbol' ? String(key) : key);
    }
  }
  return keys;
}

/**
 * The draft of a document of which the shape is wrong at these paths.
 * @param input the document as it was given
 * @param faults the paths of all that is wrong with its shape
 */
export function draftOfParts(input: unknown, faults: readonly (readonly PropertyKey[])[]): Draft {
  const document: Tree = isRecord(input) ? input : {};
  const rowFaults = new Map<string, (readonly PropertyKey[])[]>();
  for (const path of faults) {
    const place = `${String(path[0])} ${String(path[1])}`;
    rowFaults.set(place, [...(rowFaults.get(place) ?? []), path]);
  }
  const rows = (list: ListName): unknown[] => {
    const value = document[list];
    if (!Array.isArray(value)) return [];
    return value.map((row: unknown, at) => {
      const schema = ROW_SCHEMA[list];
      const faulty = faultyKeys(rowFaults.get(`${list} ${at}`) ?? [], [list, at]);
      const parsed = schema.safeParse(soundPart(row, schema.shape, faulty));
      return parsed.success ? without(parsed.data, faulty) : {};
    });
  };
  const faulty = faultyKeys(faults, []);
  const head = HEAD_SCHEMA.safeParse(soundPart(document, HEAD_SCHEMA.shape, faulty));
  return {
    head: head.success ? without(head.data, faulty) : {},
    tanks: rows('tanks') as Loose<Tank>[],
    yeasts: rows('yeasts') as Loose<Yeast>[],
    jars: rows('jars') as Loose<Jar>[],
    brews: rows('brews') as Loose<Brew>[],
    counts: rows('counts') as Loose<YeastCount>[],
    given: {
      tanks: Array.isArray(document.tanks),
      yeasts: Array.isArray(document.yeasts),
      jars: Array.isArray(document.jars),
      brews: Array.isArray(document.brews),
      counts: Array.isArray(document.counts),
    },
  };
}
