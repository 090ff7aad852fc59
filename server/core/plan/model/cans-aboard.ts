import type { Commodity } from '../../../contract/common.ts';
import type { Leg } from '../legs/leg.ts';
import type { Cans } from '../question/can-limits.ts';
import { emptyRelieves, type MassLimit } from '../question/mass-room.ts';
import { byCommodity } from '../side/other-of.ts';

/**
 * Cans that a plan has aboard, of those it may have: as many as are ever full, and all that it was chosen with where an
 * empty one relieves an axle.
 */
export const cansAboard = (
  limits: readonly MassLimit[],
  legs: Readonly<Record<Commodity, readonly Pick<Leg, 'hops'>[]>>,
  most: Cans,
): Cans =>
  byCommodity((commodity) =>
    emptyRelieves(limits, commodity)
      ? most[commodity]
      : Math.max(...legs[commodity].flatMap(({ hops }) => hops.map(({ cans }) => cans))),
  );
