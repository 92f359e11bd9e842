// Which beer is looked at, kept beside the tree of components: only what shows it is drawn anew when it changes.
import { useSyncExternalStore } from 'react';

export type Active = {
  get(): string | null;
  /** Takes effect with the next frame, so that a pointer that crosses many beers in one is followed once. */
  set(brew: string | null): void;
  listen(listener: () => void): () => void;
};

export function createActive(): Active {
  let now: string | null = null;
  let next: string | null = null;
  let waits = false;
  const listeners = new Set<() => void>();
  const take = () => {
    waits = false;
    if (now === next) return;
    now = next;
    for (const listener of listeners) listener();
  };
  return {
    get: () => now,
    set(brew) {
      next = brew;
      if (waits || now === next) return;
      waits = true;
      requestAnimationFrame(take);
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** The beer that is looked at; who calls this is drawn anew when it changes. */
export const useActive = (active: Active): string | null =>
  useSyncExternalStore(active.listen, active.get);
