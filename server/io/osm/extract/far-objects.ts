import type { Bbox } from '../../../contract/common.ts';
import { at, numberAt } from '../../../core/lists/at.ts';
import type { Age } from './newest.ts';
import type { OsmType } from './raw-element.ts';

/**
 * Objects that a reader found beyond the land it was asked to keep. Of each it keeps what tells which version is the
 * newer, since an object may have moved off it after another file was made.
 */
export interface FarObjects {
  /** Kind, id, version and time of edit (milliseconds) of each in turn; NaN for what is not known. */
  readonly packed: Float64Array;
  /** Box of their positions, longitudes as they stand; null when there are none. */
  readonly bbox: Bbox | null;
}

const FIELDS = 4;
const KINDS: readonly OsmType[] = ['node', 'way', 'relation'];

export const NOTHING_FAR: FarObjects = { packed: new Float64Array(0), bbox: null };

export const farCount = (far: FarObjects): number => far.packed.length / FIELDS;

/** One of them, by what is known of it. */
export interface FarObject extends Age {
  type: OsmType;
  id: number;
}

/** The same with the time of edit in milliseconds; NaN for what is not known. */
export interface TimedObject {
  type: OsmType;
  id: number;
  version: number;
  timeMs: number;
}

/** Each of them in turn. */
export function* farObjects({ packed }: FarObjects): Generator<FarObject> {
  for (let first = 0; first < packed.length; first += FIELDS) {
    const type = at(KINDS, numberAt(packed, first));
    const object: FarObject = { type, id: numberAt(packed, first + 1) };
    const version = numberAt(packed, first + 2);
    const timeMs = numberAt(packed, first + 3);
    if (!Number.isNaN(version)) object.version = version;
    if (!Number.isNaN(timeMs)) object.timestamp = new Date(timeMs).toISOString();
    yield object;
  }
}

/** The box around two; either may be null. Longitudes are taken as they stand. */
export function joinedBoxes(a: Bbox | null, b: Bbox | null): Bbox | null {
  if (a === null || b === null) return a ?? b;
  return [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[2], b[2]), Math.max(a[3], b[3])];
}

/** The box around positions [lon, lat], longitudes as they stand; null when there are none. */
export function boxOfPositions(positions: Iterable<readonly [number, number]>): Bbox | null {
  let box: Bbox | null = null;
  for (const [lon, lat] of positions) box = joinedBoxes(box, [lon, lat, lon, lat]);
  return box;
}

/** Gathers far objects at 32 bytes each. */
export class FarList {
  #packed: number[] = [];
  #bbox: Bbox | null = null;

  get length(): number {
    return this.#packed.length / FIELDS;
  }

  add({ type, id, version, timestamp }: FarObject, bbox: Bbox | null): void {
    const timeMs = typeof timestamp === 'string' ? Date.parse(timestamp) : Number.NaN;
    this.addTimed({ type, id, version: version ?? Number.NaN, timeMs }, bbox);
  }

  addTimed({ type, id, version, timeMs }: TimedObject, bbox: Bbox | null): void {
    this.#packed.push(KINDS.indexOf(type), id, version, timeMs);
    this.#bbox = joinedBoxes(this.#bbox, bbox);
  }

  join(other: FarObjects): void {
    for (const value of other.packed) this.#packed.push(value);
    this.#bbox = joinedBoxes(this.#bbox, other.bbox);
  }

  objects(): FarObjects {
    return this.#packed.length === 0
      ? NOTHING_FAR
      : { packed: Float64Array.from(this.#packed), bbox: this.#bbox };
  }
}
