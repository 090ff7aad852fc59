import type { PlanStopAsk } from '../../server/contract/plan.ts';
import type { TripFile } from '../../server/contract/trip.ts';

/** The trip with a place for what is told of a stop, and which of them it is: fields need one to stand in. */
export function withStop(trip: TripFile, id: string): { trip: TripFile; index: number } {
  const stops = trip.plan?.stops ?? [];
  const index = stops.findIndex((stop) => stop.id === id);
  if (index >= 0) return { trip, index };
  return { trip: { ...trip, plan: { ...trip.plan, stops: [...stops, { id }] } }, index: stops.length };
}

/** The trip with a stop passed by, or no longer. What is passed by is no stop that must be made. */
export const withPassedBy = (trip: TripFile, id: string, passed: boolean): TripFile =>
  tidied({
    ...trip,
    plan: {
      ...trip.plan,
      passBy: listed(trip.plan?.passBy, id, passed),
      mustStop: listed(trip.plan?.mustStop, id, !passed && isMust(trip, id)),
    },
  });

/** The trip with a stop that must be made, or no longer; it is then not passed by. */
export const withMustStop = (trip: TripFile, id: string, must: boolean): TripFile =>
  tidied({
    ...trip,
    plan: {
      ...trip.plan,
      mustStop: listed(trip.plan?.mustStop, id, must),
      passBy: listed(trip.plan?.passBy, id, !must && (trip.plan?.passBy?.includes(id) ?? false)),
    },
  });

/** Whether the plan must stop there. */
export const isMust = ({ plan }: TripFile, id: string): boolean => plan?.mustStop?.includes(id) ?? false;

/** A list of ids with one in it, at its place, or without it. */
function listed(ids: readonly string[] = [], id: string, isIn: boolean): string[] {
  if (isIn && ids.includes(id)) return [...ids];
  const others = ids.filter((each) => each !== id);
  return isIn ? [...others, id] : others;
}

/** The trip without stops of which nothing is told, and without lists and groups that hold nothing. */
export function tidied(trip: TripFile): TripFile {
  const { plan, ...others } = trip;
  const { stops = [], passBy = [], mustStop = [], ...asked } = plan ?? {};
  const told = stops.filter(tells);
  const left = {
    ...asked,
    ...(passBy.length > 0 && { passBy }),
    ...(mustStop.length > 0 && { mustStop }),
    ...(told.length > 0 && { stops: told }),
  };
  return Object.keys(left).length === 0 ? others : { ...others, plan: left };
}

const tells = ({ mostLitres, waitHours, pricePerLitre }: PlanStopAsk): boolean =>
  waitHours !== undefined || [mostLitres, pricePerLitre].some((one) => Object.keys(one ?? {}).length > 0);
