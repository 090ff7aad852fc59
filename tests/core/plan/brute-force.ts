import type { Commodity, Evidence } from '../../../server/contract/common.ts';
import { FUEL_L_PER_KM, KM_PER_DAY, type SmallRoute, type SmallStop } from './small-routes.ts';

/** Values of a plan in the order of its aims: km hanging on doubtful, implied, stated; cans; km off the route; can-km. */
export type Values = [number, number, number, number, number, number];

const WEAKNESS: Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
const NOISE = 1e-9;

interface Point {
  atKm: number;
  detourKm: number;
  evidence: Evidence | null;
}

/** The best values over every choice of stops for fuel and every choice for water; null where none keeps the reserves. */
export function bestByBruteForce(route: SmallRoute): Values | null {
  const offering = (commodity: Commodity) =>
    route.stops.filter(({ offers }) => offers === commodity || offers === 'both');
  let best: Values | null = null;
  for (const fuel of subsetsOf(offering('fuel'))) {
    for (const water of subsetsOf(offering('water'))) {
      const ofFuel = chainValues(route, 'fuel', fuel, water);
      if (ofFuel === null) continue;
      const ofWater = chainValues(route, 'water', water, fuel);
      if (ofWater === null) continue;
      const visited = new Set([...fuel, ...water]);
      const drivingKm = [...visited].reduce((sum, { detourKm }) => sum + 2 * detourKm, 0);
      const values: Values = [
        ofFuel.weakKm[0]! + ofWater.weakKm[0]!,
        ofFuel.weakKm[1]! + ofWater.weakKm[1]!,
        ofFuel.weakKm[2]! + ofWater.weakKm[2]!,
        ofFuel.cans + ofWater.cans,
        drivingKm,
        ofFuel.canKm + ofWater.canKm,
      ];
      if (best === null || isBetter(values, best)) best = values;
    }
  }
  return best;
}

function isBetter(values: Values, than: Values): boolean {
  for (let index = 0; index < values.length; index += 1) {
    const difference = values[index]! - than[index]!;
    if (Math.abs(difference) > 1e-6) return difference < 0;
  }
  return false;
}

function subsetsOf(stops: SmallStop[]): SmallStop[][] {
  return Array.from({ length: 2 ** stops.length }, (_, bits) =>
    stops.filter((_stop, index) => (bits >> index) & 1),
  );
}

/** One commodity driven over its stops, with the halts of the other on the way; null where a reserve breaks. */
function chainValues(route: SmallRoute, commodity: Commodity, used: SmallStop[], others: SmallStop[]) {
  const ends: Point = { atKm: 0, detourKm: 0, evidence: null };
  const points: Point[] = [
    ends,
    ...[...used].sort((a, b) => a.atKm - b.atKm),
    { ...ends, atKm: route.lengthKm },
  ];
  const confirmed = route.stops.some(
    ({ offers, evidence }) => evidence === 'confirmed' && (offers === commodity || offers === 'both'),
  );
  const weakKm = [0, 0, 0];
  let cans = 0;
  let canKm = 0;
  for (let index = 0; index + 1 < points.length; index += 1) {
    const from = points[index]!;
    const to = points[index + 1]!;
    const viaKm = others
      .filter((other) => !used.includes(other) && other.atKm > from.atKm && other.atKm <= to.atKm)
      .reduce((sum, other) => sum + 2 * other.detourKm, 0);
    const lengthKm = to.atKm - from.atKm;
    const ownKm = lengthKm + from.detourKm + to.detourKm;
    const needL = needOf(route, commodity, ownKm + viaKm);
    const tankL =
      index === 0 ? Math.min(route.startL[commodity], route.tankL[commodity]) : route.tankL[commodity];
    const missingL = needL * (1 + route.shareOfNeed[commodity]) + route.reserveL[commodity] - tankL;
    const count = Math.max(0, Math.ceil(missingL / route.canL[commodity] - NOISE));
    if (count > (index === 0 && !route.cansAtStart ? 0 : route.mostCans[commodity])) return null;
    cans = Math.max(cans, count);
    // Where halts of the other commodity lie on the way, can-km are reckoned without them.
    const perKm = needOf(route, commodity, ownKm) / ownKm;
    for (let can = 1; can <= count; can += 1) {
      const usedL = can * route.canL[commodity] - (route.tankL[commodity] - tankL);
      canKm += Math.min(lengthKm, Math.max(0, usedL / perKm - from.detourKm));
    }
    const weakest = WEAKNESS.findIndex((rank) => from.evidence === rank || to.evidence === rank);
    // What tags state is good enough, unless others are confirmed.
    if (weakest === 2 && !confirmed) continue;
    if (weakest >= 0 && weakest < 3) weakKm[weakest]! += lengthKm;
  }
  return { weakKm, cans, canKm };
}

function needOf(route: SmallRoute, commodity: Commodity, km: number): number {
  return commodity === 'fuel' ? km * FUEL_L_PER_KM : (km / KM_PER_DAY) * route.waterLPerDay;
}
