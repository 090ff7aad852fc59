import type { Evidence } from '../../contract/common.ts';
import { at } from '../lists/at.ts';
import type { PacePlan } from '../pace/pace-plan.ts';
import { timeThere } from '../pace/time-there.ts';
import type { Caution } from '../phrases/cautions.ts';
import type { SupplyKind } from '../phrases/said/supply-kinds.ts';
import { positionAt } from '../route/passings/locate.ts';
import type { RouteLine } from '../route/route-line.ts';
import { type Report, reportOn } from '../supply/judge/confirmations.ts';
import { laidIds } from '../supply/points/laid.ts';
import type { Passing } from '../supply/points/passing.ts';
import { type FoundReason, found, withFurther } from '../supply/tags/reasons.ts';
import { type Noted, noted } from '../treatment/source/water-notes.ts';
import type { LaidAt, Trip } from '../trip/settle-trip.ts';

const KINDS: Record<LaidAt['by'], SupplyKind> = {
  depot: { phrase: 'laid-depot', facts: {} },
  others: { phrase: 'brought-by-others', facts: {} },
  'second-vehicle': { phrase: 'second-vehicle', facts: {} },
};

/** What is known of a supply that the user says is there (ours), until they report that they looked again. */
const EVIDENCE: Evidence = 'stated';

/** What supplies of the user's own are judged on. */
interface LaidFacts {
  readonly route: RouteLine;
  readonly pace: PacePlan;
  readonly trip: Pick<Trip, 'laid' | 'counting' | 'confirmations' | 'waterNotes' | 'departure'>;
  /** YYYY-MM-DD: the day for reports where the trip has no departure. */
  readonly today: string;
}

/**
 * Supplies of the user's own as passings: each at the one place of the route at which it is taken, with no more than its
 * litres. One that may not be there yet when it is come to does not count, nor one that was reported gone or salty. Those
 * past the end of the route are left out, with a caution.
 */
export function laidSupplies(facts: LaidFacts): { passings: Passing[]; cautions: Caution[] } {
  const { route, trip } = facts;
  const ids = laidIds(trip.laid);
  const passings: Passing[] = [];
  const cautions: Caution[] = [];
  for (const [index, laid] of trip.laid.entries()) {
    const { atM, commodity } = laid;
    if (atM > route.lengthM) {
      cautions.push({ code: 'laid-off-route', facts: { atM }, fromM: atM, toM: atM });
      continue;
    }
    const passing = laidPassing(facts, laid, at(ids, index));
    passings.push(withFurther(passing, reasonsOf(facts, laid, passing.id), trip.counting[commodity]));
  }
  return { passings, cautions };
}

function laidPassing(facts: LaidFacts, laid: LaidAt, id: string): Passing {
  const { name, commodity, litres, atM, detourM, by } = laid;
  const isSalty = commodity === 'water' && noteOn(facts, id).salt === 'bad';
  return {
    id,
    alsoIds: [],
    name,
    commodity,
    kind: KINDS[by],
    ...positionAt(facts.route, atM),
    evidence: reportOf(facts, laid, id).state === 'works' ? 'confirmed' : EVIDENCE,
    counts: true,
    reasons: [],
    seenOn: null,
    tags: {},
    ...(commodity === 'water' ? { waterClass: isSalty ? 'washing' : 'drinking' } : {}),
    atM,
    offRouteM: detourM,
    detourM,
    mostL: litres,
    arrival: null,
  };
}

function reasonsOf(facts: LaidFacts, laid: LaidAt, id: string): FoundReason[] {
  const reasons = [found('laid-litres', { litres: laid.litres }), ...reportOf(facts, laid, id).reasons];
  if (laid.commodity === 'water') reasons.push(...saltReasons(noteOn(facts, id)));
  const { from } = laid;
  if (from === null) return reasons;
  const earliest = timeThere(facts.pace, laid.atM).span?.earliest.slice(0, from.length) ?? null;
  return earliest !== null && earliest >= from
    ? reasons
    : [...reasons, found('not-there-yet', { from, earliest })];
}

/** What the user found of one since it was laid. */
function reportOf({ pace, trip, today }: LaidFacts, { commodity, atM }: LaidAt, id: string): Report {
  const reports = trip.confirmations.filter((one) => one.id === id);
  const { span } = timeThere(pace, atM);
  const days = { departure: trip.departure, today };
  if (span === null) return reportOn(reports, commodity, days);
  const reached = { first: dayOf(span.earliest), last: dayOf(span.latest) };
  return reportOn(reports, commodity, { ...days, reached });
}

const dayOf = (time: string): string => time.slice(0, 10);

const noteOn = ({ trip, today }: LaidFacts, id: string): Noted =>
  noted(
    trip.waterNotes.filter((one) => one.id === id),
    trip.departure ?? today,
  );

function saltReasons({ salt, on }: Noted): FoundReason[] {
  if (salt === 'none') return [];
  return [found(salt === 'bad' ? 'salt-found' : 'salt-noted', { on: on ?? '' })];
}
