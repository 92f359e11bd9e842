// What the planner says of the book: the same schemas and checks as the server's, run in the browser.
import './no-eval.ts';
import { type House, type Problem, parseHouse } from '../../../planner/index.ts';
import { type Book, documentOf, LISTS, type ListName } from './book.ts';

export type Checked = {
  /** The house, where it can be saved. */
  house: House | null;
  problems: readonly Problem[];
  /** Problems of rows, by list and the row's number; each with the field it lies in, or ''. */
  ofRow: (list: ListName, id: number) => readonly PlacedProblem[];
  /** Problems of the house itself, by a place such as `store.tempC`, and of a list as a whole. */
  at: (place: string) => readonly Problem[];
};
export type PlacedProblem = { field: string; problem: Problem };

const IN_ROW = /^(\w+)\[(\d+)\](?:\.(\w+))?/;
const NONE: readonly never[] = [];

/** Looks at all that is written. */
export function checkBook(book: Book): Checked {
  const { house, problems } = parseHouse(documentOf(book));
  const rows = new Map<string, PlacedProblem[]>();
  const places = new Map<string, Problem[]>();
  for (const problem of problems) {
    const [, listName, at, field = ''] = IN_ROW.exec(problem.path) ?? [];
    const list = LISTS.find((one) => one === listName);
    const id = list && book.lists[list][Number(at)]?.id;
    if (list && id !== undefined) {
      const key = `${list} ${id}`;
      rows.set(key, [...(rows.get(key) ?? []), { field, problem }]);
    } else {
      const place = problem.path.replace(/\[.*/, '');
      places.set(place, [...(places.get(place) ?? []), problem]);
    }
  }
  return {
    house,
    problems,
    ofRow: (list, id) => rows.get(`${list} ${id}`) ?? NONE,
    at: (place) => places.get(place) ?? NONE,
  };
}

/** A problem as it is read beside its field. */
export const problemWords = ({ message, remedy }: Problem): string => `${message} ${remedy}`;
