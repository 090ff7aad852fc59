import type { PlanStopAsk } from '../../server/contract/plan.ts';
import type { TripFile } from '../../server/contract/trip.ts';

/** The trip with a place for what is told of a stop, and which of them it is: fields need one to stand in. */
export function withStop(trip: TripFile, id: string): { trip: TripFile; index: number } {
  const stops = trip.plan?.stops ?? [];
  const index = stops.findIndex((stop) => stop.id === id);
  if (index >= 0) return { trip, index };
  return { trip: { ...trip, plan: { ...trip.plan, stops: [...stops, { id }] } }, index: stops.length };
}

/** The trip with a stop passed by, or no longer. */
export function withPassedBy(trip: TripFile, id: string, passed: boolean): TripFile {
  const others = (trip.plan?.passBy ?? []).filter((each) => each !== id);
  return tidied({ ...trip, plan: { ...trip.plan, passBy: passed ? [...others, id] : others } });
}

/** The trip without stops of which nothing is told, and without lists and groups that hold nothing. */
export function tidied(trip: TripFile): TripFile {
  const { plan, ...others } = trip;
  const { stops = [], passBy = [], ...asked } = plan ?? {};
  const told = stops.filter(tells);
  const left = {
    ...asked,
    ...(passBy.length > 0 && { passBy }),
    ...(told.length > 0 && { stops: told }),
  };
  return Object.keys(left).length === 0 ? others : { ...others, plan: left };
}

const tells = ({ mostLitres, waitHours, pricePerLitre }: PlanStopAsk): boolean =>
  waitHours !== undefined || [mostLitres, pricePerLitre].some((one) => Object.keys(one ?? {}).length > 0);
