import { numberAt } from '../lists/at.ts';

/** Metres of height along the route, all known: `eleM[i]` at `atM[i]`, straight lines between. */
export interface Heights {
  atM: Float64Array;
  eleM: Float64Array;
}

/** No road is lower or higher (ours): what lies outside stands for "unknown" in some programs. */
const LOWEST_M = -600;
const HIGHEST_M = 8000;

/**
 * The heights that a route's elevations give. Vertices without one (or with one that no road has) are left out, so
 * that the line runs straight from known to known; null when fewer than two are left. `unknownM`: metres of route
 * on steps with an end that has none.
 */
export function heightsOf(
  atM: Float64Array,
  eleM: Float64Array,
): { heights: Heights | null; unknownM: number; absurd: number } {
  const knownAtM: number[] = [];
  const knownEleM: number[] = [];
  let absurd = 0;
  let unknownM = 0;
  let before = true;
  for (let vertex = 0; vertex < eleM.length; vertex += 1) {
    const ele = numberAt(eleM, vertex);
    const hereM = numberAt(atM, vertex);
    const good = ele >= LOWEST_M && ele <= HIGHEST_M;
    if (good) {
      // Of points at one place the last holds, so that no height is gained without a way.
      if (knownAtM.at(-1) === hereM) {
        knownAtM.pop();
        knownEleM.pop();
      }
      knownAtM.push(hereM);
      knownEleM.push(ele);
    }
    if (!good && !Number.isNaN(ele)) absurd += 1;
    if (vertex > 0 && !(good && before)) unknownM += hereM - numberAt(atM, vertex - 1);
    before = good;
  }
  const heights =
    knownAtM.length < 2 ? null : { atM: Float64Array.from(knownAtM), eleM: Float64Array.from(knownEleM) };
  return { heights, unknownM, absurd };
}

/** Metres up and down over a line of heights. */
export function climbOf(eleM: Float64Array): { upM: number; downM: number } {
  let [upM, downM] = [0, 0];
  for (let index = 1; index < eleM.length; index += 1) {
    const rise = numberAt(eleM, index) - numberAt(eleM, index - 1);
    if (rise > 0) upM += rise;
    else downM -= rise;
  }
  return { upM, downM };
}

/**
 * Indexes of the turning points: the first place, the last, and every summit and hollow from which the line falls or
 * rises by more than `thresholdM` before it turns again. Rises and falls up to the threshold are noise.
 */
export function turningPoints(eleM: Float64Array, thresholdM: number): number[] {
  const turns = [0];
  let low = 0;
  let high = 0;
  let heading: 'up' | 'down' | null = null;
  for (let index = 1; index < eleM.length; index += 1) {
    const ele = numberAt(eleM, index);
    if (ele > numberAt(eleM, high)) high = index;
    if (ele < numberAt(eleM, low)) low = index;
    if (heading !== 'down' && numberAt(eleM, high) - ele > thresholdM) {
      if (heading === 'up') turns.push(high);
      heading = 'down';
      low = index;
      high = index;
    } else if (heading !== 'up' && ele - numberAt(eleM, low) > thresholdM) {
      if (heading === 'down') turns.push(low);
      heading = 'up';
      low = index;
      high = index;
    }
  }
  // The last leg ends at its summit or hollow; what follows is noise, and the end closes the line.
  const peak = heading === 'up' ? high : heading === 'down' ? low : 0;
  for (const closing of [peak, eleM.length - 1]) {
    if (closing > (turns.at(-1) ?? 0)) turns.push(closing);
  }
  return turns;
}

/**
 * Heights without noise: from turning point to turning point the line only rises or only falls, as late as the
 * measured one does. Up and down are those of the turning points, never more than the measured ones.
 */
export function smoothed(heights: Heights, thresholdM: number): Heights {
  const eleM = Float64Array.from(heights.eleM);
  let first = 0;
  for (const last of turningPoints(heights.eleM, thresholdM)) {
    const end = numberAt(eleM, last);
    const up = end >= numberAt(eleM, first);
    for (let index = first + 1; index < last; index += 1) {
      const before = numberAt(eleM, index - 1);
      const here = numberAt(eleM, index);
      eleM[index] = up ? Math.min(end, Math.max(before, here)) : Math.max(end, Math.min(before, here));
    }
    first = last;
  }
  return { atM: heights.atM, eleM };
}
