import type { WorstFor } from '../../contract/vehicle.ts';
import type { Level } from '../quantity/level.ts';
import { bendsOf, type Container, type Emptying, tanksOf } from './containers.ts';
import type { MassModel } from './settle-mass.ts';
import { fixedMoments, heldMoments, type Levels } from './states.ts';
import { type Loads, loadsOf, type Moments, sumOfMoments } from './statics.ts';

/** A place of the route where the loads are the worst in one respect or several. */
export interface WorstPlace {
  atM: number;
  levels: Levels;
  loads: Loads;
  worstFor: WorstFor[];
}

type LevelPoint = Level;

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
  const worst = new Map<WorstFor, { badness: number; place: Omit<WorstPlace, 'worstFor'> }>();
  const fixed = fixedMoments(model);
  for (const emptying of emptyingsOf(model)) {
    const fuelPoints = pointsOf(model, 'fuel', fuel.gaps, emptying);
    const waterPoints = pointsOf(model, 'water', water.gaps, emptying);
    const placesM = [...new Set([...fuelPoints, ...waterPoints].map((point) => point.atM))].sort(
      (a, b) => a - b,
    );
    const fuelHeld = heldAlong(tanksOf(model, 'fuel'), levelsAlong(fuelPoints, placesM), emptying);
    const waterHeld = heldAlong(tanksOf(model, 'water'), levelsAlong(waterPoints, placesM), emptying);
    for (const [index, atM] of placesM.entries()) {
      for (const ofFuel of fuelHeld[index]!) {
        for (const ofWater of waterHeld[index]!) {
          const loads = loadsOf(sumOfMoments(fixed, ofFuel.moments, ofWater.moments), model.frame);
          for (const respect of RESPECTS) {
            const badness = BADNESS[respect](loads);
            if (badness === null) continue;
            const known = worst.get(respect);
            if (known !== undefined && badness <= known.badness + NOISE) continue;
            const levels = { fuelL: ofFuel.litres, waterL: ofWater.litres };
            worst.set(respect, { badness, place: { atM, levels, loads } });
          }
        }
      }
    }
  }
  return merged(worst);
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
): LevelPoint[] {
  const bends = bendsOf(tanksOf(model, commodity), emptying).sort((a, b) => b - a);
  const points: LevelPoint[] = [];
  let last: LevelPoint | null = null;
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
function levelsAlong(points: readonly LevelPoint[], placesM: readonly number[]): number[][] {
  let index = 0;
  return placesM.map((placeM) => {
    while (index < points.length && points[index]!.atM < placeM) index += 1;
    const here: number[] = [];
    for (let at = index; points[at]?.atM === placeM; at += 1) here.push(points[at]!.litres);
    if (here.length > 0) return here;
    const before = points[index - 1] ?? points[index];
    const after = points[index] ?? before;
    if (before === undefined || after === undefined) return [0];
    if (after.atM === before.atM) return [before.litres];
    const share = (placeM - before.atM) / (after.atM - before.atM);
    return [before.litres + share * (after.litres - before.litres)];
  });
}

/** What tanks hold at each of several places, with its moments. */
const heldAlong = (
  tanks: readonly Container[],
  levels: readonly (readonly number[])[],
  emptying: Emptying,
): { litres: number; moments: Moments }[][] =>
  levels.map((here) => here.map((litres) => ({ litres, moments: heldMoments(tanks, litres, emptying) })));

/** One entry for each place, with all that it is the worst for, in route order. */
function merged(worst: ReadonlyMap<WorstFor, { place: Omit<WorstPlace, 'worstFor'> }>): WorstPlace[] {
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
