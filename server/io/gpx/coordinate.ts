const ZERO = 48;
/** Second letters of 0x…, 0o…, 0b…, in lower case: JavaScript reads these as numbers, GPX does not. */
const RADIX_LETTERS = new Set(['x', 'o', 'b'].map((letter) => letter.charCodeAt(0)));
const TO_LOWER_CASE = 32;

/**
 * The number that a GPX text means, NaN when it is none (empty text among them): xsd:decimal, with the exponent that
 * some writers use all the same. No pattern is matched, as a long track asks this a million times.
 */
export function decimalOf(text: string): number {
  const trimmed = text.trim();
  if (trimmed === '') return Number.NaN;
  if (trimmed.charCodeAt(0) === ZERO && RADIX_LETTERS.has(trimmed.charCodeAt(1) | TO_LOWER_CASE))
    return Number.NaN;
  const value = Number(trimmed);
  return Number.isFinite(value) ? value : Number.NaN;
}

export interface CoordinateFault {
  came: string;
  expected: string;
  remedy: string;
}

function faultOf(
  name: 'lat' | 'lon',
  text: string | undefined,
  value: number,
  limit: number,
): CoordinateFault | null {
  const expected = `${name} as a number from -${limit} to ${limit}`;
  if (text === undefined)
    return { came: `a point without ${name}`, expected, remedy: 'Export the file again' };
  if (Number.isNaN(value)) {
    const remedy = text.includes(',')
      ? 'Write decimals with a point, not a comma'
      : 'Export the file again, or take the point out';
    return { came: `${name}="${text.slice(0, 40)}"`, expected, remedy };
  }
  if (value < -limit || value > limit) {
    const remedy =
      name === 'lat' && Math.abs(value) <= 180
        ? 'Check whether lat and lon were swapped'
        : 'Correct the point, or take it out';
    return { came: `${name}="${text.slice(0, 40)}"`, expected, remedy };
  }
  return null;
}

/** Longitude and latitude from a point's attributes, or what is wrong with them. */
export function readCoordinate(
  attributes: Readonly<Record<string, string>>,
): { lon: number; lat: number; fault: null } | { fault: CoordinateFault } {
  const { lat: latText, lon: lonText } = attributes;
  const lat = latText === undefined ? Number.NaN : decimalOf(latText);
  const lon = lonText === undefined ? Number.NaN : decimalOf(lonText);
  const fault = faultOf('lat', latText, lat, 90) ?? faultOf('lon', lonText, lon, 180);
  return fault === null ? { lon, lat, fault } : { fault };
}
