import { DECIMAL_SIGN, locale } from '../language/language.ts';
import { t } from '../language/t.ts';
import { type QuantityKind, type UnitSystem, unitOf, unitsOf, valueIn } from './conversions.ts';

export type { UnitSystem } from './conversions.ts';

/**
 * Quantities as people read them.
 * Figures are rounded for display, never for reckoning. Number and unit are joined by a no-break space.
 */
export const NO_BREAK = '\u00a0';
/** U+2212: as wide as a figure, unlike the hyphen. */
const MINUS = '\u2212';

export const distanceUnit = (units: UnitSystem): string => unitOf('distance', units);
export const volumeUnit = (units: UnitSystem): string => unitOf('volume', units);
export const massUnit = (units: UnitSystem): string => unitOf('mass', units);
/** For files, which are read where nobody knows the reader's choice. */
export const volumeUnitInFull = (units: UnitSystem): string => unitsOf(units).volume;

/** What a place along the route is counted in: "km 212", "mile 132". */
export const placeUnit = (units: UnitSystem): string =>
  unitsOf(units).distance === 'km' ? t('km') : t('mile');
/** A gallon is too coarse where a litre is not: its tenths are kept (ours). */
export const isInLitres = (units: UnitSystem): boolean => unitsOf(units).volume === 'L';

/** Kilometres in the user's unit of distance, unrounded. */
export const distanceIn = (km: number, units: UnitSystem): number => valueIn('distance', km, units);

/** Litres in the user's unit of volume, unrounded. */
export const volumeIn = (litres: number, units: UnitSystem): number => valueIn('volume', litres, units);

const formats = new Map<number, Intl.NumberFormat>();

/** A figure with the given count of decimals at most, grouped by thousands, with a true minus sign. */
export function formatFigure(value: number, decimals: number): string {
  let format = formats.get(decimals);
  if (format === undefined) {
    format = new Intl.NumberFormat(locale, { maximumFractionDigits: decimals });
    formats.set(decimals, format);
  }
  const text = format.format(value);
  if (text === '-0') return '0';
  return text.replace('-', MINUS);
}

/** A figure with a point before its decimals as the reader writes it. */
export const inLocale = (digits: string): string => digits.replace('.', DECIMAL_SIGN).replace('-', MINUS);

/** One decimal below ten, where it matters; none above. */
const decimalsFor = (value: number): number => (Math.abs(value) < 9.95 ? 1 : 0);

/** A small distance or time is never shown as none. */
function figureAboveNone(value: number): string {
  if (value > 0 && value < 0.05) return `<${NO_BREAK}${inLocale('0.1')}`;
  return formatFigure(value, decimalsFor(value));
}

/** A distance's figure without its unit, for a column whose head names the unit. */
export const figureKm = (km: number, units: UnitSystem): string => figureAboveNone(distanceIn(km, units));

/** A place along the route is shown without decimals: "212". */
export const figureAtKm = (km: number, units: UnitSystem): string => formatFigure(distanceIn(km, units), 0);

export function figureLitres(litres: number, units: UnitSystem): string {
  const value = volumeIn(litres, units);
  return formatFigure(value, decimalsFor(value));
}

const figureDays = (days: number): string => figureAboveNone(days);

/** A distance with its unit: "438 km", "272 mi". */
export const formatKm = (km: number, units: UnitSystem): string =>
  `${figureKm(km, units)}${NO_BREAK}${distanceUnit(units)}`;

/** A place along the route: "km 212", "mile 132". */
export const formatAtKm = (km: number, units: UnitSystem): string =>
  `${placeUnit(units)}${NO_BREAK}${figureAtKm(km, units)}`;

/** A place that must not be passed: "km 566" of 566.9, never beyond it. */
export const formatBeforeKm = (km: number, units: UnitSystem): string =>
  `${placeUnit(units)}${NO_BREAK}${formatFigure(Math.floor(distanceIn(km, units)), 0)}`;

/** A volume with its unit: "18 L", "4.8 gal". */
export const formatLitres = (litres: number, units: UnitSystem): string =>
  `${figureLitres(litres, units)}${NO_BREAK}${volumeUnit(units)}`;

/** A time in days with its unit: "1 day", "2.5 days". */
export function formatDays(days: number): string {
  const figure = figureDays(days);
  return `${figure}${NO_BREAK}${figure === '1' ? t('day') : t('days')}`;
}

/** A figure with the unit that its kind has for the reader. */
export const formatAs = (kind: QuantityKind, metric: number, units: UnitSystem, decimals = 0): string =>
  `${formatFigure(valueIn(kind, metric, units), decimals)}${NO_BREAK}${unitOf(kind, units)}`;

/** A volume a minute with its unit: "7.5 L/min", "2 gal/min". */
export const formatFlow = (litresPerMinute: number, units: UnitSystem): string =>
  `${figureAboveNone(valueIn('flow', litresPerMinute, units))}${NO_BREAK}${unitOf('flow', units)}`;

/** A pressure with its unit: "345 kPa", "50 psi". */
export const formatPressure = (kPa: number, units: UnitSystem): string => formatAs('pressure', kPa, units);

/** A temperature with its unit: "32 °C", "90 °F". */
export const formatTemperature = (celsius: number, units: UnitSystem): string =>
  formatAs('celsius', celsius, units);

/** A mass with its unit: "2,480 kg", "5,467 lb". */
export const formatMass = (kg: number, units: UnitSystem): string => formatAs('mass', kg, units);

/** What something adds to a mass, without unit: "+25", "−4". */
export function figureSignedMass(kg: number, units: UnitSystem): string {
  const figure = formatFigure(valueIn('mass', kg, units), 0);
  return figure === '0' || figure.startsWith(MINUS) ? figure : `+${figure}`;
}

/** What one unit of volume adds to a mass, without unit: kilograms a litre, or pounds a gallon. */
export const perLitreFigure = (kgPerLitre: number, units: UnitSystem): string =>
  inLocale(valueIn('litreMass', kgPerLitre, units).toFixed(2));

/** A measure of the vehicle with its unit: "2.85 m", "9.4 ft". */
export const formatLength = (metres: number, units: UnitSystem): string =>
  formatAs('length', metres, units, unitsOf(units).length === 'm' ? 2 : 1);

/** A height with its unit: "1,240 m", "4,068 ft". */
export const formatHeight = (metres: number, units: UnitSystem): string => formatAs('length', metres, units);
