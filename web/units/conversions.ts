import type { Units } from '../../server/contract/answers/units.ts';
import {
  type Conversion,
  celsius,
  distance,
  fuelUse,
  KG,
  KM,
  KPA,
  KPA_PER_PSI,
  LITRES,
  length,
  METRES,
  mass,
  of,
  same,
  speed,
  times,
  UNIT_PRESETS,
  type UnitPreset,
  volumeSign,
  warming,
} from '../../server/words/parts/reader-units.ts';
import { t } from '../language/t.ts';

export type { Units } from '../../server/contract/answers/units.ts';
export { UNIT_PRESETS, type UnitPreset } from '../../server/words/parts/reader-units.ts';

/** A reader's units: one of the three systems by its name, or each on its own. */
export type UnitSystem = UnitPreset | Units;

/** Each unit of a reader's, whichever way they chose. */
export const unitsOf = (units: UnitSystem): Units =>
  typeof units === 'string' ? UNIT_PRESETS[units] : units;

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
  distance,
  speed,
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
  celsius,
  warming,
  mass,
  percentPer100Kg: ({ mass }) => times(KG[mass], t`% for 100 ${mass}`),
  litreMass: (units) => of(KG[units.mass] / LITRES[units.volume], `${units.mass}/${volumeSign(units)}`),
  density,
  energy: (units) => times(LITRES[units.volume], `MJ/${volumeSign(units)}`),
  length,
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
