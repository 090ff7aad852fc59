import type { Commodity, Evidence, WaterClass } from '../../../contract/common.ts';
import type { Tags } from '../../input/sources.ts';
import type { SupplyKind } from '../../phrases/said/supply-kinds.ts';
import type { SupplyReason } from '../../phrases/supply.ts';

/** A supply point for one commodity, judged for a rig and a trip. */
export interface SupplyPoint {
  id: string;
  alsoIds: string[];
  name: string | null;
  commodity: Commodity;
  kind: SupplyKind;
  lon: number;
  lat: number;
  evidence: Evidence;
  counts: boolean;
  /** Why not, or what to know; codes are stable. */
  reasons: SupplyReason[];
  /** Water only. */
  waterClass?: WaterClass;
  /** ISO date of the last edit or check on the spot; null where none is known. */
  seenOn: string | null;
  tags: Tags;
  /** As the map has them, where the user corrected them. */
  mappedTags?: Tags;
}
