import type { Profile } from '../../gaps/course/profile.ts';
import { at, numberAt } from '../../lists/at.ts';
import type { SpanM } from '../../quantity/span.ts';
import { type ClimbFacts, climbFactsOf } from './climb-facts.ts';
import { placesOf, stepL } from './climb-profile.ts';
import type { FuelFacts } from './fuel-facts.ts';
import { levelAlong } from './level-along.ts';
import { sumsAt, thinned } from './summed-profiles.ts';
import { rateOn } from './surface-rate.ts';

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
  const level = levelAlong(facts, 'high');
  const climb = climbFactsOf(facts, level);
  const cuts = Float64Array.from([0, ...masses.map(({ toM }) => toM)]);
  const places = merged(cuts, climb === null ? level.atM : placesOf(climb));
  const levelL = sumsAt(level, places);
  const heights = climb === null ? null : sumsAt({ atM: climb.heights.atM, sum: climb.heights.eleM }, places);
  const sign = way === 'out' ? 1 : -1;
  const sum = new Float64Array(places.length);
  const lighterFrom = lighterAlong(facts, level, masses);
  for (let index = 1; index < places.length; index += 1) {
    const lighter = lighterFrom(numberAt(places, index - 1));
    const runL = numberAt(levelL, index) - numberAt(levelL, index - 1);
    const riseM = heights === null ? 0 : sign * (numberAt(heights, index) - numberAt(heights, index - 1));
    const heavyL = runL + (climb === null ? 0 : stepL(climb, riseM, runL));
    const lightRunL = runL * lighter.share;
    const lightL = lightRunL + (lighter.climb === null ? 0 : stepL(lighter.climb, riseM, lightRunL));
    sum[index] = numberAt(sum, index - 1) + (heavyL - lightL);
  }
  return thinned({ atM: places, sum }, new Set(cuts), TOLERANCE_L);
}

/** Litres that a metre of way off the route takes less with a mass than with `facts.massKg`. */
export const savedOffL = (facts: FuelFacts, massKg: number): number =>
  rateOn(facts, 'unknown', 'high').litresPerWayM -
  rateOn({ ...facts, massKg }, 'unknown', 'high').litresPerWayM;

/** What a stretch takes with a mass: as a share of what it takes with `facts.massKg` on the level, and on climbs. */
interface Lighter {
  readonly share: number;
  readonly climb: ClimbFacts | null;
}

/** What the stretch from a place on takes; asked for places in rising order. */
function lighterAlong(
  facts: FuelFacts,
  level: Profile,
  masses: readonly MassSpan[],
): (fromM: number) => Lighter {
  const { spans } = facts;
  let [span, piece] = [0, 0];
  const here = (): Lighter => {
    const { surface } = at(spans, span);
    const light = { ...facts, massKg: at(masses, piece).massKg };
    return {
      share: rateOn(light, surface, 'high').litresPerWayM / rateOn(facts, surface, 'high').litresPerWayM,
      climb: climbFactsOf(light, level),
    };
  };
  let lighter = here();
  return (fromM) => {
    const before = [span, piece];
    while (span < spans.length - 1 && at(spans, span).toM <= fromM) span += 1;
    while (piece < masses.length - 1 && at(masses, piece).toM <= fromM) piece += 1;
    if (before[0] !== span || before[1] !== piece) lighter = here();
    return lighter;
  };
}

/** Places of two rising lists, in order, each once. */
function merged(a: Float64Array, b: Float64Array): Float64Array {
  return Float64Array.from(new Set([...a, ...b])).sort();
}
