import type { RigFile } from '../../../server/contract/rig.ts';
import type { SurfaceEntry } from '../../../server/contract/surface.ts';
import type { FuelFacts } from '../../../server/core/fuel/course/fuel-facts.ts';
import { settleRig } from '../../../server/core/rig/settle-rig.ts';
import { type Heights, smoothed } from '../../../server/core/route/elevation.ts';
import { surfaceSpans } from '../../../server/core/surface/surface.ts';
import { settleTrip } from '../../../server/core/trip/settle-trip.ts';
import { EXAMPLE_RIG } from '../../helpers/course.ts';

export type FuelDetail = Partial<RigFile['fuel']>;

/** The example rig with more said of its fuel. */
export const rigWith = (detail: FuelDetail): RigFile => ({
  ...EXAMPLE_RIG,
  fuel: { ...EXAMPLE_RIG.fuel, ...detail },
});

/** What fuel along a route of 100 km is made of, no allowance, nothing told but the example rig's rate. */
export function factsOf(
  changes: Partial<Omit<FuelFacts, 'rig' | 'spans' | 'heights'>> & {
    detail?: FuelDetail;
    surfaces?: readonly SurfaceEntry[];
    heights?: Heights | null;
  } = {},
): FuelFacts {
  const { detail = {}, surfaces = [], heights = null, ...rest } = changes;
  const { rig } = settleRig(rigWith(detail));
  const lengthM = rest.lengthM ?? 100_000;
  const allowancePercent = rest.allowancePercent ?? 0;
  return {
    lengthM,
    rig,
    spans: surfaceSpans(lengthM, settleTrip({ surfaces: [...surfaces], allowancePercent }).trip),
    sketchy: [],
    stays: [],
    nights: [],
    heights: heights === null ? null : smoothed(heights, rig.fuel.model.climb.thresholdM),
    massKg: rig.fuel.model.observed.massKg,
    allowancePercent,
    kmPerHour: (_, pace) => rig.pace.kmPerHour[pace],
    hoursPerDay: () => rig.pace.hoursPerDay,
    ...rest,
  };
}

/** Heights at even steps over a way. */
export const heightsOver = (lengthM: number, eles: readonly number[]): Heights => ({
  atM: Float64Array.from(eles, (_, index) => (lengthM * index) / (eles.length - 1)),
  eleM: Float64Array.from(eles),
});
