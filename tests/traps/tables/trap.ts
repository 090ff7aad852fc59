import type { Commodity, Evidence, WaterClass } from '../../../server/contract/common.ts';
import type { Tags } from '../../../server/core/input/sources.ts';
import type { SupplyReasonCode } from '../../../server/core/phrases/supply.ts';

/** The rigs that traps are set for; all but the first differ from the straight route's own in one thing. */
export type TrapRig = 'diesel' | 'petrol' | 'lpg' | 'heavy';
/** Without a date; in July without and with an hour of departure. */
export type TrapTrip = 'undated' | 'july' | 'july at eight';

/** One mapped object that may falsely look like a supply, and what is to be made of it. */
export interface Trap {
  readonly name: string;
  readonly tags: Tags;
  readonly commodity: Commodity;
  readonly evidence: Evidence;
  readonly counts: boolean;
  /** Of water. */
  readonly waterClass?: WaterClass;
  /** A reason that must be given; null: none is asked for. */
  readonly reason: SupplyReasonCode | null;
  /** Page of the OSM wiki. */
  readonly source: string;
  readonly rig: TrapRig;
  readonly trip: TrapTrip;
}

type More = Partial<Pick<Trap, 'evidence' | 'counts' | 'waterClass' | 'rig' | 'trip' | 'name'>>;

export const STATION: Tags = { amenity: 'fuel', 'fuel:diesel': 'yes' };
export const TAP: Tags = { amenity: 'drinking_water' };

const nameOf = (tags: Tags): string =>
  Object.entries(tags)
    .map(([key, value]) => `${key}=${value}`)
    .join(', ');

/** A trap of fuel: doubtful, and out of the count, unless `more` says else. */
export const fuel = (tags: Tags, reason: Trap['reason'], source: string, more: More = {}): Trap => ({
  name: nameOf(tags),
  tags,
  commodity: 'fuel',
  evidence: 'doubtful',
  counts: false,
  reason,
  source,
  rig: 'diesel',
  trip: 'undated',
  ...more,
});

/** A trap of water: as fuel, fit to drink unless `more` says else. */
export const water = (tags: Tags, reason: Trap['reason'], source: string, more: More = {}): Trap => ({
  ...fuel(tags, reason, source, more),
  commodity: 'water',
  waterClass: more.waterClass ?? 'drinking',
});
