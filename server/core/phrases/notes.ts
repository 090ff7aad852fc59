import type { NoFacts, Phrased } from './said/said.ts';
import type { PlaceName, SupplyKind } from './said/supply-kinds.ts';
import type { SaidBy } from './supply.ts';

export type Direction = 'n' | 'ne' | 'e' | 'se' | 's' | 'sw' | 'w' | 'nw';

/** A named place near something, and in which direction that lies as seen from there. */
export interface NearPlace {
  readonly name: string;
  readonly offM: number;
  readonly direction: Direction;
}

/** A supply near the place of another. */
export interface NearSupply {
  readonly id: string;
  readonly name: string | null;
  readonly offM: number;
}

/** A tag as it was and as it is; null where there is none. */
export interface ChangedTag {
  readonly key: string;
  readonly before: string | null;
  readonly now: string | null;
}

/** Cautions on what the user noted. Days are ISO dates. */
export interface NoteCautions {
  /** Confirmed long before the departure: ask again from that day on. */
  'confirm-before-leaving': { name: PlaceName; on: string; from: string };
  /** The route goes over a stretch on which nobody may drive, between those days where they are told. */
  'route-closed': SaidBy & { on: string; from?: string; until?: string };
  'closed-off-route': { atM: number };
  /** What is noted of an object that the map does not have any more, and what stands near its place. */
  'note-object-gone': { id: string; on: string; near: NearSupply | null };
  'note-object-moved': { id: string; name: string | null; on: string; movedM: number };
  'note-object-changed': { id: string; name: string | null; on: string; changes: readonly ChangedTag[] };
  'note-new-nearby': { id: string; name: string | null; on: string; near: NearSupply };
}

/** Why co-ordinates cannot be read. */
export interface CoordinateFaults {
  'coordinate-two-wanted': NoFacts;
  'coordinate-mixed-up': NoFacts;
  'coordinate-one-letter': NoFacts;
  'coordinate-same-axis': NoFacts;
  'coordinate-comma-unclear': NoFacts;
  'coordinate-letter-unclear': { letter: string };
  'coordinate-not-read': { character: string };
  'coordinate-latitude-beyond': { degrees: number };
  'coordinate-longitude-beyond': { degrees: number };
}
export type CoordinateFault = Phrased<CoordinateFaults>;

/** Where a supply is, for people. */
export interface NotePhrases extends CoordinateFaults {
  'noted-by-you': SaidBy & { on: string };
  'supply-where': { kind: SupplyKind; atM: number; near: NearPlace | null };
}
