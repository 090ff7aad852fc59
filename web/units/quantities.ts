import {
  KG_PER_POUND,
  KM_PER_MILE,
  KPA_PER_PSI,
  LITRES_PER_IMPERIAL_GALLON,
  LITRES_PER_US_GALLON,
  M_PER_FOOT,
  type UnitSystem,
} from './units.ts';

/** What a field holds. Files are metric; the reader types in their own units. */
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
  | 'count';

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
const same = (unit: string) => times(1, unit);

/** Miles to the gallon run the other way: the higher, the less is used. Its own inverse. */
function milesPerGallon(litresPerGallon: number): Conversion {
  const flip = (value: number) => (100 * litresPerGallon) / (KM_PER_MILE * value);
  return { unit: 'mi/gal', toUser: flip, toMetric: flip };
}

const miles = times(1 / KM_PER_MILE, 'mi');
const pounds = times(1 / KG_PER_POUND, 'lb');
const feet = times(1 / M_PER_FOOT, 'ft');
const psi = times(1 / KPA_PER_PSI, 'psi');
const FAHRENHEIT: Conversion = {
  unit: '°F',
  toUser: (celsius) => celsius * 1.8 + 32,
  toMetric: (fahrenheit) => (fahrenheit - 32) / 1.8,
};
const milesAnHour = times(1 / KM_PER_MILE, 'mph');
const everywhere = (conversion: Conversion): Record<UnitSystem, Conversion> => ({
  metric: conversion,
  us: conversion,
  imperial: conversion,
});

const CONVERSIONS: Record<QuantityKind, Record<UnitSystem, Conversion>> = {
  volume: {
    metric: same('l'),
    us: times(1 / LITRES_PER_US_GALLON, 'gal'),
    imperial: times(1 / LITRES_PER_IMPERIAL_GALLON, 'gal'),
  },
  distance: { metric: same('km'), us: miles, imperial: miles },
  speed: { metric: same('km/h'), us: milesAnHour, imperial: milesAnHour },
  fuelUse: {
    metric: same('l/100 km'),
    us: milesPerGallon(LITRES_PER_US_GALLON),
    imperial: milesPerGallon(LITRES_PER_IMPERIAL_GALLON),
  },
  waterUse: {
    metric: same('l a day'),
    us: times(1 / LITRES_PER_US_GALLON, 'gal a day'),
    imperial: times(1 / LITRES_PER_IMPERIAL_GALLON, 'gal a day'),
  },
  litresPer1000Km: {
    metric: same('l on 1,000 km'),
    us: times(KM_PER_MILE / LITRES_PER_US_GALLON, 'gal on 1,000 mi'),
    imperial: times(KM_PER_MILE / LITRES_PER_IMPERIAL_GALLON, 'gal on 1,000 mi'),
  },
  hourUse: {
    metric: same('l/h'),
    us: times(1 / LITRES_PER_US_GALLON, 'gal/h'),
    imperial: times(1 / LITRES_PER_IMPERIAL_GALLON, 'gal/h'),
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
  length: { metric: same('m'), us: feet, imperial: feet },
  area: {
    metric: same('m²'),
    us: times(1 / M_PER_FOOT ** 2, 'ft²'),
    imperial: times(1 / M_PER_FOOT ** 2, 'ft²'),
  },
  degrees: everywhere(same('°')),
  pressure: { metric: same('kPa'), us: psi, imperial: psi },
  // One bar is 100 kPa exactly.
  tyrePressure: {
    metric: same('bar'),
    us: times(100 / KPA_PER_PSI, 'psi'),
    imperial: times(100 / KPA_PER_PSI, 'psi'),
  },
  flow: {
    metric: same('l/min'),
    us: times(1 / LITRES_PER_US_GALLON, 'gal/min'),
    imperial: times(1 / LITRES_PER_IMPERIAL_GALLON, 'gal/min'),
  },
  minutes: everywhere(same('min')),
  bore: everywhere(same('mm')),
  pores: everywhere(same('µm')),
  cloudiness: everywhere(same('NTU')),
  log: everywhere(same('log')),
  dose: everywhere(same('mJ/cm²')),
  strength: everywhere(same('mg/l')),
  count: everywhere(same('')),
};

export const unitOf = (kind: QuantityKind, units: UnitSystem): string => CONVERSIONS[kind][units].unit;

/** A metric value as the text of a field: four significant figures where converted, as it stands where not. */
export function fieldText(metric: number, kind: QuantityKind, units: UnitSystem): string {
  const value = CONVERSIONS[kind][units].toUser(metric);
  // Twelve figures take binary noise away; four are finer than any gauge once a value has been converted.
  const figures = value === metric ? 12 : 4;
  return Number.isFinite(value)
    ? String(Number(value.toPrecision(Math.max(figures, wholeFigures(value)))))
    : '';
}

const wholeFigures = (value: number): number => Math.trunc(Math.abs(value)).toString().length;

export type Typed = { ok: true; value: number } | { ok: false; why: string };

/** Reads what was typed, in the reader's units, and gives it in metric. */
export function readTyped(text: string, kind: QuantityKind, units: UnitSystem): Typed {
  const plain = text
    .trim()
    .replace('\u2212', '-')
    .replaceAll(/[\s\u00a0\u202f]/g, '');
  if (plain === '') return { ok: false, why: 'Needs a number.' };
  if (/^-?\d{1,3},\d{3}$/.test(plain)) {
    return {
      ok: false,
      why: `“${text.trim()}” can be read two ways: write it without a comma, or with a point.`,
    };
  }
  const typed = plain.replace(/^(-?\d*),(\d+)$/, '$1.$2');
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(typed)) {
    return { ok: false, why: `Needs a number, not “${text.trim()}”.` };
  }
  const metric = CONVERSIONS[kind][units].toMetric(Number(typed));
  if (!Number.isFinite(metric)) return { ok: false, why: 'Needs a number above 0.' };
  // Twelve significant figures: shares typed in per cent stay whole (10 % is 0.1).
  return { ok: true, value: Number(metric.toPrecision(12)) };
}
