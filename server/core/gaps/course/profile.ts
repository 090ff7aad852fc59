import { numberAt } from '../../lists/at.ts';
/**
 * A quantity summed along the route from its start: `sum[i]` at `atM[i]` metres, straight lines between. Both rise or
 * stay; `atM` begins with 0 and ends with the route's length. Two entries at one place are a jump (a night, a stay).
 */
export interface Profile {
  atM: Float64Array;
  sum: Float64Array;
}

/** A profile of one straight line: `perM` of the quantity for each metre. */
export const evenProfile = (lengthM: number, perM: number): Profile => ({
  atM: Float64Array.of(0, lengthM),
  sum: Float64Array.of(0, lengthM * perM),
});

/** A profile from steps, each of a length in metres and an amount; a step without length is a jump. */
export function profileOf(steps: Iterable<{ lengthM: number; amount: number }>): Profile {
  let reachedM = 0;
  let total = 0;
  const atM = [reachedM];
  const sum = [total];
  for (const step of steps) {
    reachedM += step.lengthM;
    total += step.amount;
    atM.push(reachedM);
    sum.push(total);
  }
  return { atM: Float64Array.from(atM), sum: Float64Array.from(sum) };
}

/** Index of the first entry at or after a place. */
function firstAtOrAfter(profile: Profile, atM: number): number {
  let low = 0;
  let high = profile.atM.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (numberAt(profile.atM, middle) < atM) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The sum on arriving at a place: a jump there is still to come. Places are clamped to the route. */
export function sumBefore(profile: Profile, atM: number): number {
  const next = firstAtOrAfter(profile, atM);
  const nextM = numberAt(profile.atM, next);
  const nextSum = numberAt(profile.sum, next);
  if (next === 0 || nextM <= atM) return nextSum;
  const previousM = numberAt(profile.atM, next - 1);
  const previousSum = numberAt(profile.sum, next - 1);
  return previousSum + ((atM - previousM) / (nextM - previousM)) * (nextSum - previousSum);
}

/** What the stretch from `fromM` on and before `toM` amounts to; stretches that tile the route share no jump. */
export const amountBetween = (profile: Profile, fromM: number, toM: number): number =>
  sumBefore(profile, toM) - sumBefore(profile, fromM);

/** The profile with nothing added along some spans, which are in order and do not overlap. */
export function withoutSpans(profile: Profile, spans: readonly { fromM: number; toM: number }[]): Profile {
  const atM: number[] = [];
  const sum: number[] = [];
  let saved = 0;
  let next = 0;
  const note = (at: number, value: number): void => {
    atM.push(at);
    sum.push(value - saved);
  };
  for (const { fromM, toM } of spans) {
    for (; next < profile.atM.length && numberAt(profile.atM, next) < fromM; next += 1)
      note(numberAt(profile.atM, next), numberAt(profile.sum, next));
    const [before, after] = [sumBefore(profile, fromM), sumBefore(profile, toM)];
    note(fromM, before);
    while (next < profile.atM.length && numberAt(profile.atM, next) < toM) next += 1;
    saved += after - before;
    note(toM, after);
  }
  for (; next < profile.atM.length; next += 1) note(numberAt(profile.atM, next), numberAt(profile.sum, next));
  return { atM: Float64Array.from(atM), sum: Float64Array.from(sum) };
}

/** The entries strictly inside a stretch, as places, in order, each once. */
export function breaksInside(profile: Profile, fromM: number, toM: number): number[] {
  const places: number[] = [];
  for (let index = firstAtOrAfter(profile, fromM); index < profile.atM.length; index += 1) {
    const atM = numberAt(profile.atM, index);
    if (atM >= toM) break;
    if (atM > fromM && places.at(-1) !== atM) places.push(atM);
  }
  return places;
}

/** The height of the jump at a place; 0 where there is none. */
export function jumpAt(profile: Profile, atM: number): number {
  let index = firstAtOrAfter(profile, atM);
  if (profile.atM[index] !== atM) return 0;
  const before = numberAt(profile.sum, index);
  while (profile.atM[index + 1] === atM) index += 1;
  return numberAt(profile.sum, index) - before;
}
