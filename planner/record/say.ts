// One piece of news as a sentence without its full stop, for lists of what was told.
import type { News } from '../model/index.ts';
import { sayDay } from '../tasks/days.ts';
import { sayL, saySg, sayShare } from '../tasks/words.ts';
import { capital, sayCulture, saySourceRef } from './words.ts';

/** What was told, in words. */
export function sayNews(news: News): string {
  switch (news.kind) {
    case 'brewed':
      return `${news.brew} was brewed on ${sayDay(news.day)}${news.tank === null ? '' : ` into ${news.tank}`}${news.drawnMl === null ? '' : `, ${Math.round(news.drawnMl)} mL of slurry pitched`}`;
    case 'slipped':
      return `${news.brew} slipped to ${sayDay(news.to)} or later`;
    case 'not-yet':
      return `${news.brew} is not brewed yet, its day is open`;
    case 'brew-added':
      return `${news.row.brew} was added to the season`;
    case 'brew-dropped':
      return `${news.brew} was dropped from the season`;
    case 'resized':
      return `${news.brew} is brewed with ${sayL(news.volumeL)}`;
    case 'slow':
      return `${news.brew} ferments slowly, until ${sayDay(news.until)} at least`;
    case 'gravity':
      return `${news.brew} came out at ${saySg(news.og)}${news.fg === null ? '' : ` and ended at ${saySg(news.fg)}`}`;
    case 'lag':
      return `${news.brew} began to foam ${news.hours} hours after the pitch`;
    case 'hopped':
      return `${news.brew} was dry-hopped on ${sayDay(news.day)}`;
    case 'passed':
      return `${news.brew} was tasted and passed on ${sayDay(news.day)}`;
    case 'harvested':
      return `${news.brew} gave ${Math.round(news.settledMl)} mL on ${sayDay(news.day)}`;
    case 'harvest-lost':
      return `The harvest of ${news.brew} was lost on ${sayDay(news.day)}`;
    case 'jar-found':
      return `Jar ${news.row.jar} turned up`;
    case 'jar-gone':
      return `Jar ${news.jar} is gone since ${sayDay(news.day)}`;
    case 'frozen':
      return `${capital(sayCulture(news.of))} was frozen on ${sayDay(news.day)}`;
    case 'measured':
      return `${capital(sayCulture(news.of))} was counted on ${sayDay(news.day)}${sayCount(news)}`;
    case 'suspect':
      return `${capital(sayCulture(news.of))} is suspect since ${sayDay(news.day)}`;
    case 'sound':
      return `${capital(sayCulture(news.of))} was found sound on ${sayDay(news.day)}`;
    case 'packs-bought':
      return `${sayPacks(news.packs)} of ${news.yeast} bought, there on ${sayDay(news.arrivesOn)}`;
    case 'packs-late':
      return `Packs of ${news.yeast} come on ${sayDay(news.arrivesOn)}`;
    case 'starter-failed':
      return `The starter for ${news.brew} failed on ${sayDay(news.day)}`;
    case 'tank-out':
      return `${news.tank} is out of use from ${sayDay(news.from)} to ${sayDay(news.to)}`;
    case 'day-closed':
      return `${sayDay(news.day)} is closed`;
    case 'pinned':
      return `${news.brew} is held fast${news.day ? ` on ${sayDay(news.day)}` : ''}${news.tank ? ` in ${news.tank}` : ''}${news.source ? ` with ${saySourceRef(news.source)}` : ''}`;
    case 'unpinned':
      return `${news.what ? `The ${news.what} of ${news.brew}` : news.brew} may change again`;
    case 'source-forbidden':
      return `${news.brew} is not to get ${saySourceRef(news.source)}`;
    case 'source-allowed':
      return `${news.brew} may get ${saySourceRef(news.source)} again`;
    case 'task-done':
      return `Done on ${sayDay(news.day)}: ${news.task}`;
    case 'undone':
      return `Entry ${news.entry} was taken back`;
  }
}

const sayPacks = (packs: number): string => `${packs} ${packs === 1 ? 'pack' : 'packs'}`;

function sayCount(news: News & { kind: 'measured' }): string {
  const alive =
    news.stained !== null && news.total !== null ? 1 - news.stained / news.total : news.viability;
  const parts = [
    ...(alive === null ? [] : [`${sayShare(alive)} alive`]),
    ...(news.millionPerMl === null ? [] : [`${Math.round(news.millionPerMl)} million per mL`]),
  ];
  return parts.length === 0 ? '' : `: ${parts.join(', ')}`;
}
