import type { Commodity } from '../../../contract/common.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { otherOf } from '../side/other-of.ts';
import type { FailingPlace, FailureTable } from './failure-table.ts';
import type { SearchLeg } from './side-table.ts';
import type { Ends, OpenPlace, Way } from './way.ts';

export type Failures = Readonly<Record<Commodity, FailureTable>>;

/** The places that legs end at, with what they bear when their stop fails; those before with them. */
export function openComingTo(failures: Failures, way: Way, ends: Ends): readonly OpenPlace[] {
  let { open } = way;
  for (const commodity of COMMODITIES) {
    if (!ends[commodity]) continue;
    const leg = way.legs[commodity];
    const other = otherOf(commodity);
    for (const place of failures[commodity].foundBy(leg)) {
      const before = open.find((one) => one.place === place) ?? { place, mustGoOn: false, mustGoBack: false };
      const mustGoOn =
        before.mustGoOn ||
        !failures[commodity].bearsBack(leg) ||
        failures[other].isCaught(way.legs[other], leg.end, place);
      open = [...open.filter((one) => one.place !== place), { ...before, mustGoOn }];
    }
  }
  return open.filter(({ place, mustGoOn }) => mustGoOn || mayBeFoundLater(place, way, ends));
}

/** Whether a leg may still end at a place, beyond those that end now: only then may its stop come to be gone on from. */
function mayBeFoundLater({ edges }: FailingPlace, { legs, reachedM }: Way, ends: Ends): boolean {
  return edges.some(
    (edge) =>
      edge.atM >= reachedM &&
      !(ends.fuel && legs.fuel.end === edge) &&
      !(ends.water && legs.water.end === edge),
  );
}

/** The same once it is chosen where to go on to, and to `reachedM`; null where a place leaves no way. */
export function openGoingOn(
  failures: Failures,
  from: Way,
  legs: Way['legs'],
  { open, reachedM }: { readonly open: readonly OpenPlace[]; readonly reachedM: number },
): readonly OpenPlace[] | null {
  let later = NONE_OPEN;
  for (const one of open) {
    const { place, mustGoOn } = one;
    const mustGoBack =
      one.mustGoBack ||
      isLeftBehind(failures.fuel, place, from.legs.fuel, legs.fuel) ||
      isLeftBehind(failures.water, place, from.legs.water, legs.water);
    if (mustGoOn && mustGoBack) return null;
    if (place.toM >= reachedM) later = [...later, { place, mustGoOn, mustGoBack }];
  }
  return later;
}

export const NONE_OPEN: readonly OpenPlace[] = [];

/** Whether a place that gives nothing, come to on one leg, cannot be gone on from to the end of the next. */
const isLeftBehind = (
  failures: FailureTable,
  place: FailingPlace,
  leg: SearchLeg,
  next: SearchLeg,
): boolean => leg !== next && failures.foundBy(leg).includes(place) && !failures.bearsOn(leg, next, place);
