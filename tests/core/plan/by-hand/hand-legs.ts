import type { Commodity } from '../../../../server/contract/common.ts';
import { FUEL_L_PER_KM, KM_PER_DAY, type SmallRoute } from './small-routes.ts';

/** A leg between two places of a small route, reckoned by hand: no detours. */
export interface HandLeg {
  fromKm: number;
  toKm: number;
  cans: number;
  /** Less in the tank than it holds, at the most. */
  lessL: number;
}

/** A chain of legs with as many cans as each needs and the tank as short as it bears; null where one cannot be done. */
export function handLegs(route: SmallRoute, commodity: Commodity, places: number[]): HandLeg[] | null {
  const legs: HandLeg[] = [];
  for (let index = 0; index + 1 < places.length; index += 1) {
    const [fromKm, toKm] = [places[index]!, places[index + 1]!];
    const km = toKm - fromKm;
    const needL = commodity === 'fuel' ? km * FUEL_L_PER_KM : (km / KM_PER_DAY) * route.waterLPerDay;
    const tankL =
      index === 0 ? Math.min(route.startL[commodity], route.tankL[commodity]) : route.tankL[commodity];
    const neededL = needL * (1 + route.shareOfNeed[commodity]) + route.reserveL[commodity];
    const cans = Math.max(0, Math.ceil((neededL - tankL) / route.canL[commodity] - 1e-9));
    if (cans > (index === 0 && !route.cansAtStart ? 0 : route.mostCans[commodity])) return null;
    const inTankL =
      index === 0 ? tankL : Math.min(tankL, Math.max(0, neededL - cans * route.canL[commodity]));
    legs.push({ fromKm, toKm, cans, lessL: route.tankL[commodity] - inTankL });
  }
  return legs;
}
