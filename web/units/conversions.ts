/** Whose units a reader has. Inside everything is metric; this table holds what it is turned to. */
export type UnitSystem = 'metric' | 'us' | 'imperial';

/** International mile, 1959 agreement: exactly 1.609344 km. */
const KM_PER_MILE = 1.609344;
/** US liquid gallon, 231 cubic inches: exactly 3.785411784 l (NIST SP 811, B.8). */
const LITRES_PER_US_GALLON = 3.785411784;
/** Imperial gallon: exactly 4.54609 l (UK Units of Measurement Regulations 1995). */
const LITRES_PER_IMPERIAL_GALLON = 4.54609;
/** Avoirdupois pound, 1959 agreement: exactly 0.45359237 kg. */
const KG_PER_POUND = 0.45359237;
/** International foot, 1959 agreement: exactly 0.3048 m. */
const M_PER_FOOT = 0.3048;
/** Pound-force on a square inch: 6.894757 kPa (NIST SP 811, B.8). */
const KPA_PER_PSI = 6.894757;

/** What a figure is of. */
export type QuantityKind =
  | 'volume'
  | 'distance'
  | 'speed'
  | 'fuelUse'
  | 'waterUse'
  | 'litresPer1000Km'
  | 'hourUse'
  | 'share'
  | 'percent'
  | 'days'
  | 'hours'
  | 'factor'
  | 'celsius'
  | 'warming'
  | 'mass'
  | 'percentPer100Kg'
  | 'litreMass'
  | 'density'
  | 'energy'
  | 'length'
  | 'area'
  | 'degrees'
  | 'pressure'
  | 'tyrePressure'
  | 'flow'
  | 'minutes'
  | 'bore'
  | 'pores'
  | 'cloudiness'
  | 'log'
  | 'dose'
  | 'strength'
  | 'price'
  | 'count';

/** A unit of a reader's, and the way there and back. */
interface Conversion {
  unit: string;
  toUser: (metric: number) => number;
  toMetric: (user: number) => number;
}

const times = (factor: number, unit: string): Conversion => ({
  unit,
  toUser: (metric) => metric * factor,
  toMetric: (user) => user / factor,
});
/** A unit that is so many metric ones. */
const of = (size: number, unit: string): Conversion => ({
  unit,
  toUser: (metric) => metric / size,
  toMetric: (user) => user * size,
});
const same = (unit: string) => of(1, unit);

/** Miles to the gallon run the other way: the higher, the less is used. Its own inverse. */
function milesPerGallon(litresPerGallon: number): Conversion {
  const flip = (value: number) => (100 * litresPerGallon) / (KM_PER_MILE * value);
  return { unit: 'mi/gal', toUser: flip, toMetric: flip };
}

const miles = of(KM_PER_MILE, 'mi');
const pounds = of(KG_PER_POUND, 'lb');
const feet = of(M_PER_FOOT, 'ft');
const psi = of(KPA_PER_PSI, 'psi');
const FAHRENHEIT: Conversion = {
  unit: '°F',
  toUser: (celsius) => celsius * 1.8 + 32,
  toMetric: (fahrenheit) => (fahrenheit - 32) / 1.8,
};
const milesAnHour = of(KM_PER_MILE, 'mph');
const everywhere = (conversion: Conversion): Record<UnitSystem, Conversion> => ({
  metric: conversion,
  us: conversion,
  imperial: conversion,
});

const CONVERSIONS: Record<QuantityKind, Record<UnitSystem, Conversion>> = {
  volume: {
    metric: same('L'),
    us: of(LITRES_PER_US_GALLON, 'gal'),
    imperial: of(LITRES_PER_IMPERIAL_GALLON, 'gal'),
  },
  distance: { metric: same('km'), us: miles, imperial: miles },
  speed: { metric: same('km/h'), us: milesAnHour, imperial: milesAnHour },
  fuelUse: {
    metric: same('L/100 km'),
    us: milesPerGallon(LITRES_PER_US_GALLON),
    imperial: milesPerGallon(LITRES_PER_IMPERIAL_GALLON),
  },
  waterUse: {
    metric: same('L a day'),
    us: of(LITRES_PER_US_GALLON, 'gal a day'),
    imperial: of(LITRES_PER_IMPERIAL_GALLON, 'gal a day'),
  },
  litresPer1000Km: {
    metric: same('L on 1,000 km'),
    us: of(LITRES_PER_US_GALLON / KM_PER_MILE, 'gal on 1,000 mi'),
    imperial: of(LITRES_PER_IMPERIAL_GALLON / KM_PER_MILE, 'gal on 1,000 mi'),
  },
  hourUse: {
    metric: same('L/h'),
    us: of(LITRES_PER_US_GALLON, 'gal/h'),
    imperial: of(LITRES_PER_IMPERIAL_GALLON, 'gal/h'),
  },
  share: everywhere(times(100, '%')),
  percent: everywhere(same('%')),
  days: everywhere(same('days')),
  hours: everywhere(same('hours')),
  factor: everywhere(same('×')),
  celsius: { metric: same('°C'), us: FAHRENHEIT, imperial: same('°C') },
  // A difference: no 32 to add.
  warming: { metric: same('°C'), us: times(1.8, '°F'), imperial: same('°C') },
  mass: { metric: same('kg'), us: pounds, imperial: pounds },
  percentPer100Kg: {
    metric: same('% for 100 kg'),
    us: times(KG_PER_POUND, '% for 100 lb'),
    imperial: times(KG_PER_POUND, '% for 100 lb'),
  },
  litreMass: {
    metric: same('kg/L'),
    us: of(KG_PER_POUND / LITRES_PER_US_GALLON, 'lb/gal'),
    imperial: of(KG_PER_POUND / LITRES_PER_IMPERIAL_GALLON, 'lb/gal'),
  },
  density: {
    metric: same('kg/m³'),
    us: of((1000 * KG_PER_POUND) / LITRES_PER_US_GALLON, 'lb/gal'),
    imperial: of((1000 * KG_PER_POUND) / LITRES_PER_IMPERIAL_GALLON, 'lb/gal'),
  },
  energy: {
    metric: same('MJ/L'),
    us: times(LITRES_PER_US_GALLON, 'MJ/gal'),
    imperial: times(LITRES_PER_IMPERIAL_GALLON, 'MJ/gal'),
  },
  length: { metric: same('m'), us: feet, imperial: feet },
  area: {
    metric: same('m²'),
    us: of(M_PER_FOOT ** 2, 'ft²'),
    imperial: of(M_PER_FOOT ** 2, 'ft²'),
  },
  degrees: everywhere(same('°')),
  pressure: { metric: same('kPa'), us: psi, imperial: psi },
  // One bar is 100 kPa exactly.
  tyrePressure: {
    metric: same('bar'),
    us: of(KPA_PER_PSI / 100, 'psi'),
    imperial: of(KPA_PER_PSI / 100, 'psi'),
  },
  flow: {
    metric: same('L/min'),
    us: of(LITRES_PER_US_GALLON, 'gal/min'),
    imperial: of(LITRES_PER_IMPERIAL_GALLON, 'gal/min'),
  },
  minutes: everywhere(same('min')),
  bore: everywhere(same('mm')),
  pores: everywhere(same('µm')),
  cloudiness: everywhere(same('NTU')),
  log: everywhere(same('log')),
  dose: everywhere(same('mJ/cm²')),
  strength: everywhere(same('mg/L')),
  price: {
    metric: same('a litre'),
    us: times(LITRES_PER_US_GALLON, 'a gal'),
    imperial: times(LITRES_PER_IMPERIAL_GALLON, 'a gal'),
  },
  count: everywhere(same('')),
};

/** The unit that figures of a kind have for a reader. */
export const unitOf = (kind: QuantityKind, units: UnitSystem): string => CONVERSIONS[kind][units].unit;

/** A metric figure in the reader's unit, unrounded. */
export const valueIn = (kind: QuantityKind, metric: number, units: UnitSystem): number =>
  CONVERSIONS[kind][units].toUser(metric);

/** A figure of the reader's in metric, unrounded. */
export const metricOf = (kind: QuantityKind, value: number, units: UnitSystem): number =>
  CONVERSIONS[kind][units].toMetric(value);

/** Kinds of the units that terms and sentences have; what is not here all readers have alike. */
const KINDS: Readonly<Record<string, QuantityKind>> = {
  km: 'distance',
  m: 'length',
  l: 'volume',
  'l a day': 'waterUse',
  'l/h': 'hourUse',
  'l/min': 'flow',
  kg: 'mass',
  kPa: 'pressure',
  'l/100 km': 'fuelUse',
  'km/h': 'speed',
  '°C': 'celsius',
};

/** What a figure with a metric unit is of; null where all readers have the unit alike. */
export const kindOf = (metricUnit: string): QuantityKind | null => KINDS[metricUnit] ?? null;
