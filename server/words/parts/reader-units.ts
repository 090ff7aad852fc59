import type { Units } from '../../contract/answers/units.ts';
import type { Unit } from '../../contract/common.ts';

/** What is chosen all at once. */
export type UnitPreset = 'metric' | 'us' | 'imperial';

export const UNIT_PRESETS = {
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
} as const satisfies Readonly<Record<UnitPreset, Units>>;

/** What can be chosen of each kind. */
export const UNIT_CHOICES = {
  distance: ['km', 'mi'],
  volume: ['L', 'US gal', 'imp gal'],
  mass: ['kg', 'lb'],
  temperature: ['°C', '°F'],
  length: ['m', 'ft'],
  pressure: ['kPa', 'psi'],
} as const satisfies { readonly [Kind in keyof Units]: readonly Units[Kind][] };

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
export const KPA_PER_PSI = 6.894757;

/** Each unit's size in metric ones. */
export const KM: Readonly<Record<Units['distance'], number>> = { km: 1, mi: KM_PER_MILE };
export const LITRES: Readonly<Record<Units['volume'], number>> = {
  L: 1,
  'US gal': LITRES_PER_US_GALLON,
  'imp gal': LITRES_PER_IMPERIAL_GALLON,
};
export const KG: Readonly<Record<Units['mass'], number>> = { kg: 1, lb: KG_PER_POUND };
export const METRES: Readonly<Record<Units['length'], number>> = { m: 1, ft: M_PER_FOOT };
export const KPA: Readonly<Record<Units['pressure'], number>> = { kPa: 1, psi: KPA_PER_PSI };

/** Each kind's own sign beside a figure, where a gallon is a gallon. */
const SIGNS = { litre: 'L', gallon: 'gal', kmPerHour: 'km/h', mph: 'mph', mpg: 'mi/gal' } as const;
export const volumeSign = ({ volume }: Units): string => (volume === 'L' ? SIGNS.litre : SIGNS.gallon);

/** A unit of a reader's, and the way there and back. */
export interface Conversion {
  readonly unit: string;
  readonly toUser: (metric: number) => number;
  readonly toMetric: (user: number) => number;
}

export const times = (factor: number, unit: string): Conversion => ({
  unit,
  toUser: (metric) => metric * factor,
  toMetric: (user) => user / factor,
});

/** A unit that is so many metric ones. */
export const of = (size: number, unit: string): Conversion => ({
  unit,
  toUser: (metric) => metric / size,
  toMetric: (user) => user * size,
});
export const same = (unit: string): Conversion => of(1, unit);

/** Miles to the gallon run the other way: the higher, the less is used. Its own inverse. */
function milesPerGallon(litresPerGallon: number): Conversion {
  const flip = (value: number) => (100 * litresPerGallon) / (KM_PER_MILE * value);
  return { unit: SIGNS.mpg, toUser: flip, toMetric: flip };
}

/** Use by the way: gallons with miles run the other way, all else is so much on a hundred. */
export function fuelUse(units: Units): Conversion {
  const { distance, volume } = units;
  if (volume !== 'L' && distance === 'mi') return milesPerGallon(LITRES[volume]);
  return of(LITRES[volume] / KM[distance], `${volumeSign(units)}/100 ${distance}`);
}

export const celsius = ({ temperature }: Units): Conversion =>
  temperature === '°C'
    ? same(temperature)
    : {
        unit: temperature,
        toUser: (degrees) => degrees * 1.8 + 32,
        toMetric: (fahrenheit) => (fahrenheit - 32) / 1.8,
      };

/** A difference: no 32 to add. */
export const warming = ({ temperature }: Units): Conversion =>
  temperature === '°C' ? same(temperature) : times(1.8, temperature);

export const distance = (units: Units): Conversion => of(KM[units.distance], units.distance);
export const volume = (units: Units): Conversion => of(LITRES[units.volume], volumeSign(units));
export const mass = (units: Units): Conversion => of(KG[units.mass], units.mass);
export const length = (units: Units): Conversion => of(METRES[units.length], units.length);
export const speed = (units: Units): Conversion =>
  of(KM[units.distance], units.distance === 'km' ? SIGNS.kmPerHour : SIGNS.mph);

const OF_UNITS: Readonly<Partial<Record<Unit, (units: Units) => Conversion>>> = {
  km: distance,
  m: length,
  l: volume,
  kg: mass,
  'l/100 km': fuelUse,
  'km/h': speed,
  '°C': celsius,
};

/** How a figure of a sentence is turned for a reader; null where all readers have its unit alike. */
export const conversionOf = (unit: Unit, units: Units, isDifference = false): Conversion | null =>
  isDifference && unit === '°C' ? warming(units) : (OF_UNITS[unit]?.(units) ?? null);

/** Each unit by the words that name it in an address and on the command line. */
const KINDS = Object.keys(UNIT_CHOICES) as (keyof Units)[];

/** Units as one line: "mi,US gal,lb,°F,ft,psi". */
export const unitsText = (units: Units): string => KINDS.map((kind) => units[kind]).join(',');

/** All names, for a refusal. */
export const UNIT_NAMES: string = [
  ...Object.keys(UNIT_PRESETS),
  ...KINDS.flatMap((kind) => UNIT_CHOICES[kind]),
].join(', ');

/** Spelled without signs that keyboards lack, in small letters. */
const spelt = (word: string): string => word.toLowerCase().replaceAll(/[\s°-]/g, '');

/**
 * Units from their names: a system, or each unit on its own, the last of a kind holding ("us,L": US units with litres).
 * Null where a name is none.
 */
export function unitsFromText(text: string): Units | null {
  let units: Units | null = UNIT_PRESETS.metric;
  for (const word of text.split(',').map(spelt)) units = units === null ? null : withWord(units, word);
  return units;
}

function withWord(units: Units, word: string): Units | null {
  const preset = (Object.keys(UNIT_PRESETS) as UnitPreset[]).find((each) => each === word);
  if (preset !== undefined) return UNIT_PRESETS[preset];
  for (const kind of KINDS) {
    const unit = UNIT_CHOICES[kind].find((each) => spelt(each) === word);
    if (unit !== undefined) return { ...units, [kind]: unit };
  }
  return null;
}

let heard: () => Units = () => UNIT_PRESETS.metric;

/** The units that whoever reads what is made just now has chosen; metric where nobody did. */
export const readerUnits = (): Units => heard();

/** Says once, where a program starts, how it knows which units are asked for. */
export function hearUnits(from: () => Units): void {
  heard = from;
}
