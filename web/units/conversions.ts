import { t } from '../language/t.ts';
/** What a reader chose of each kind of unit. Inside everything is metric; this table holds what it is turned to. */
export interface Units {
  readonly distance: 'km' | 'mi';
  readonly volume: 'L' | 'US gal' | 'imp gal';
  readonly mass: 'kg' | 'lb';
  readonly temperature: '°C' | '°F';
  readonly length: 'm' | 'ft';
  readonly pressure: 'kPa' | 'psi';
}

/** What is chosen all at once. */
export type UnitPreset = 'metric' | 'us' | 'imperial';

/** A reader's units: one of the three systems by its name, or each on its own. */
export type UnitSystem = UnitPreset | Units;

export const UNIT_PRESETS: Readonly<Record<UnitPreset, Units>> = {
  metric: { distance: 'km', volume: 'L', mass: 'kg', temperature: '°C', length: 'm', pressure: 'kPa' },
  us: { distance: 'mi', volume: 'US gal', mass: 'lb', temperature: '°F', length: 'ft', pressure: 'psi' },
  imperial: {
    distance: 'mi',
    volume: 'imp gal',
    mass: 'lb',
    temperature: '°C',
    length: 'ft',
    pressure: 'psi',
  },
};

/** Each unit of a reader's, whichever way they chose. */
export const unitsOf = (units: UnitSystem): Units =>
  typeof units === 'string' ? UNIT_PRESETS[units] : units;

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

const FAHRENHEIT: Conversion = {
  unit: '°F',
  toUser: (celsius) => celsius * 1.8 + 32,
  toMetric: (fahrenheit) => (fahrenheit - 32) / 1.8,
};

/** Each unit's size in metric ones, and how it is written. Beside a figure a gallon is a gallon. */
const KM: Record<Units['distance'], number> = { km: 1, mi: KM_PER_MILE };
const LITRES: Record<Units['volume'], number> = {
  L: 1,
  'US gal': LITRES_PER_US_GALLON,
  'imp gal': LITRES_PER_IMPERIAL_GALLON,
};
const KG: Record<Units['mass'], number> = { kg: 1, lb: KG_PER_POUND };
const METRES: Record<Units['length'], number> = { m: 1, ft: M_PER_FOOT };
const KPA: Record<Units['pressure'], number> = { kPa: 1, psi: KPA_PER_PSI };
const volumeSign = ({ volume }: Units): string => (volume === 'L' ? 'L' : 'gal');

/** Use by the way: gallons with miles run the other way, all else is so much on a hundred. */
function fuelUse(units: Units): Conversion {
  const { distance, volume } = units;
  if (volume !== 'L' && distance === 'mi') return milesPerGallon(LITRES[volume]);
  return of(LITRES[volume] / KM[distance], `${volumeSign(units)}/100 ${distance}`);
}

function density(units: Units): Conversion {
  const { mass, volume } = units;
  return mass === 'kg' && volume === 'L'
    ? same('kg/m³')
    : of((1000 * KG[mass]) / LITRES[volume], `${mass}/${volumeSign(units)}`);
}

/** A figure by the volume: so much "a day". */
const byVolume =
  (more: string) =>
  (units: Units): Conversion =>
    of(LITRES[units.volume], volumeSign(units) + more);
const everywhere = (conversion: Conversion) => (): Conversion => conversion;

const CONVERSIONS: Record<QuantityKind, (units: Units) => Conversion> = {
  volume: byVolume(''),
  distance: ({ distance }) => of(KM[distance], distance),
  speed: ({ distance }) => of(KM[distance], distance === 'km' ? 'km/h' : 'mph'),
  fuelUse,
  waterUse: byVolume(t(' a day')),
  litresPer1000Km: (units) =>
    of(LITRES[units.volume] / KM[units.distance], t`${volumeSign(units)} on 1,000 ${units.distance}`),
  hourUse: byVolume('/h'),
  share: everywhere(times(100, '%')),
  percent: everywhere(same('%')),
  days: everywhere(same(t('days'))),
  hours: everywhere(same(t('hours'))),
  factor: everywhere(same('×')),
  celsius: ({ temperature }) => (temperature === '°C' ? same('°C') : FAHRENHEIT),
  // A difference: no 32 to add.
  warming: ({ temperature }) => (temperature === '°C' ? same('°C') : times(1.8, '°F')),
  mass: ({ mass }) => of(KG[mass], mass),
  percentPer100Kg: ({ mass }) => times(KG[mass], t`% for 100 ${mass}`),
  litreMass: (units) => of(KG[units.mass] / LITRES[units.volume], `${units.mass}/${volumeSign(units)}`),
  density,
  energy: (units) => times(LITRES[units.volume], `MJ/${volumeSign(units)}`),
  length: ({ length }) => of(METRES[length], length),
  area: ({ length }) => of(METRES[length] ** 2, `${length}²`),
  degrees: everywhere(same('°')),
  pressure: ({ pressure }) => of(KPA[pressure], pressure),
  // One bar is 100 kPa exactly.
  tyrePressure: ({ pressure }) => (pressure === 'kPa' ? same('bar') : of(KPA_PER_PSI / 100, 'psi')),
  flow: byVolume('/min'),
  minutes: everywhere(same('min')),
  bore: everywhere(same('mm')),
  pores: everywhere(same('µm')),
  cloudiness: everywhere(same('NTU')),
  log: everywhere(same('log')),
  dose: everywhere(same('mJ/cm²')),
  strength: everywhere(same('mg/L')),
  price: ({ volume }) => times(LITRES[volume], volume === 'L' ? t('a litre') : t('a gal')),
  count: everywhere(same('')),
};

const conversion = (kind: QuantityKind, units: UnitSystem): Conversion => CONVERSIONS[kind](unitsOf(units));

/** The unit that figures of a kind have for a reader. */
export const unitOf = (kind: QuantityKind, units: UnitSystem): string => conversion(kind, units).unit;

/** A metric figure in the reader's unit, unrounded. */
export const valueIn = (kind: QuantityKind, metric: number, units: UnitSystem): number =>
  conversion(kind, units).toUser(metric);

/** A figure of the reader's in metric, unrounded. */
export const metricOf = (kind: QuantityKind, value: number, units: UnitSystem): number =>
  conversion(kind, units).toMetric(value);

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
