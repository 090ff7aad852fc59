import type { Commodity, Evidence } from '../../../../server/contract/common.ts';
import {
  FUEL_L_PER_KM,
  HOURS_PER_OFF_KM,
  KM_PER_DAY,
  type SmallRoute,
  type SmallStop,
} from './small-routes.ts';

/**
 * Values of a plan in the order of its aims: km hanging on doubtful, implied, stated; cans to get; hours lost; km off the
 * route; can-km.
 */
export type Values = [number, number, number, number, number, number, number];

const WEAKNESS: Evidence[] = ['doubtful', 'implied', 'stated', 'confirmed'];
const NOISE = 1e-9;

const HOURS_PER_DAY = 24;
/** A supply stop reaches so far. */
const STOP_KM = 3;

type Point = Pick<SmallStop, 'atKm' | 'detourKm' | 'waitDays' | 'daysPerLitre'> & {
  evidence: Evidence | null;
};

/** The best values over every choice of stops for fuel and every choice for water; null where none keeps the reserves. */
export function bestByBruteForce(route: SmallRoute): Values | null {
  let best: Values | null = null;
  for (const { values } of everyPlan(route)) if (best === null || isBetter(values, best)) best = values;
  return best;
}

/** Of all choices with the best values and the fewest stops the greatest least margin, km of further detour. */
export function greatestMarginKm(route: SmallRoute, best: Values): number {
  const alike = [...everyPlan(route)].filter(({ values }) => !isBetter(best, values));
  const fewest = Math.min(...alike.map(({ stops }) => stops));
  return Math.max(...alike.filter(({ stops }) => stops === fewest).map(({ marginKm }) => marginKm));
}

function* everyPlan(route: SmallRoute): Generator<{ values: Values; stops: number; marginKm: number }> {
  const offering = (commodity: Commodity) =>
    route.stops.filter(({ offers }) => offers === commodity || offers === 'both');
  const toGet = (commodity: Commodity, cans: number) => Math.max(0, cans - (route.owned?.[commodity] ?? 0));
  for (const fuel of subsetsOf(offering('fuel'))) {
    for (const water of subsetsOf(offering('water'))) {
      const ofFuel = chainValues(route, 'fuel', fuel, water);
      if (ofFuel === null) continue;
      const ofWater = chainValues(route, 'water', water, fuel);
      if (ofWater === null) continue;
      const values: Values = [
        ofFuel.weakKm[0]! + ofWater.weakKm[0]!,
        ofFuel.weakKm[1]! + ofWater.weakKm[1]!,
        ofFuel.weakKm[2]! + ofWater.weakKm[2]!,
        toGet('fuel', ofFuel.cans) + toGet('water', ofWater.cans),
        ofFuel.fillingH + ofWater.fillingH + ofStops(route, fuel, water, lostAtH),
        ofStops(route, fuel, water, ({ detourKm }) => 2 * detourKm),
        ofFuel.canKm + ofWater.canKm,
      ];
      yield {
        values,
        stops: fuel.length + water.length,
        marginKm: Math.min(ofFuel.marginKm, ofWater.marginKm),
      };
    }
  }
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

/** There and back at the pace, and waiting. */
const lostAtH = ({ detourKm, waitDays = 0 }: SmallStop): number =>
  2 * detourKm * HOURS_PER_OFF_KM + waitDays * HOURS_PER_DAY;

/** What halts cost, of each stop no more than the one commodity that costs more there. */
function ofStops(
  route: SmallRoute,
  fuel: SmallStop[],
  water: SmallStop[],
  of: (stop: SmallStop) => number,
): number {
  let sum = 0;
  let open: SmallStop[] = [];
  const close = () => {
    const costOf = (used: SmallStop[]) =>
      open.filter((stop) => used.includes(stop)).reduce((total, stop) => total + of(stop), 0);
    sum += Math.max(costOf(fuel), costOf(water));
  };
  for (const stop of [...route.stops].sort((a, b) => a.atKm - b.atKm)) {
    if (stop.atKm - (open[0] ?? stop).atKm > STOP_KM) {
      close();
      open = [];
    }
    open.push(stop);
  }
  close();
  return sum;
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
  let [cans, canKm, fillingH, marginKm] = [0, 0, 0, Number.POSITIVE_INFINITY];
  for (let index = 0; index + 1 < points.length; index += 1) {
    const [from, to] = [points[index]!, points[index + 1]!];
    const halts = others.filter(
      (other) => !used.includes(other) && other.atKm > from.atKm && other.atKm <= to.atKm,
    );
    const leg = { from, to, halts, isFirst: index === 0 };
    const fewest = fewestCans(route, commodity, leg);
    if (fewest === null) return null;
    const count = fewest.cans;
    cans = Math.max(cans, count);
    marginKm = Math.min(marginKm, fewest.marginKm);
    canKm += carriedKm(route, commodity, leg, count);
    fillingH += fillingDays(route, commodity, leg, count) * HOURS_PER_DAY;
    const weakest = WEAKNESS.findIndex((rank) => from.evidence === rank || to.evidence === rank);
    // What tags state is good enough, unless others are confirmed.
    if (weakest === 2 && !confirmed) continue;
    if (weakest >= 0 && weakest < 3) weakKm[weakest]! += to.atKm - from.atKm;
  }
  return { weakKm, cans, canKm, fillingH, marginKm };
}

/** A leg with the halts of the other commodity on it. */
interface HandLeg {
  from: Point;
  to: Point;
  halts: SmallStop[];
  isFirst: boolean;
}

const tankL = (route: SmallRoute, commodity: Commodity, isFirst: boolean): number =>
  isFirst ? Math.min(route.startL[commodity], route.tankL[commodity]) : route.tankL[commodity];

/** Filled from empty; nothing at the start. */
const fillingDays = (route: SmallRoute, commodity: Commodity, { from }: HandLeg, cans: number): number =>
  (from.daysPerLitre ?? 0) * (route.tankL[commodity] + cans * route.canL[commodity]);

const ownKm = ({ from, to }: HandLeg): number => to.atKm - from.atKm + from.detourKm + to.detourKm;

function fewestCans(
  route: SmallRoute,
  commodity: Commodity,
  leg: HandLeg,
): { cans: number; marginKm: number } | null {
  const other = commodity === 'fuel' ? 'water' : 'fuel';
  const viaKm = leg.halts.reduce((sum, { detourKm }) => sum + 2 * detourKm, 0);
  // A halt is reckoned with all that can be filled there.
  const mostL = route.tankL[other] + route.mostCans[other] * route.canL[other];
  const viaDays = leg.halts.reduce(
    (sum, { waitDays = 0, daysPerLitre = 0 }) => sum + waitDays + daysPerLitre * mostL,
    0,
  );
  const most = leg.isFirst && !route.cansAtStart ? 0 : route.mostCans[commodity];
  for (let cans = 0; cans <= most; cans += 1) {
    const days = viaDays + (leg.to.waitDays ?? 0) + fillingDays(route, commodity, leg, cans);
    const needL = needOf(route, commodity, ownKm(leg) + viaKm, days);
    const aboardL = tankL(route, commodity, leg.isFirst) + cans * route.canL[commodity];
    const spareL = (aboardL - route.reserveL[commodity]) / (1 + route.shareOfNeed[commodity]) - needL;
    if (spareL >= -NOISE) return { cans, marginKm: spareL / needOf(route, commodity, 1, 0) };
  }
  return null;
}

/** Where halts of the other commodity lie on the way, can-km are reckoned without them. */
function carriedKm(route: SmallRoute, commodity: Commodity, leg: HandLeg, cans: number): number {
  const { from, to } = leg;
  const perKm = needOf(route, commodity, 1, 0);
  const missingL = route.tankL[commodity] - tankL(route, commodity, leg.isFirst);
  const filledL = needOf(route, commodity, from.detourKm, fillingDays(route, commodity, leg, cans));
  let sum = 0;
  for (let can = 1; can <= cans; can += 1) {
    const usedL = Math.max(0, can * route.canL[commodity] - missingL);
    sum += Math.min(to.atKm - from.atKm, Math.max(0, (usedL - filledL) / perKm));
  }
  return sum;
}

/** Standing takes water alone. */
function needOf(route: SmallRoute, commodity: Commodity, km: number, days: number): number {
  return commodity === 'fuel' ? km * FUEL_L_PER_KM : (km / KM_PER_DAY + days) * route.waterLPerDay;
}
