import type { Profile } from '../../gaps/course/profile.ts';
import { numberAt } from '../../lists/at.ts';
import type { ClimbFacts } from './climb-facts.ts';
import { sumsAt, thinned } from './summed-profiles.ts';

/** Litres within which a climb's litres are kept at every place (ours). */
const TOLERANCE_L = 0.01;
/** A descent spares at most this share of what the way would take on the level: the engine turns on (ours). */
const MOST_SPARED = 0.8;

/**
 * Litres for climbs less what descents spare, driven forwards and backwards: what is a climb on the way out is a
 * descent on the way home. Single places of these profiles may fall; with the level's litres they never do.
 */
export function climbProfiles(facts: ClimbFacts): { out: Profile; home: Profile } {
  const along = heightsAlong(facts);
  const { places } = along;
  const out = new Float64Array(places.length);
  const home = new Float64Array(places.length);
  for (let index = 1; index < places.length; index += 1) {
    const { riseM, runL } = stepTo(along, index);
    out[index] = numberAt(out, index - 1) + stepL(facts, riseM, runL);
    home[index] = numberAt(home, index - 1) + stepL(facts, -riseM, runL);
  }
  const kept = new Set(facts.level.atM);
  return {
    out: thinned({ atM: places, sum: out }, kept, TOLERANCE_L),
    home: thinned({ atM: places, sum: home }, kept, TOLERANCE_L),
  };
}

/** Litres of the whole route, driven forwards: the last entry of `climbProfiles(facts).out`. */
export function climbTotalL(facts: ClimbFacts): number {
  const along = heightsAlong(facts);
  let litres = 0;
  for (let index = 1; index < along.places.length; index += 1) {
    const { riseM, runL } = stepTo(along, index);
    litres += stepL(facts, riseM, runL);
  }
  return litres;
}

/** Every place where height or rate may change, with its height and the litres on the level up to it. */
interface HeightsAlong {
  readonly places: Float64Array;
  readonly eleM: Float64Array;
  readonly levelL: Float64Array;
}

function heightsAlong(facts: ClimbFacts): HeightsAlong {
  const places = placesOf(facts);
  const { atM, eleM } = facts.heights;
  return { places, eleM: sumsAt({ atM, sum: eleM }, places), levelL: sumsAt(facts.level, places) };
}

/** What the way to a place from the one before rises, and takes on the level. */
const stepTo = ({ eleM, levelL }: HeightsAlong, index: number): { riseM: number; runL: number } => ({
  riseM: numberAt(eleM, index) - numberAt(eleM, index - 1),
  runL: numberAt(levelL, index) - numberAt(levelL, index - 1),
});

/** A step's litres beyond those on the level; negative on a descent. */
export const stepL = (facts: ClimbFacts, riseM: number, runL: number): number =>
  riseM > 0 ? riseM * facts.litresPerClimbM : -Math.min(-riseM * facts.sparedPerDescentM, MOST_SPARED * runL);

/** Every place with a known height, and every place where the level's rate may change, in order, each once. */
export function placesOf({ heights, level }: ClimbFacts): Float64Array {
  const [first, second] = [level.atM, heights.atM];
  const places = new Float64Array(first.length + second.length);
  let [count, i, j] = [0, 0, 0];
  while (i < first.length || j < second.length) {
    const next = Math.min(first[i] ?? Infinity, second[j] ?? Infinity);
    while (first[i] === next) i += 1;
    while (second[j] === next) j += 1;
    places[count] = next;
    count += 1;
  }
  return places.slice(0, count);
}
