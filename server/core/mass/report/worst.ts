import type { WorstFor } from '../../../contract/vehicle.ts';
import { at } from '../../lists/at.ts';
import type { Level } from '../../quantity/level.ts';
import { bendsOf, type Container, type Emptying, tanksOf } from '../containers.ts';
import type { MassModel } from '../settle-mass.ts';
import { fixedMoments, heldMoments, type Levels } from '../states.ts';
import { type Loads, loadsOf, type Moments, sumOfMoments } from '../statics.ts';

/** A place of the route where the loads are the worst in one respect or several. */
export interface WorstPlace {
  atM: number;
  levels: Levels;
  loads: Loads;
  worstFor: WorstFor[];
}

/** Gaps of one commodity as far as masses go by them. */
export interface Levelled {
  readonly gaps: readonly { readonly departL: number; readonly levels: readonly Level[] }[];
}

/** How bad loads are in a respect: more is worse; null where it cannot be told. */
const BADNESS: Record<WorstFor, (loads: Loads) => number | null> = {
  total: (loads) => loads.totalKg,
  front: (loads) => loads.frontKg,
  rear: (loads) => loads.rearKg,
  side: (loads) => (loads.sideKg === null ? null : Math.abs(loads.sideKg)),
  stability: (loads) => (loads.stabilityFactor === null ? null : -loads.stabilityFactor),
};
const RESPECTS = Object.keys(BADNESS) as WorstFor[];
/** Float noise is not worse, kg. */
const NOISE = 1e-9;

/**
 * The worst places along the route as levels fall and tanks are filled, in route order, the first of ties. Loads are
 * straight in the litres of each tank, so they are at their worst where a level bends or a tank runs empty. Where the
 * rig does not tell how several tanks empty, each of the three ways is tried. Fuel and water may be filled in either
 * order.
 */
export function worstPlaces(model: MassModel, fuel: Levelled, water: Levelled): WorstPlace[] {
  const worst = new Map<WorstFor, Extreme>();
  for (const emptying of emptyingsOf(model)) {
    for (const place of placesAlong(model, { fuel, water }, emptying)) {
      for (const respect of RESPECTS) {
        const badness = BADNESS[respect](place.loads);
        if (badness === null) continue;
        const known = worst.get(respect);
        if (known === undefined || badness > known.badness + NOISE) worst.set(respect, { badness, place });
      }
    }
  }
  return merged(worst);
}

type Place = Omit<WorstPlace, 'worstFor'>;

/** The worst yet in a respect. */
interface Extreme {
  readonly badness: number;
  readonly place: Place;
}

/** The loads wherever they may be the worst, in route order, for each order of filling. */
function* placesAlong(
  model: MassModel,
  of: Record<'fuel' | 'water', Levelled>,
  emptying: Emptying,
): Generator<Place> {
  const fixed = fixedMoments(model);
  const fuelPoints = pointsOf(model, 'fuel', of.fuel.gaps, emptying);
  const waterPoints = pointsOf(model, 'water', of.water.gaps, emptying);
  const placesM = [...new Set([...fuelPoints, ...waterPoints].map((point) => point.atM))].sort(
    (a, b) => a - b,
  );
  const fuelAlong = levelsAlong(fuelPoints, placesM);
  const waterAlong = levelsAlong(waterPoints, placesM);
  for (const [index, atM] of placesM.entries()) {
    const ofFuel = momentsAt(tanksOf(model, 'fuel'), at(fuelAlong, index), emptying);
    const ofWater = momentsAt(tanksOf(model, 'water'), at(waterAlong, index), emptying);
    for (const fuel of ofFuel) {
      for (const water of ofWater) {
        const loads = loadsOf(sumOfMoments(fixed, fuel.moments, water.moments), model.frame);
        yield { atM, levels: { fuelL: fuel.litres, waterL: water.litres }, loads };
      }
    }
  }
}

/** The ways in which the tanks may empty. */
function emptyingsOf(model: MassModel): Emptying[] {
  if (model.vehicle.tanksEmpty === 'in-order') return ['first-first'];
  const several = tanksOf(model, 'fuel').length > 1 || tanksOf(model, 'water').length > 1;
  if (model.vehicle.tanksEmpty === 'together' || !several) return ['together'];
  return ['together', 'first-first', 'last-first'];
}

/** The levels of a commodity along the route, none below nothing, with a point wherever a tank runs empty. */
function pointsOf(
  model: MassModel,
  commodity: 'fuel' | 'water',
  gaps: Levelled['gaps'],
  emptying: Emptying,
): Level[] {
  const bends = bendsOf(tanksOf(model, commodity), emptying).sort((a, b) => b - a);
  const points: Level[] = [];
  let last: Level | null = null;
  for (const point of gaps.flatMap((gap) => gap.levels)) {
    const from = last;
    if (from !== null && point.atM > from.atM) {
      for (const litres of bends) {
        if (!(from.litres > litres && litres > point.litres)) continue;
        const share = (from.litres - litres) / (from.litres - point.litres);
        points.push({ atM: from.atM + share * (point.atM - from.atM), litres });
      }
    }
    points.push({ atM: point.atM, litres: Math.max(0, point.litres) });
    last = point;
  }
  return points;
}

/** All levels that a commodity has at each place: several where it is filled or used standing. */
function levelsAlong(points: readonly Level[], placesM: readonly number[]): number[][] {
  let next = 0;
  return placesM.map((placeM) => {
    while ((points[next]?.atM ?? Infinity) < placeM) next += 1;
    const here: number[] = [];
    for (let point = points[next]; point?.atM === placeM; point = points[next + here.length]) {
      here.push(point.litres);
    }
    return here.length > 0 ? here : [levelBetween(points[next - 1], points[next], placeM)];
  });
}

/** The level at a place between two points; that of the one where the other is not there, nothing without both. */
function levelBetween(first: Level | undefined, second: Level | undefined, placeM: number): number {
  const before = first ?? second;
  const after = second ?? before;
  if (before === undefined || after === undefined) return 0;
  if (after.atM === before.atM) return before.litres;
  const share = (placeM - before.atM) / (after.atM - before.atM);
  return before.litres + share * (after.litres - before.litres);
}

/** What tanks hold at several levels, with its moments. */
const momentsAt = (
  tanks: readonly Container[],
  levels: readonly number[],
  emptying: Emptying,
): { litres: number; moments: Moments }[] =>
  levels.map((litres) => ({ litres, moments: heldMoments(tanks, litres, emptying) }));

/** One entry for each place, with all that it is the worst for, in route order. */
function merged(worst: ReadonlyMap<WorstFor, Extreme>): WorstPlace[] {
  const places: WorstPlace[] = [];
  for (const respect of RESPECTS) {
    const place = worst.get(respect)?.place;
    if (place === undefined) continue;
    const same = places.find((one) => one.loads === place.loads);
    if (same === undefined) places.push({ ...place, worstFor: [respect] });
    else same.worstFor.push(respect);
  }
  return places.sort((a, b) => a.atM - b.atM);
}
