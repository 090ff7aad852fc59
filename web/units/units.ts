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
/** Avoirdupois pound, 1959 agreement: exactly 0.45359237 kg. */
export const KG_PER_POUND = 0.45359237;
/** International foot, 1959 agreement: exactly 0.3048 m. */
export const M_PER_FOOT = 0.3048;
/** Pound-force on a square inch: 6.894757 kPa (NIST SP 811, B.8). */
export const KPA_PER_PSI = 6.894757;

const NO_BREAK = '\u00a0';
/** U+2212: as wide as a figure, unlike the hyphen. */
const MINUS = '\u2212';

export const distanceUnit = (units: UnitSystem): 'km' | 'mi' => (units === 'metric' ? 'km' : 'mi');
export const volumeUnit = (units: UnitSystem): 'l' | 'gal' => (units === 'metric' ? 'l' : 'gal');
/** For files, which are read where nobody knows the reader's choice. */
export const volumeUnitInFull = (units: UnitSystem): string =>
  units === 'metric' ? 'l' : units === 'us' ? 'US gal' : 'imp gal';

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

const figureDays = (days: number): string => figureAboveNone(days);

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

/** A volume a minute with its unit: "7.5 l/min", "2 gal/min". */
export const formatFlow = (litresPerMinute: number, units: UnitSystem): string =>
  `${figureAboveNone(volumeIn(litresPerMinute, units))}${NO_BREAK}${volumeUnit(units)}/min`;

/** A pressure with its unit: "345 kPa", "50 psi". */
export const formatPressure = (kPa: number, units: UnitSystem): string =>
  units === 'metric'
    ? `${formatFigure(kPa, 0)}${NO_BREAK}kPa`
    : `${formatFigure(kPa / KPA_PER_PSI, 0)}${NO_BREAK}psi`;

/** A temperature with its unit: "32 °C", "90 °F". */
export const formatTemperature = (celsius: number, units: UnitSystem): string =>
  units === 'us'
    ? `${formatFigure(celsius * 1.8 + 32, 0)}${NO_BREAK}°F`
    : `${formatFigure(celsius, 0)}${NO_BREAK}°C`;

/** A mass with its unit: "2,480 kg", "5,467 lb". */
export const formatMass = (kg: number, units: UnitSystem): string =>
  units === 'metric'
    ? `${formatFigure(kg, 0)}${NO_BREAK}kg`
    : `${formatFigure(kg / KG_PER_POUND, 0)}${NO_BREAK}lb`;

export const massUnit = (units: UnitSystem): 'kg' | 'lb' => (units === 'metric' ? 'kg' : 'lb');

const massIn = (kg: number, units: UnitSystem): number => (units === 'metric' ? kg : kg / KG_PER_POUND);

/** What something adds to a mass, without unit: "+25", "−4". */
export function figureSignedMass(kg: number, units: UnitSystem): string {
  const figure = formatFigure(massIn(kg, units), 0);
  return figure === '0' || figure.startsWith(MINUS) ? figure : `+${figure}`;
}

/** What one unit of volume adds to a mass, without unit: kilograms a litre, or pounds a gallon. */
export const perLitreFigure = (kgPerLitre: number, units: UnitSystem): string =>
  (massIn(kgPerLitre, units) / volumeIn(1, units)).toFixed(2).replace('-', MINUS);

/** A measure of the vehicle with its unit: "2.85 m", "9.4 ft". */
export const formatLength = (metres: number, units: UnitSystem): string =>
  units === 'metric'
    ? `${formatFigure(metres, 2)}${NO_BREAK}m`
    : `${formatFigure(metres / M_PER_FOOT, 1)}${NO_BREAK}ft`;

/** A height with its unit: "1,240 m", "4,068 ft". */
export const formatHeight = (metres: number, units: UnitSystem): string =>
  units === 'metric'
    ? `${formatFigure(metres, 0)}${NO_BREAK}m`
    : `${formatFigure(metres / M_PER_FOOT, 0)}${NO_BREAK}ft`;
