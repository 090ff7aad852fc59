import type { LonLat } from '../geodesy/lon-lat.ts';
import type { CoordinateFault } from '../phrases/notes.ts';
import { type CoordinateToken, tokensOf } from './coordinate-tokens.ts';

export type Coordinates =
  | { readonly ok: true; readonly place: LonLat }
  | { readonly ok: false; readonly fault: CoordinateFault };

/** One of the two: its numbers from degrees on, its sign, its letter. */
interface Angle {
  readonly numbers: readonly CoordinateToken[];
  readonly isNegative: boolean;
  readonly letter: string | null;
}

const refused = (fault: CoordinateFault): Coordinates => ({ ok: false, fault });

/**
 * A place by its co-ordinates (WGS 84) in any usual notation: decimal degrees, degrees and minutes, degrees, minutes and
 * seconds, with or without their marks; letters of the hemisphere before or behind, or a sign; a comma, a blank or a
 * semicolon between. Latitude comes first unless letters say otherwise. A decimal comma is taken only where it can be
 * nothing else.
 */
export function coordinatesOf(text: string): Coordinates {
  const tokens = tokensOf(text);
  if (!tokens.ok) return refused(tokens.fault);
  const halves = halvesOf(tokens.tokens);
  if (halves === null) return refused({ phrase: 'coordinate-two-wanted', facts: {} });
  const angles = halves.map(angleOf);
  const [first, second] = angles;
  if (first == null || second == null) return refused({ phrase: 'coordinate-mixed-up', facts: {} });
  return placeOf(first, second);
}

function placeOf(first: Angle, second: Angle): Coordinates {
  if ((first.letter === null) !== (second.letter === null))
    return refused({ phrase: 'coordinate-one-letter', facts: {} });
  const isLongitudeFirst = first.letter === 'E' || first.letter === 'W';
  const isLongitudeSecond = second.letter === null || second.letter === 'E' || second.letter === 'W';
  if (isLongitudeFirst === isLongitudeSecond) return refused({ phrase: 'coordinate-same-axis', facts: {} });
  const [north, east] = isLongitudeFirst ? [second, first] : [first, second];
  const [lat, lon] = [degreesOf(north), degreesOf(east)];
  if (lat === null || lon === null) return refused({ phrase: 'coordinate-mixed-up', facts: {} });
  if (Math.abs(lat) > 90) return refused({ phrase: 'coordinate-latitude-beyond', facts: { degrees: lat } });
  if (Math.abs(lon) > 180) return refused({ phrase: 'coordinate-longitude-beyond', facts: { degrees: lon } });
  return { ok: true, place: { lon, lat } };
}

/** Where the second of the two begins: at what stands between, at its letter, at its degree mark, else half way. */
function halvesOf(tokens: readonly CoordinateToken[]): readonly (readonly CoordinateToken[])[] | null {
  const between = tokens.flatMap(({ kind }, index) => (kind === 'between' ? [index] : []));
  if (between.length > 1) return null;
  const [at] = between;
  if (at !== undefined) return [tokens.slice(0, at), tokens.slice(at + 1)];
  const start = byLetter(tokens) ?? byMarks(tokens) ?? byCount(tokens);
  return start === null ? null : [tokens.slice(0, start), tokens.slice(start)];
}

function byLetter(tokens: readonly CoordinateToken[]): number | null {
  const [first, second, ...more] = tokens.flatMap(({ kind }, index) => (kind === 'letter' ? [index] : []));
  if (first === undefined || second === undefined || more.length > 0) return null;
  return first === 0 ? second : first + 1;
}

/** At the number of the second degree mark, or at its sign. */
function byMarks(tokens: readonly CoordinateToken[]): number | null {
  const degrees = tokens.flatMap(({ mark }, index) => (mark === 'degrees' ? [index] : []));
  const [, second] = degrees;
  if (degrees.length !== 2 || second === undefined) return null;
  return tokens[second - 1]?.kind === 'sign' ? second - 1 : second;
}

/** One, two or three numbers for each. */
function byCount(tokens: readonly CoordinateToken[]): number | null {
  const numbers = tokens.flatMap(({ kind }, index) => (kind === 'number' ? [index] : []));
  const middle = numbers[numbers.length / 2];
  if (middle === undefined || ![2, 4, 6].includes(numbers.length)) return null;
  return tokens[middle - 1]?.kind === 'sign' ? middle - 1 : middle;
}

/** A letter at either end, a sign before the first number, one to three numbers; null for anything else. */
function angleOf(tokens: readonly CoordinateToken[]): Angle | null {
  const letters = tokens.filter(({ kind }) => kind === 'letter');
  const signs = tokens.filter(({ kind }) => kind === 'sign');
  const numbers = tokens.filter(({ kind }) => kind === 'number');
  const [letter, ...furtherLetters] = letters;
  const [sign, ...furtherSigns] = signs;
  const isLetterAtEnd = letter === undefined || tokens.at(0) === letter || tokens.at(-1) === letter;
  const isSignFirst = sign === undefined || tokens.at(0) === sign;
  const isPlain = furtherLetters.length + furtherSigns.length === 0 && isLetterAtEnd && isSignFirst;
  if (!isPlain || numbers.length < 1 || numbers.length > 3) return null;
  if (letter !== undefined && sign !== undefined) return null;
  const hemisphere = letter?.text ?? null;
  return {
    numbers,
    isNegative: sign?.text === '-' || hemisphere === 'S' || hemisphere === 'W',
    letter: hemisphere,
  };
}

const MARKS = ['degrees', 'minutes', 'seconds'] as const;

/** Degrees of an angle, null where its marks are not in their order, or what follows a number makes it impossible. */
function degreesOf({ numbers, isNegative }: Angle): number | null {
  let degrees = 0;
  for (const [place, { value, mark, isWhole }] of numbers.entries()) {
    const isLast = place === numbers.length - 1;
    if (mark !== null && mark !== MARKS[place]) return null;
    if (!isLast && !isWhole) return null;
    if (place > 0 && value >= 60) return null;
    degrees += value / 60 ** place;
  }
  return isNegative && degrees !== 0 ? -degrees : degrees;
}
