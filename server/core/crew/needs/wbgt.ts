/** For which temperatures of the air the estimate of WBGT is meant, °C (ours: hot days, not the model's own limits). */
export const WBGT_RANGE_C = { from: 15, to: 50 };

/** The air and the sky where people are, two metres above the ground. */
export interface Weather {
  /** In shade, °C. */
  readonly temperatureC: number;
  readonly humidityPercent: number;
  readonly windMPerS: number;
  readonly pressureHPa: number;
  /** Of the sun and the sky, on a level square metre. */
  readonly solarWPerM2: number;
  /** Share of that which comes straight from the sun, 0 to 0.9. */
  readonly directShare: number;
  /** Cosine of the sun's angle from overhead. */
  readonly cosZenith: number;
}

/** What the three thermometers show, °C, and their sum. */
export interface Wbgt {
  readonly naturalWetBulbC: number;
  readonly globeC: number;
  readonly wbgtC: number;
}

const KELVIN = 273.15;
/** W/(m² K⁴). */
const STEFAN_BOLTZMANN = 5.6696e-8;
/** J/(kg K), kg/kmol, J/(kmol K). */
const HEAT_OF_AIR = 1003.5;
const MOLAR = { air: 28.97, water: 18.015 };
const GAS_OF_AIR = 8314.34 / MOLAR.air;
const PRANDTL = HEAT_OF_AIR / (HEAT_OF_AIR + 1.25 * GAS_OF_AIR);
const WICK = { emissivity: 0.95, albedo: 0.4, diameterM: 0.007, lengthM: 0.0254 };
const GLOBE = { emissivity: 0.95, albedo: 0.05, diameterM: 0.0508 };
const GROUND = { emissivity: 0.999, albedo: 0.45 };
/** A wind below this is reckoned as this, m/s. */
const LEAST_WIND_M_PER_S = 0.13;

/**
 * Wet-bulb globe temperature out of doors: 0.7 natural wet bulb + 0.2 globe + 0.1 air (ISO 7243), both thermometers by
 * their balance of heat. Model, constants and properties of air: Liljegren, Carhart, Lawday, Tschopp and Sharp, Journal
 * of Occupational and Environmental Hygiene 5(10):645-655 (2008), which compares it with measurements to within 1 °C.
 */
export function wbgtOf(weather: Weather): Wbgt {
  const airK = weather.temperatureC + KELVIN;
  const globeC = balanced(airK, (globeK) => globeHeat(weather, airK, globeK)) - KELVIN;
  const naturalWetBulbC = balanced(airK, (wickK) => wickHeat(weather, airK, wickK)) - KELVIN;
  return {
    naturalWetBulbC,
    globeC,
    wbgtC: 0.7 * naturalWetBulbC + 0.2 * globeC + 0.1 * weather.temperatureC,
  };
}

/** Twice the degrees that a thermometer may be off the air, and halvings to a millionth of one. */
const SPAN_K = 200;
const HALVINGS = 30;

/** The temperature at which a thermometer takes in no heat; it takes in less the warmer it is. */
function balanced(airK: number, heatAt: (kelvin: number) => number): number {
  let low = airK - SPAN_K / 2;
  let high = airK + SPAN_K / 2;
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const middle = (low + high) / 2;
    if (heatAt(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** W/m² that a globe takes in, from all sides as much. */
function globeHeat(weather: Weather, airK: number, globeK: number): number {
  const { solarWPerM2, directShare, cosZenith } = weather;
  const seen = directShare * (1 / (2 * cosZenith) - 1) + 1 + GROUND.albedo;
  return (
    GLOBE.emissivity * (longWave(weather, airK) - STEFAN_BOLTZMANN * globeK ** 4) +
    ((1 - GLOBE.albedo) * solarWPerM2 * seen) / 2 -
    sphereWPerM2K(weather, (globeK + airK) / 2) * (globeK - airK)
  );
}

/** W/m² that a wet wick takes in: by radiation and from the air, less what evaporates. */
function wickHeat(weather: Weather, airK: number, wickK: number): number {
  const { solarWPerM2, directShare, cosZenith, pressureHPa } = weather;
  const filmK = (wickK + airK) / 2;
  const end = WICK.diameterM / WICK.lengthM / 4;
  const tangent = Math.sqrt(1 - cosZenith ** 2) / cosZenith;
  const seen = (1 - directShare) * (1 + end) + directShare * (tangent / Math.PI + end) + GROUND.albedo;
  const radiation =
    WICK.emissivity * (longWave(weather, airK) - STEFAN_BOLTZMANN * wickK ** 4) +
    (1 - WICK.albedo) * solarWPerM2 * seen;
  const schmidt = viscosity(filmK) / (density(pressureHPa, filmK) * vapourDiffusivity(pressureHPa, filmK));
  const vapour = (saturationHPa(wickK) - vapourHPa(weather, airK)) / (pressureHPa - saturationHPa(wickK));
  const evaporationK =
    ((evaporationJPerKg(wickK) * MOLAR.water) / (HEAT_OF_AIR * MOLAR.air)) *
    vapour *
    (PRANDTL / schmidt) ** 0.56;
  return radiation + cylinderWPerM2K(weather, filmK) * (airK - wickK - evaporationK);
}

/** W/m² of sky and ground, halves of all that is seen; the ground is as warm as the air. */
const longWave = (weather: Weather, airK: number): number =>
  (STEFAN_BOLTZMANN * airK ** 4 * (0.575 * vapourHPa(weather, airK) ** 0.143 + GROUND.emissivity)) / 2;

const vapourHPa = ({ humidityPercent }: Weather, airK: number): number =>
  (humidityPercent / 100) * saturationHPa(airK);

/** Over water (Buck 1981), with what the pressure of the air adds. */
const saturationHPa = (kelvin: number): number =>
  1.004 * 6.1121 * Math.exp((17.502 * (kelvin - KELVIN)) / (kelvin - 32.18));

const evaporationJPerKg = (kelvin: number): number => ((313.15 - kelvin) / 30) * -71_100 + 2.4073e6;

/** kg/m³ of dry air. */
const density = (pressureHPa: number, kelvin: number): number => (pressureHPa * 100) / (GAS_OF_AIR * kelvin);

/** kg/(m s) of air, and what it conducts, W/(m K) (Bird, Stewart and Lightfoot). */
const viscosity = (kelvin: number): number =>
  (2.6693e-6 * Math.sqrt(MOLAR.air * kelvin)) / (3.617 ** 2 * (((kelvin / 97 - 2.9) / 0.4) * -0.034 + 1.048));
const conductivity = (kelvin: number): number => (HEAT_OF_AIR + 1.25 * GAS_OF_AIR) * viscosity(kelvin);

/** m²/s of water vapour in air, by the critical points of both (Bird, Stewart and Lightfoot). */
function vapourDiffusivity(pressureHPa: number, kelvin: number): number {
  const critical = { airAtm: 36.4, waterAtm: 218, airK: 132, waterK: 647.3 };
  const kelvins = critical.airK * critical.waterK;
  return (
    (3.64e-4 *
      (kelvin / Math.sqrt(kelvins)) ** 2.334 *
      (critical.airAtm * critical.waterAtm) ** (1 / 3) *
      kelvins ** (5 / 12) *
      Math.sqrt(1 / MOLAR.air + 1 / MOLAR.water) *
      1e-4) /
    (pressureHPa / 1013.25)
  );
}

const reynolds = ({ windMPerS, pressureHPa }: Weather, kelvin: number, diameterM: number): number =>
  (Math.max(windMPerS, LEAST_WIND_M_PER_S) * density(pressureHPa, kelvin) * diameterM) / viscosity(kelvin);

/** Heat that moving air takes from a globe and from a long wick across it, W/(m² K). */
const sphereWPerM2K = (weather: Weather, kelvin: number): number =>
  ((2 + 0.6 * Math.sqrt(reynolds(weather, kelvin, GLOBE.diameterM)) * PRANDTL ** 0.3333) *
    conductivity(kelvin)) /
  GLOBE.diameterM;
const cylinderWPerM2K = (weather: Weather, kelvin: number): number =>
  (0.281 * reynolds(weather, kelvin, WICK.diameterM) ** 0.6 * PRANDTL ** 0.44 * conductivity(kelvin)) /
  WICK.diameterM;
