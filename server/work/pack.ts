import { deserialize, serialize } from 'node:v8';
import type { LoadedTrip } from '../app/loaded-trip.ts';

/**
 * Packs a loaded trip into bytes that all threads share: the main thread keeps them, bounded by their true size, and any
 * worker can unpack them, also one that was started after a crash.
 */
export function packTrip(loaded: LoadedTrip): SharedArrayBuffer {
  const bytes = serialize(loaded);
  const shared = new SharedArrayBuffer(bytes.byteLength);
  new Uint8Array(shared).set(bytes);
  return shared;
}

/** The trip as it was packed. The bytes were written by packTrip in this process, so they are taken on trust. */
export function unpackTrip(packed: SharedArrayBuffer): LoadedTrip {
  return deserialize(Buffer.from(packed)) as LoadedTrip;
}
