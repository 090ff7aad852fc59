/** Set by the service worker on an answer that it kept, where the server gave none: web/public/service-worker.js. */
const KEPT_SINCE = 'drystage-kept-since';

/** Since when what the server said last is kept in this browser, as it does not answer; null where it answers. */
let keptSince: Date | null = null;
const listeners = new Set<() => void>();

/** Takes note of whether an answer is the server's own. */
export function noteReach({ headers }: Response): void {
  const said = headers.get(KEPT_SINCE);
  const next = said === null ? null : new Date(said);
  if (next?.getTime() === keptSince?.getTime()) return;
  keptSince = next;
  for (const listener of listeners) listener();
}

export const readReach = (): Date | null => keptSince;

export function subscribeToReach(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
