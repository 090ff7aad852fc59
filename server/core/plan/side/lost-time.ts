import { hoursOfStanding } from '../../gaps/course/standing.ts';
import { paceOn } from '../../pace/pace-on.ts';
import type { CarrySide } from './carry-side.ts';
import { fillDays, type SupplyEdge } from './supply-edge.ts';

/**
 * Time that is lost, told as the metres off the route that take as long: so detours alone add up without noise. The pace
 * is the slow one off the route, by which the days of a plan go there as well.
 */
export interface Halting {
  /** Going there and back, and waiting. */
  readonly lostM: number;
  /** There and back. */
  readonly drivingM: number;
}

/** Hours that a metre off the route takes. */
export const hoursPerOffM = ({ course }: Pick<CarrySide, 'course'>): number =>
  course.off.days * paceOn(course.rig, 'unknown').hoursPerDay;

/**
 * A supply nearer to the route than this stands beside it (ours): plans do not fill cans, or weigh one station against
 * another, for the sake of some hundred metres. Needs count every metre.
 */
const BESIDE_M = 500;

/** What a halt at a supply costs; start and end are none. */
export function haltingAt(side: CarrySide, { kind, detourM, waitDays = 0 }: SupplyEdge): Halting {
  if (kind !== 'passing') return { lostM: 0, drivingM: 0 };
  const drivingM = detourM < BESIDE_M ? 0 : 2 * detourM;
  return { lostM: drivingM + standingM(side, waitDays), drivingM };
}

/** Filling, and treating meanwhile, so many litres at a supply. */
export const fillingM = (side: CarrySide, edge: SupplyEdge, filledL: number): number =>
  standingM(side, fillDays(edge, filledL));

const standingM = (side: CarrySide, days: number): number =>
  days === 0 ? 0 : hoursOfStanding(days) / hoursPerOffM(side);
