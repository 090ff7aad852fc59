import type { Evidence } from '../../contract/common.ts';
import type { PacePlan } from '../pace/pace-plan.ts';
import { timeThere } from '../pace/time-there.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { SupplyKind } from '../phrases/supply-kinds.ts';
import { positionAt } from '../route/locate.ts';
import type { RouteLine } from '../route/route-line.ts';
import { laidId } from '../supply/points/laid.ts';
import type { Passing } from '../supply/points/passing.ts';
import { type FoundReason, found, withFurther } from '../supply/tags/reasons.ts';
import type { LaidAt, Trip } from '../trip/settle-trip.ts';

const KINDS: Record<LaidAt['by'], SupplyKind> = {
  depot: { phrase: 'laid-depot', facts: {} },
  others: { phrase: 'brought-by-others', facts: {} },
  'second-vehicle': { phrase: 'second-vehicle', facts: {} },
};

/** What is known of a supply that the user says is there (ours): nobody has looked since. */
const EVIDENCE: Evidence = 'stated';

/**
 * Supplies of the user's own as passings: each at the one place of the route at which it is taken, with no more than its
 * litres. One that may not be there yet when it is come to does not count. Those past the end of the route are left out,
 * with a caution.
 */
export function laidSupplies(
  route: RouteLine,
  pace: PacePlan,
  { laid, counting }: Pick<Trip, 'laid' | 'counting'>,
): { passings: Passing[]; cautions: Caution[] } {
  const cautions = laid
    .filter(({ atM }) => atM > route.lengthM)
    .map(({ atM }): Caution => ({ code: 'laid-off-route', facts: { atM }, fromM: atM, toM: atM }));
  const passings = laid.flatMap((one, index) =>
    one.atM > route.lengthM
      ? []
      : [withFurther(laidPassing(route, one, laidId(index)), reasonsOf(pace, one), counting[one.commodity])],
  );
  return { passings, cautions };
}

const laidPassing = (route: RouteLine, laid: LaidAt, id: string): Passing => {
  const { name, commodity, litres, atM, detourM, by } = laid;
  return {
    id,
    alsoIds: [],
    name,
    commodity,
    kind: KINDS[by],
    ...positionAt(route, atM),
    evidence: EVIDENCE,
    counts: true,
    reasons: [],
    ...(commodity === 'water' ? { waterClass: 'drinking' } : {}),
    atM,
    offRouteM: detourM,
    detourM,
    mostL: litres,
    arrival: null,
  };
};

function reasonsOf(pace: PacePlan, { atM, from, litres }: LaidAt): FoundReason[] {
  const laid = found('laid-litres', { litres });
  if (from === null) return [laid];
  const earliest = timeThere(pace, atM).span?.earliest.slice(0, from.length) ?? null;
  return earliest !== null && earliest >= from ? [laid] : [laid, found('not-there-yet', { from, earliest })];
}
