/**
 * Above this a rolling boil of 3 minutes, below it 1 minute: 6,562 ft, CDC, A Guide to Drinking Water Treatment and
 * Sanitation for Backcountry & Travel Use; EPA WSG 11 (1978, revised 1998).
 */
export const HIGH_ABOVE_M = 2000;
/**
 * EPA, Emergency Disinfection of Drinking Water (EPA 816-F-15-003), asks for 3 minutes "above 5,000 feet (1,000
 * meters)"; its two units disagree. The lower one serves for a caution.
 */
export const STRICTER_ABOVE_M = 1000;
const MINUTES = { low: 1, high: 3 };

/** Minutes of rolling boil that a height asks for; where the height is unknown (null) the longer time. */
export const boilMinutes = (altitudeM: number | null): number =>
  altitudeM === null || altitudeM > HIGH_ABOVE_M ? MINUTES.high : MINUTES.low;

/** ICAO standard atmosphere: pressure at a height below 11 km, hPa. */
const pressureHPa = (altitudeM: number): number => 1013.25 * (1 - 2.25577e-5 * altitudeM) ** 5.25588;

/** Antoine's equation for water between 1 and 100 °C, mmHg and °C. */
const ANTOINE = { a: 8.07131, b: 1730.63, c: 233.426 };
const MMHG_PER_HPA = 0.750062;

/** Temperature at which water boils at a height in the standard atmosphere, °C; good to 0.2 °C below 6,000 m. */
export const boilingPointC = (altitudeM: number): number =>
  ANTOINE.b / (ANTOINE.a - Math.log10(pressureHPa(altitudeM) * MMHG_PER_HPA)) - ANTOINE.c;
