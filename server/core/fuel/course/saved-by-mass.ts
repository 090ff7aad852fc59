import type { Profile } from '../../gaps/profile.ts';
import type { SpanM } from '../../quantity/span.ts';
import { type ClimbFacts, placesOf, stepL } from './climb-profile.ts';
import { climbFactsOf, type FuelFacts, levelOf, rateOn } from './fuel-profiles.ts';
import { sumsAt, thinned } from './summed-profiles.ts';

/** What the vehicle weighs on a stretch. */
export interface MassSpan extends SpanM {
  massKg: number;
}

/** Litres within which what is saved is kept at every place (ours). */
const TOLERANCE_L = 0.001;

/**
 * Litres that the route takes less than with `facts.massKg` all the way, summed along it: at the rate the verdict uses,
 * on the level and on climbs. `masses` tile the route and are nowhere above that mass, so that the sum never falls.
 */
export function savedAlong(facts: FuelFacts, masses: readonly MassSpan[], way: 'out' | 'home'): Profile {
  const level = levelOf(facts, 'high');
  const climb = climbFactsOf(facts, level);
  const cuts = Float64Array.from([0, ...masses.map(({ toM }) => toM)]);
  const places = merged(cuts, climb === null ? level.atM : placesOf(climb));
  const levelL = sumsAt(level, places);
  const heights = climb === null ? null : sumsAt({ atM: climb.heights.atM, sum: climb.heights.eleM }, places);
  const sign = way === 'out' ? 1 : -1;
  const sum = new Float64Array(places.length);
  let [span, piece] = [0, 0];
  let lighter = lighterOn(facts, level, span, masses[piece]!.massKg);
  for (let index = 1; index < places.length; index += 1) {
    const fromM = places[index - 1]!;
    const before = [span, piece];
    while (span < facts.spans.length - 1 && facts.spans[span]!.toM <= fromM) span += 1;
    while (piece < masses.length - 1 && masses[piece]!.toM <= fromM) piece += 1;
    if (before[0] !== span || before[1] !== piece)
      lighter = lighterOn(facts, level, span, masses[piece]!.massKg);
    const runL = levelL[index]! - levelL[index - 1]!;
    const riseM = heights === null ? 0 : sign * (heights[index]! - heights[index - 1]!);
    const heavyL = runL + (climb === null ? 0 : stepL(climb, riseM, runL));
    const lightRunL = runL * lighter.share;
    const lightL = lightRunL + (lighter.climb === null ? 0 : stepL(lighter.climb, riseM, lightRunL));
    sum[index] = sum[index - 1]! + (heavyL - lightL);
  }
  return thinned({ atM: places, sum }, new Set(cuts), TOLERANCE_L);
}

/** Litres that a metre of way off the route takes less with a mass than with `facts.massKg`. */
export const savedOffL = (facts: FuelFacts, massKg: number): number =>
  rateOn(facts, 'unknown', 'high').litresPerWayM -
  rateOn({ ...facts, massKg }, 'unknown', 'high').litresPerWayM;

/** What a stretch takes with a mass: as a share of what it takes with `facts.massKg` on the level, and on climbs. */
function lighterOn(
  facts: FuelFacts,
  level: Profile,
  span: number,
  massKg: number,
): { share: number; climb: ClimbFacts | null } {
  const { surface } = facts.spans[span]!;
  const light = { ...facts, massKg };
  return {
    share: rateOn(light, surface, 'high').litresPerWayM / rateOn(facts, surface, 'high').litresPerWayM,
    climb: climbFactsOf(light, level),
  };
}

/** Places of two rising lists, in order, each once. */
function merged(a: Float64Array, b: Float64Array): Float64Array {
  return Float64Array.from(new Set([...a, ...b])).sort();
}
