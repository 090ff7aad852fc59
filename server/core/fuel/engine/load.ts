/** Standard gravity, m/s² (exact by definition). */
export const GRAVITY_M_S2 = 9.80665;

/**
 * "An extra 100 pounds could reduce your MPG by about 1 %" (US DOE and EPA, fueleconomy.gov, from memory): said of an
 * average car, and that it grows with the share of the vehicle's own weight.
 */
const PERCENT_PER_100_LB = 1;
const POUND_KG = 0.45359237;
/** What that average car weighs, kg (ours). */
const AVERAGE_CAR_KG = 1600;

/** Percent more fuel for each 100 kg above the observed mass, from the published figure scaled by the vehicle's mass. */
export const defaultLoadPercent = (observedKg: number): number =>
  ((PERCENT_PER_100_LB / POUND_KG) * AVERAGE_CAR_KG) / observedKg;

/** The multiple of the rate that goes with a mass above the observed one; 1 at or below it. */
export const loadFactor = (massKg: number, observedKg: number, percentPer100Kg: number): number =>
  1 + (Math.max(0, massKg - observedKg) / 100) * (percentPer100Kg / 100);
