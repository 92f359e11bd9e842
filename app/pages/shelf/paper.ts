// Papers that labels are printed on, and how labels are laid out on their sheets.

export type PaperId = 'a4' | 'letter' | 'a4-24';
export type Paper = {
  id: PaperId;
  says: string;
  /** Labels across and down one sheet. */
  across: number;
  down: number;
};

/** Plain paper is cut along its lines; labels of 70 × 37 mm, three across and eight down, are a common size of stationery. */
export const PAPERS: readonly Paper[] = [
  { id: 'a4', says: 'plain A4', across: 2, down: 5 },
  { id: 'letter', says: 'plain Letter', across: 2, down: 5 },
  { id: 'a4-24', says: '24 labels of 70 × 37 mm, A4', across: 3, down: 8 },
];

/** A place of a sheet and what is printed there; null: it stays blank. */
export type Place<T> = { place: number; label: T | null };

/** Labels on sheets; the first so many places of the first sheet are used up and stay blank. */
export function sheetsOf<T>(labels: readonly T[], paper: Paper, usedUp: number): Place<T>[][] {
  const most = paper.across * paper.down;
  const skipped = Math.min(Math.max(0, Math.trunc(usedUp) || 0), most - 1);
  const blanks = Array.from({ length: skipped }, () => null);
  const all = [...blanks, ...labels].map((label, place): Place<T> => ({ place, label }));
  const sheets: Place<T>[][] = [];
  for (let at = 0; at < all.length; at += most) sheets.push(all.slice(at, at + most));
  return sheets;
}
