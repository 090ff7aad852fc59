import type { LogRates } from '../../contract/log.ts';

/** A rig file asks for more than nothing. */
const LEAST = 0.01;

/** Rates as a rig file writes them: two decimals, low rounded down and high up (to within a hundred-thousandth). */
export function ratesYaml({ low, typical, high }: LogRates): string {
  // A thousandth of the last digit: 15.2 as it comes out of a sum may be 15.200000000000001.
  const down = Math.max(LEAST, Math.floor(low * 100 + 1e-3) / 100);
  const up = Math.max(LEAST, Math.ceil(high * 100 - 1e-3) / 100);
  const middle = Math.min(up, Math.max(down, Math.round(typical * 100) / 100));
  return `{ low: ${down}, typical: ${middle}, high: ${up} }`;
}
