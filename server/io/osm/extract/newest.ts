/** What is known of the age of one version of an object. */
export interface Age {
  version?: number | undefined;
  /** ISO 8601. */
  timestamp?: string | null | undefined;
}

const millisecondsOf = (age: Age): number => {
  const at = typeof age.timestamp === 'string' ? Date.parse(age.timestamp) : Number.NaN;
  return at;
};

/** Whether anything is known of its age. */
export const isOfKnownAge = ({ version, timestamp }: Age): boolean =>
  version !== undefined || typeof timestamp === 'string';

/**
 * Less than 0 when `a` is older than `b`, more when newer, 0 when they cannot be told apart: by version, then by time
 * of edit. A version whose age is known is taken before one of which nothing is known.
 */
export function compareAge(a: Age, b: Age): number {
  if (a.version !== undefined && b.version !== undefined && a.version !== b.version) {
    return a.version - b.version;
  }
  const aAt = millisecondsOf(a);
  const bAt = millisecondsOf(b);
  if (!Number.isNaN(aAt) && !Number.isNaN(bAt)) return aAt - bAt;
  const known = (version: number | undefined, at: number) =>
    version !== undefined || !Number.isNaN(at) ? 1 : 0;
  return known(a.version, aAt) - known(b.version, bAt);
}
