import { jumpAt, type Profile, sumBefore } from '../../gaps/course/profile.ts';
import { numberAt } from '../../lists/at.ts';

/** The sum of several profiles of one route, with the entries of all. */
export function summedProfiles(parts: readonly Profile[]): Profile {
  const [only, ...others] = parts;
  if (only !== undefined && others.length === 0) return only;
  const places = [...new Set(parts.flatMap((part) => [...part.atM]))].sort((a, b) => a - b);
  const atM: number[] = [];
  const sum: number[] = [];
  for (const place of places) {
    const before = parts.reduce((total, part) => total + sumBefore(part, place), 0);
    const jump = parts.reduce((total, part) => total + jumpAt(part, place), 0);
    atM.push(place);
    sum.push(before);
    if (jump === 0) continue;
    atM.push(place);
    sum.push(before + jump);
  }
  return { atM: Float64Array.from(atM), sum: Float64Array.from(sum) };
}

/** The sums of a profile at places in rising order, jumps there still to come; one walk along both. */
export function sumsAt({ atM, sum }: Profile, places: Float64Array): Float64Array {
  const sums = new Float64Array(places.length);
  let next = 0;
  for (let index = 0; index < places.length; index += 1) {
    const place = numberAt(places, index);
    while (next < atM.length - 1 && numberAt(atM, next) < place) next += 1;
    const nextM = numberAt(atM, next);
    if (next === 0 || nextM <= place) {
      sums[index] = numberAt(sum, next);
      continue;
    }
    const previousM = numberAt(atM, next - 1);
    const previousSum = numberAt(sum, next - 1);
    sums[index] =
      previousSum + ((place - previousM) / (nextM - previousM)) * (numberAt(sum, next) - previousSum);
  }
  return sums;
}

/**
 * A profile with as few entries as keep it within `tolerance` of the given one everywhere. Entries at `kept` places,
 * the first and the last stay. Places must differ from each other.
 */
export function thinned(profile: Profile, kept: ReadonlySet<number>, tolerance: number): Profile {
  const { atM, sum } = profile;
  const chosen = [0];
  let anchor = 0;
  let [least, most] = [-Infinity, Infinity];
  const anchorAt = (index: number) => {
    anchor = index;
    chosen.push(anchor);
    [least, most] = [-Infinity, Infinity];
  };
  for (let index = 1; index < atM.length; index += 1) {
    const run = numberAt(atM, index) - numberAt(atM, anchor);
    const rise = numberAt(sum, index) - numberAt(sum, anchor);
    const slope = rise / run;
    if (index - 1 > anchor && (slope < least || slope > most)) {
      anchorAt(index - 1);
      index -= 1;
      continue;
    }
    least = Math.max(least, (rise - tolerance) / run);
    most = Math.min(most, (rise + tolerance) / run);
    if (kept.has(numberAt(atM, index)) || index === atM.length - 1) anchorAt(index);
  }
  return {
    atM: Float64Array.from(chosen, (index) => numberAt(atM, index)),
    sum: Float64Array.from(chosen, (index) => numberAt(sum, index)),
  };
}
