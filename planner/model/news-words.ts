// What each kind of news is called and what telling it does, in a line each, for pages and documents.
import type { NewsKind } from './news.ts';

export type NewsWords = {
  /** What it is about: where a page offers it. */
  about: 'brew' | 'beer' | 'harvest' | 'jar' | 'slurry' | 'culture' | 'tank' | 'yeast' | 'season';
  /** A few words, as on a button. */
  title: string;
  /** What the planner makes of it, in one sentence. */
  says: string;
};

export const NEWS_WORDS: Readonly<Record<NewsKind, NewsWords>> = {
  brewed: {
    about: 'brew',
    title: 'Brewed',
    says: 'It was brewed on this day; tank and mL poured may differ from the plan.',
  },
  slipped: {
    about: 'brew',
    title: 'Slips to a day',
    says: 'It is not brewed before this day.',
  },
  'not-yet': {
    about: 'brew',
    title: 'Not today, day unknown',
    says: 'It is not brewed today; the plan looks for a day from tomorrow on.',
  },
  'brew-added': {
    about: 'season',
    title: 'A brew more',
    says: 'The season gets one more brew; the house as it was entered stays as it is.',
  },
  'brew-dropped': {
    about: 'brew',
    title: 'Not brewed at all',
    says: 'The brew leaves the season, and yeast that waited for it is free.',
  },
  resized: {
    about: 'brew',
    title: 'Another size',
    says: 'More or fewer litres are brewed: the tank has to hold them and the yeast has to do.',
  },
  slow: {
    about: 'beer',
    title: 'Ferments slowly',
    says: 'It is neither harvested nor emptied before this day, and what waits for tank or yeast moves.',
  },
  gravity: {
    about: 'beer',
    title: 'Came out at another gravity',
    says: 'Its yeast is judged by the gravity it really had; at or above the ceiling it is not pitched again.',
  },
  lag: {
    about: 'beer',
    title: 'When it began to foam',
    says: 'It moves nothing; it stands in hindsight beside the generation and share alive of what was pitched.',
  },
  hopped: {
    about: 'beer',
    title: 'Dry-hopped',
    says: 'The hops went in on this day; yeast harvested after it is not pitched again.',
  },
  passed: {
    about: 'beer',
    title: 'Tasted and passed',
    says: 'It tastes as it should: it comes off watch.',
  },
  harvested: {
    about: 'harvest',
    title: 'Harvested',
    says: 'So many mL of settled slurry were taken; told again, it is a better reading of the same jars.',
  },
  'harvest-lost': {
    about: 'harvest',
    title: 'Harvest lost',
    says: 'What was left of this harvest is gone, or none could be taken.',
  },
  'jar-found': {
    about: 'season',
    title: 'A jar turned up',
    says: 'A jar that is not on the list stands on the shelf and may be pitched.',
  },
  'jar-gone': {
    about: 'jar',
    title: 'Lost or thrown away',
    says: 'The jar is no longer there.',
  },
  frozen: {
    about: 'slurry',
    title: 'Was frozen',
    says: 'Freezing kills most of it: it is on watch and not pitched until it has been counted.',
  },
  measured: {
    about: 'slurry',
    title: 'Counted',
    says: 'Share alive or cells per mL are as counted, not as predicted.',
  },
  suspect: {
    about: 'culture',
    title: 'Gone bad, or may have',
    says: 'It and all that comes of it are not pitched; its siblings and the beer it came from are on watch.',
  },
  sound: {
    about: 'culture',
    title: 'Sound after all',
    says: 'It was checked and is sound: what was held back for its sake may be pitched again.',
  },
  'packs-bought': {
    about: 'yeast',
    title: 'Packs bought',
    says: 'So many packs are in the house from this day on, paid for already.',
  },
  'packs-late': {
    about: 'yeast',
    title: 'Packs come on another day',
    says: 'A delivery under way comes on another day; brews that need it wait or get other yeast.',
  },
  'starter-failed': {
    about: 'brew',
    title: 'Starter failed',
    says: 'The starter is thrown away with the yeast that was in it; the brew gets other yeast.',
  },
  'tank-out': {
    about: 'tank',
    title: 'Out of use',
    says: 'The tank cannot hold a beer from the first to the last of these days.',
  },
  'day-closed': {
    about: 'season',
    title: 'Day closed',
    says: 'Nobody works on this day: no brew, no harvest, no packaging.',
  },
  pinned: {
    about: 'brew',
    title: 'Hold fast',
    says: 'The plan keeps this day, this tank or this yeast, each alone or together.',
  },
  unpinned: {
    about: 'brew',
    title: 'Let go',
    says: 'The plan may move it again.',
  },
  'source-forbidden': {
    about: 'brew',
    title: 'Not this yeast',
    says: 'The brew is not to be pitched from this jar, this harvest or from packs.',
  },
  'source-allowed': {
    about: 'brew',
    title: 'This yeast after all',
    says: 'A source that was ruled out for the brew may be used again.',
  },
  'task-done': {
    about: 'season',
    title: 'Done',
    says: 'The task was done on this day, as it was planned.',
  },
  undone: {
    about: 'season',
    title: 'Take back',
    says: 'An entry of the record no longer holds; nothing is erased.',
  },
};
