import type { Bbox, Commodity } from '../../contract/common.ts';
import type { RigFile } from '../../contract/rig.ts';
import type { TripFile } from '../../contract/trip.ts';
import type { WaterUse } from '../crew/aboard/water-use.ts';
import type { FuelUse } from '../fuel/course/fuel-use.ts';
import type { Report } from '../gaps/gap.ts';
import type { PassedOver } from '../input/sources.ts';
import type { MassReport } from '../mass/report/masses.ts';
import type { Days, Night } from '../pace/day.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { Reason } from '../phrases/reasons.ts';
import type { Assumption } from '../quantity/assumption.ts';
import type { DatedExtract } from '../supply/points/dated.ts';
import type { Passing } from '../supply/points/passing.ts';
import type { TreatmentReport } from '../treatment/line/report.ts';

/** An extract with its day, and the doubt about it that only the user can settle. */
export interface ToldExtract extends DatedExtract {
  readonly maybeCut?: true;
}

/** The whole answer in core's own terms: metres, litres, codes. `app/to-contract` makes the contract's of it. */
export interface Analysis {
  readonly route: {
    readonly name: string;
    readonly lengthM: number;
    readonly vertices: number;
    readonly parts: number;
    readonly bbox: Bbox;
    readonly longestStepM: number;
  };
  /** The map data that it rests on, in the order in which they were given. */
  readonly extracts: readonly ToldExtract[];
  /** Commodities of which no extract tells anything on this route: neither a supply nor that there is none. */
  readonly noData: readonly Commodity[];
  /** Every supply point seen in the corridor, counting or not, in route order. */
  readonly passings: readonly Passing[];
  readonly fuel: Report;
  readonly water: Report;
  readonly nights: readonly Night[];
  readonly days: Days;
  readonly fuelUse: FuelUse;
  readonly waterUse: WaterUse;
  /** Null for a rig without a treatment line. */
  readonly treatment: TreatmentReport | null;
  /** Null for a rig that does not tell its vehicle's mass. */
  readonly mass: MassReport | null;
  /** Rig and trip as reckoned with, every default filled in, in the contract's units. */
  readonly rig: RigFile;
  readonly trip: TripFile;
  readonly assumptions: readonly Assumption[];
  readonly cautions: readonly Caution[];
  readonly standing: readonly Reason[];
  readonly skipped: readonly PassedOver[];
  /** Whether the user said how far the next supply is past the end of the route. */
  readonly onwardTold: boolean;
}
