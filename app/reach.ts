// Whether the server answers, as the last request found it.
type Listener = () => void;

let lost = false;
const listeners = new Set<Listener>();

/** Told by every request. */
export function tellReach(answers: boolean): void {
  if (lost === !answers) return;
  lost = !answers;
  for (const listener of listeners) listener();
}

export const isLost = (): boolean => lost;

export function subscribeReach(listener: Listener): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
