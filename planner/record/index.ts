// What happened, as an append-only record: news resolved to entries, and entries folded to what holds now.
export { RecordEntry, RecordFact } from './entry.ts';
export { foldRecord, type RecordState } from './fold.ts';
export { hindsightOf } from './hindsight.ts';
export { houseNow } from './overlay.ts';
export { familyOf } from './relatives.ts';
export { resolveNews } from './resolve.ts';
export { sayNews } from './say.ts';
export { shelfOf } from './shelf.ts';
