import type { FillingWay } from '../../../phrases/rig/treatment-waters.ts';

/** A bucket on a rope: litres that come up, metres a second up and down, seconds to fill and pour (ours). */
const BUCKET = { litres: 8, mPerSecond: 0.5, turnSeconds: 20 };

/** Litres a minute that one person draws with rope and bucket from a depth in metres (ours). */
export const drawnLPerMin = (depthM: number): number =>
  (BUCKET.litres * 60) / ((2 * depthM) / BUCKET.mPerSecond + BUCKET.turnSeconds);

export interface Filling {
  minutes: number;
  lPerMin: number;
  how: FillingWay;
}

/**
 * Minutes to fill `litres` from a source: at the flow noted, else by rope and bucket from the depth noted; null where
 * nothing to reckon with was noted.
 */
export function timeToFill(
  litres: number,
  note: { litresPerMinute?: number; depthM?: number },
  ropeAndBucket: boolean,
): Filling | null {
  if (note.litresPerMinute !== undefined) {
    return { minutes: litres / note.litresPerMinute, lPerMin: note.litresPerMinute, how: 'noted' };
  }
  if (note.depthM === undefined || !ropeAndBucket) return null;
  const lPerMin = drawnLPerMin(note.depthM);
  return { minutes: litres / lPerMin, lPerMin, how: 'rope-and-bucket' };
}
