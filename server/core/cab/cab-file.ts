import type { Units } from '../../contract/answers/units.ts';
import type { Commodity, Evidence } from '../../contract/common.ts';
import type { FuelKind } from '../../contract/rig.ts';
import type { CabStore } from './aboard.ts';
import type { CabBasis } from './cab-runs.ts';
import type { PackedRuns } from './packed-runs.ts';
import type { RouteSketch } from './route-sketch.ts';

/** How somebody at a supply is asked, as tags or the user say; null where they do not. */
export interface CabContact {
  readonly phone: string | null;
  readonly openingHours: string | null;
}

/** A place to know on the way, with what is done there. */
export interface CabMark {
  readonly kind: 'start' | 'stop' | 'turn-back' | 'pour' | 'dry' | 'reserve' | 'night' | 'caution' | 'end';
  readonly commodities: readonly Commodity[];
  readonly atM: number;
  readonly name: string;
  readonly todo: readonly string[];
  readonly contact: CabContact | null;
}

/** A supply that counts and that the plan goes by. */
export interface CabSupply {
  readonly commodity: Commodity;
  readonly atM: number;
  readonly name: string;
  readonly detourM: number;
  readonly evidence: Evidence;
}

/** In which language and units the file is read; those of whoever asked for it. */
export interface CabReader {
  readonly language: string;
  readonly units: Units;
}

/** All that a file to take along knows beside what is written in it: plain values. */
export interface CabFile {
  readonly reader: CabReader;
  /** Under this the entries of the crew are kept. */
  readonly key: string;
  readonly route: string;
  /** Set when the land is invented and must not be driven by. */
  readonly notice: string | null;
  readonly lengthM: number;
  readonly fuelKind: FuelKind;
  /** Whether the plan was found, whether there is none, or whether that is not known. */
  readonly plan: 'found' | 'none' | 'out-of-time';
  readonly basis: Omit<CabBasis, 'runs'> & { readonly runs: PackedRuns };
  readonly sketch: RouteSketch;
  readonly stores: Readonly<Record<Commodity, CabStore>>;
  /** By the ids of supplies. */
  readonly contacts: Readonly<Record<string, CabContact>>;
  /** In the order of the road. */
  readonly marks: readonly CabMark[];
  readonly others: readonly CabSupply[];
  /** Until help comes, as the trip tells it. */
  readonly helpHours: number | null;
}
