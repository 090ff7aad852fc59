/**
 * Quantities as people read them. Inside everything is metric; conversion happens here and in the forms only.
 * Figures are rounded for display, never for reckoning. Number and unit are joined by a no-break space.
 */
export type UnitSystem = 'metric' | 'us' | 'imperial';

/** International mile, 1959 agreement: exactly 1.609344 km. */
export const KM_PER_MILE = 1.609344;
/** US liquid gallon, 231 cubic inches: exactly 3.785411784 l (NIST SP 811, B.8). */
export const LITRES_PER_US_GALLON = 3.785411784;
/** Imperial gallon: exactly 4.54609 l (UK Units of Measurement Regulations 1995). */
export const LITRES_PER_IMPERIAL_GALLON = 4.54609;

const NO_BREAK = '\u00a0';
/** U+2212: as wide as a figure, unlike the hyphen. */
const MINUS = '\u2212';

export const distanceUnit = (units: UnitSystem): 'km' | 'mi' => (units === 'metric' ? 'km' : 'mi');
export const volumeUnit = (units: UnitSystem): 'l' | 'gal' => (units === 'metric' ? 'l' : 'gal');

/** Kilometres in the user's unit of distance, unrounded. */
export const distanceIn = (km: number, units: UnitSystem): number =>
  units === 'metric' ? km : km / KM_PER_MILE;

/** Litres in the user's unit of volume, unrounded. */
export function volumeIn(litres: number, units: UnitSystem): number {
  if (units === 'us') return litres / LITRES_PER_US_GALLON;
  if (units === 'imperial') return litres / LITRES_PER_IMPERIAL_GALLON;
  return litres;
}

const formats = new Map<number, Intl.NumberFormat>();

/** A figure with the given count of decimals at most, grouped by thousands, with a true minus sign. */
export function formatFigure(value: number, decimals: number): string {
  let format = formats.get(decimals);
  if (format === undefined) {
    format = new Intl.NumberFormat('en-GB', { maximumFractionDigits: decimals });
    formats.set(decimals, format);
  }
  const text = format.format(value);
  if (text === '-0') return '0';
  return text.replace('-', MINUS);
}

/** One decimal below ten, where it matters; none above. */
const decimalsFor = (value: number): number => (Math.abs(value) < 9.95 ? 1 : 0);

/** A small distance or time is never shown as none. */
function figureAboveNone(value: number): string {
  if (value > 0 && value < 0.05) return `<${NO_BREAK}0.1`;
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

export const figureDays = (days: number): string => figureAboveNone(days);

/** A distance with its unit: "438 km", "272 mi". */
export const formatKm = (km: number, units: UnitSystem): string =>
  `${figureKm(km, units)}${NO_BREAK}${distanceUnit(units)}`;

/** A place along the route: "km 212", "mile 132". */
export const formatAtKm = (km: number, units: UnitSystem): string =>
  `${units === 'metric' ? 'km' : 'mile'}${NO_BREAK}${figureAtKm(km, units)}`;

/** A volume with its unit: "18 l", "4.8 gal". */
export const formatLitres = (litres: number, units: UnitSystem): string =>
  `${figureLitres(litres, units)}${NO_BREAK}${volumeUnit(units)}`;

/** A time in days with its unit: "1 day", "2.5 days". */
export function formatDays(days: number): string {
  const figure = figureDays(days);
  return `${figure}${NO_BREAK}${figure === '1' ? 'day' : 'days'}`;
}
