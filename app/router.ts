// The page's own small router: what stands behind the # of the address.
import { useSyncExternalStore } from 'react';

export type Route =
  | { page: 'season' }
  | { page: 'pitch'; brew: string }
  | { page: 'tasks'; task?: string }
  | { page: 'subscribe' }
  | { page: 'reckoner'; question: string }
  | { page: 'brews' }
  | { page: 'shelf'; view: ShelfView; name: string }
  | { page: 'house' }
  | { page: 'worth' }
  | { page: 'doors' }
  | { page: 'keeping' }
  | { page: 'start'; step: string }
  | { page: 'lost'; hash: string };

/** The whole shelf, its labels, or one thing of it: by the code on a lid, or by its kind and name. */
export type ShelfView = 'all' | 'labels' | 'code' | 'jar' | 'harvest' | 'beer';

function shelfRoute(rest: readonly string[]): Route | null {
  const [first = '', ...more] = rest;
  if (rest.length === 0) return { page: 'shelf', view: 'all', name: '' };
  const kind = (['jar', 'harvest', 'beer'] as const).find((one) => one === first);
  const text = decode(kind && more.length > 0 ? more.join('/') : first);
  if (text === null || text === '' || (!kind && more.length > 0)) return null;
  if (kind && more.length > 0) return { page: 'shelf', view: kind, name: text };
  if (text === 'labels') return { page: 'shelf', view: 'labels', name: '' };
  return { page: 'shelf', view: 'code', name: text };
}

/** The route that a hash means; '' means the season. */
export function routeOf(hash: string): Route {
  const [head = '', ...rest] = hash.replace(/^#?\/?/, '').split('/');
  if (head === '') return { page: 'season' };
  if (head === 'tasks' && rest.length === 0) return { page: 'tasks' };
  if (head === 'tasks') {
    const task = decode(rest.join('/'));
    if (task !== null && task !== '') return { page: 'tasks', task };
  }
  if (head === 'subscribe' && rest.length === 0) return { page: 'subscribe' };
  if (head === 'reckoner' && rest.length <= 1) {
    const question = decode(rest[0] ?? '');
    if (question !== null) return { page: 'reckoner', question };
  }
  if (head === 'shelf') {
    const shelf = shelfRoute(rest);
    if (shelf !== null) return shelf;
  }
  if (head === 'doors' && rest.length === 0) return { page: 'doors' };
  if (head === 'keeping' && rest.length === 0) return { page: 'keeping' };
  if (head === 'house' && rest.length === 0) return { page: 'house' };
  if (head === 'worth' && rest.length === 0) return { page: 'worth' };
  if (head === 'start' && rest.length <= 1)
    return { page: 'start', step: decode(rest[0] ?? '') ?? '' };
  if (head === 'brews' && rest.length === 0) return { page: 'brews' };
  if (head === 'brews') {
    const brew = decode(rest.join('/'));
    if (brew !== null && brew !== '') return { page: 'pitch', brew };
  }
  return { page: 'lost', hash };
}

/** The address of a route within the page. */
export function hashOf(route: Exclude<Route, { page: 'lost' }>): string {
  if (route.page === 'season') return '#/';
  if (route.page === 'pitch') return `#/brews/${encodeURIComponent(route.brew)}`;
  if (route.page === 'shelf' && route.view !== 'all') {
    if (route.view === 'labels') return '#/shelf/labels';
    const name = encodeURIComponent(route.name);
    return route.view === 'code' ? `#/shelf/${name}` : `#/shelf/${route.view}/${name}`;
  }
  if (route.page === 'reckoner' && route.question !== '') {
    return `#/reckoner/${encodeURIComponent(route.question)}`;
  }
  if (route.page === 'start' && route.step !== '')
    return `#/start/${encodeURIComponent(route.step)}`;
  if (route.page === 'tasks' && route.task) return `#/tasks/${encodeURIComponent(route.task)}`;
  return `#/${route.page}`;
}

function decode(text: string): string | null {
  try {
    return decodeURIComponent(text);
  } catch {
    return null;
  }
}

function subscribe(changed: () => void): () => void {
  window.addEventListener('hashchange', changed);
  return () => window.removeEventListener('hashchange', changed);
}

/** The route that is open now; re-renders when it changes. */
export function useRoute(): Route {
  return routeOf(useSyncExternalStore(subscribe, () => window.location.hash));
}

/** A phone that comes without saying what it wants gets the tasks first. */
export function chooseFirstPage(): void {
  const phone = window.matchMedia('(max-width: 640px)').matches;
  if (window.location.hash === '' && phone) {
    window.history.replaceState(null, '', hashOf({ page: 'tasks' }));
  }
}
