// What every kind of task is made from: the plan and the house, looked up by name, and the words they share.
import {
  type Brew,
  type House,
  type Plan,
  type PlannedBrew,
  type PlannedHarvest,
  resolveSettings,
  type Settings,
  type Tank,
  type Task,
  type TaskKind,
  type Yeast,
} from '../model/index.ts';
import { type Hands, handsOf } from './days.ts';
import { kettleTimes, pitchTime } from './effort.ts';
import { type JarCoder, jarCoder } from './jar-codes.ts';
import { sayMl } from './words.ts';

/** A jar of a harvest with the code that is written on its lid. */
export type CodedJar = PlannedHarvest['jars'][number] & { code: string; spare: boolean };

export type TaskContext = {
  plan: Plan;
  house: House;
  settings: Settings;
  hands: Hands;
  /** As the house wants it; missing where the house no longer has it. */
  brew(name: string): Brew | undefined;
  planned(name: string): PlannedBrew | undefined;
  yeast(name: string): Yeast | undefined;
  tank(name: string): Tank | undefined;
  harvestOf(brew: string): PlannedHarvest | undefined;
  /** The jars of a harvest in the order in which they leave, spare ones last. */
  jarsOf(harvest: PlannedHarvest): CodedJar[];
  /** The letters that begin the codes of a beer's jars. */
  beerCode(brew: string): string;
  /** It happened, by the plan or because its task was ticked. */
  isBrewed(brew: string): boolean;
  isHarvested(brew: string): boolean;
  isPackaged(brew: string): boolean;
  /** Minutes after midnight. */
  kettleAt(brew: string): number;
  pitchAt(brew: string): number;
};

export type TaskDraft = Omit<Task, 'done' | 'kind'> & {
  /** The thing it is about has happened, whether or not anybody ticked the task. */
  happened?: boolean;
};

/** One kind of task: everything of that kind that a plan asks for. */
export type TaskMaker = { kind: TaskKind; make(context: TaskContext): TaskDraft[] };

export function contextOf(
  plan: Plan,
  house: House,
  isDone: (key: string) => boolean = () => false,
): TaskContext {
  const brews = new Map(house.brews.map((brew) => [brew.brew, brew]));
  const planned = new Map(plan.brews.map((brew) => [brew.brew, brew]));
  const yeasts = new Map(house.yeasts.map((yeast) => [yeast.yeast, yeast]));
  const tanks = new Map(house.tanks.map((tank) => [tank.tank, tank]));
  const harvests = new Map(plan.harvests.map((harvest) => [harvest.brew, harvest]));
  const kettle = kettleTimes(plan, house);
  const kettleAt = (brew: string) => kettle.get(brew) ?? 9 * 60;
  const coder = jarCoder(house, harvests.keys());
  return {
    plan,
    house,
    settings: resolveSettings(house.kind, house.rules),
    hands: handsOf(house),
    brew: (name) => brews.get(name),
    planned: (name) => planned.get(name),
    yeast: (name) => yeasts.get(name),
    tank: (name) => tanks.get(name),
    harvestOf: (brew) => harvests.get(brew),
    jarsOf: (harvest) => codedJars(harvest, coder),
    beerCode: coder.beer,
    isBrewed: (name) => (planned.get(name)?.done ?? false) || isDone(taskKey('brew-pitch', name)),
    isHarvested: (name) => (harvests.get(name)?.done ?? false) || isDone(taskKey('harvest', name)),
    isPackaged: (name) => isDone(taskKey('package', name)),
    kettleAt,
    pitchAt: (brew) => pitchTime(kettleAt(brew)),
  };
}

/** The reserve is counted as the last of ten spare jars: nothing else that is kept or not renames it. */
const RESERVE_AT = 9;

/** Jars that are drawn are coded as they leave, spare ones on their own: a draw more or less renames no spare jar. */
export function codedJars(harvest: PlannedHarvest, coder: JarCoder): CodedJar[] {
  const drawn = harvest.jars
    .filter((jar) => jar.for !== null)
    .sort((a, b) => compareText(a.leavesOn, b.leavesOn) || compareText(a.for ?? '', b.for ?? ''));
  const spare = harvest.jars.filter((jar) => jar.for === null && jar.untilPassed === undefined);
  const reserve = harvest.jars.filter((jar) => jar.untilPassed !== undefined);
  const coded = (jars: PlannedHarvest['jars'], isSpare: boolean, first = 0) =>
    jars.map((jar, at) => ({
      ...jar,
      code: coder.jar(harvest.brew, first + at, isSpare),
      spare: isSpare,
    }));
  const before = reserve.length > 0 ? spare.slice(0, RESERVE_AT) : spare;
  return [
    ...coded(drawn, false),
    ...coded(before, true),
    ...coded(spare.slice(before.length), true, RESERVE_AT + 1),
    ...coded(reserve, true, RESERVE_AT),
  ];
}

/** What a jar is there for, as its label says it: `for Quill`, `spare`, `in reserve until Quill is passed`. */
export function sayWhatFor(jar: PlannedHarvest['jars'][number]): string {
  if (jar.for !== null) return `for ${jar.for}`;
  return jar.untilPassed === undefined ? 'spare' : `in reserve until ${jar.untilPassed} is passed`;
}

/** Order of texts by their code units: the same on every machine. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** Names are data and may hold any character: the few that keys are built with are written otherwise. */
function inKey(name: string): string {
  return name.replace(/[%:@]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`);
}

/** The key of a task: its kind, then names, joined by colons; different names never give the same key. */
export function taskKey(kind: TaskKind, ...parts: readonly (string | number)[]): string {
  return [kind, ...parts.map((part) => inKey(String(part)))].join(':');
}

/** Stands in a key where a brew's name would stand, for what comes from the shelf and from no brew of the season. */
export const SHELF = '@shelf';
/** The key of the task to throw a jar of the shelf away. */
export function shelfKey(jar: string): string {
  return `${taskKey('discard-by')}:${SHELF}:${inKey(jar)}`;
}

/** Where slurry comes from: `out of Millrace`, `kept from the starter of Millrace`. */
export function outOf(one: { brew: string; ofStarter?: true | undefined }): string {
  return one.ofStarter ? `kept from the starter of ${one.brew}` : `out of ${one.brew}`;
}

/** What goes into a brew, in words: `184 mL out of Millrace`, `220 mL of jar J1`, `1 pack of Harbour Lager`. */
export function saySource(brew: PlannedBrew): string {
  const source = brew.source;
  switch (source.kind) {
    case 'fresh':
      return `${source.packs} ${source.packs === 1 ? 'pack' : 'packs'} of ${brew.yeast}`;
    case 'jar':
      return `${sayMl(source.drawMl)} of jar ${source.jar}`;
    case 'harvest':
      return `${sayMl(source.drawMl)} ${outOf(source)}`;
  }
}

/** The jars that a brew is pitched from, by the codes on their lids. */
export function jarCodesFor(brew: PlannedBrew, context: TaskContext): string[] {
  const source = brew.source;
  if (source.kind === 'fresh') return [];
  if (source.kind === 'jar') return [source.jar];
  const harvest = context.harvestOf(source.brew);
  if (harvest === undefined) return [];
  return context
    .jarsOf(harvest)
    .filter((jar) => jar.for === brew.brew)
    .map((jar) => jar.code);
}
