import type { PlaceName, SupplyKind } from './said/supply-kinds.ts';

export type Direction = 'n' | 'ne' | 'e' | 'se' | 's' | 'sw' | 'w' | 'nw';

/** A named place near something, and in which direction that lies as seen from there. */
export interface NearPlace {
  readonly name: string;
  readonly offM: number;
  readonly direction: Direction;
}

/** Cautions on what the user noted. Days are ISO dates. */
export interface NoteCautions {
  /** Confirmed long before the departure: ask again from that day on. */
  'confirm-before-leaving': { name: PlaceName; on: string; from: string };
}

/** Where a supply is, for people. */
export interface NotePhrases {
  'supply-where': { kind: SupplyKind; atM: number; near: NearPlace | null };
}
