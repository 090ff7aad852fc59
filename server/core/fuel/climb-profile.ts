import type { Profile } from '../gaps/profile.ts';
import type { Heights } from './elevation.ts';
import { sumsAt, thinned } from './summed-profiles.ts';

/** Litres within which a climb's litres are kept at every place (ours). */
const TOLERANCE_L = 0.01;
/** A descent spares at most this share of what the way would take on the level: the engine turns on (ours). */
const MOST_SPARED = 0.8;

export interface ClimbFacts {
  lengthM: number;
  heights: Heights;
  litresPerClimbM: number;
  /** Litres that a metre of descent spares. */
  sparedPerDescentM: number;
  /** Litres that the way takes on the level. */
  level: Profile;
}

/**
 * Litres for climbs less what descents spare, driven forwards and backwards: what is a climb on the way out is a
 * descent on the way home. Single places of these profiles may fall; with the level's litres they never do.
 */
export function climbProfiles(facts: ClimbFacts): { out: Profile; home: Profile } {
  const places = withPlaces(facts);
  const run = sumsAt(facts.level, places);
  const heights = sumsAt({ atM: facts.heights.atM, sum: facts.heights.eleM }, places);
  const out = new Float64Array(places.length);
  const home = new Float64Array(places.length);
  for (let index = 1; index < places.length; index += 1) {
    const riseM = heights[index]! - heights[index - 1]!;
    const liftL = Math.abs(riseM) * facts.litresPerClimbM;
    const sparedL = Math.min(
      Math.abs(riseM) * facts.sparedPerDescentM,
      MOST_SPARED * (run[index]! - run[index - 1]!),
    );
    out[index] = out[index - 1]! + (riseM > 0 ? liftL : -sparedL);
    home[index] = home[index - 1]! + (riseM > 0 ? -sparedL : liftL);
  }
  const kept = new Set(facts.level.atM);
  return {
    out: thinned({ atM: places, sum: out }, kept, TOLERANCE_L),
    home: thinned({ atM: places, sum: home }, kept, TOLERANCE_L),
  };
}

/** Every place with a known height, and every place where the level's rate may change, in order, each once. */
function withPlaces({ lengthM, heights, level }: ClimbFacts): Float64Array {
  const all = Float64Array.of(0, ...level.atM, lengthM);
  const merged = new Float64Array(all.length + heights.atM.length);
  merged.set(all);
  merged.set(heights.atM, all.length);
  merged.sort();
  let count = 0;
  for (const place of merged) {
    if (count > 0 && merged[count - 1] === place) continue;
    merged[count] = place;
    count += 1;
  }
  return merged.slice(0, count);
}
