import type { RigFile } from '../../contract/rig.ts';
import type { TripFile } from '../../contract/trip.ts';
import { withHelpHours } from '../crew/aboard/help-hours.ts';
import { campHoursCautions, withCampHours } from '../pace/pace-on.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { Assumption } from '../quantity/assumption.ts';
import type { Rig } from '../rig/rig.ts';
import { settleRig } from '../rig/settle-rig.ts';
import { settleTrip, type Trip } from '../trip/settle-trip.ts';

/** Rig and trip with every default filled in, to reckon with and as files, and which defaults those were. */
export interface Settled {
  readonly rig: Rig;
  readonly trip: Trip;
  readonly rigFile: RigFile;
  readonly tripFile: TripFile;
  readonly assumptions: readonly Assumption[];
  readonly cautions: readonly Caution[];
}

/** The first stage: both files are taken as checked. The rig drives and reserves as the trip asks. */
export function settle(rigFile: RigFile, tripFile: TripFile): Settled {
  const own = settleRig(rigFile);
  const journey = settleTrip(tripFile);
  const { campAfterHours } = journey.trip;
  return {
    rig: withHelpHours(withCampHours(own.rig, campAfterHours), journey.trip),
    trip: journey.trip,
    rigFile: own.settled,
    tripFile: journey.settled,
    assumptions: [
      ...own.assumptions.map((one) => ({ ...one, path: `/rig${one.path}` })),
      ...journey.assumptions.map((one) => ({ ...one, path: `/trip${one.path}` })),
    ],
    cautions: campHoursCautions(own.rig, campAfterHours),
  };
}
