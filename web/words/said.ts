import type { Parts } from '../../server/contract/common.ts';
import { type Figure, withoutTags } from '../../server/words/parts/part.ts';
import { digits, isBare, type Setting, setParts } from '../../server/words/parts/setting.ts';
import { t } from '../language/t.ts';
import { kindOf, type QuantityKind, unitOf, valueIn } from '../units/conversions.ts';
import { formatFigure, inLocale, NO_BREAK, placeUnit, type UnitSystem } from '../units/units.ts';

/** At least so many decimals: a gallon is too coarse without. */
const LEAST_DECIMALS: Partial<Record<QuantityKind, number>> = { volume: 1, fuelUse: 1 };
/** More decimals than this are noise of binary fractions. */
const MOST_DECIMALS = 3;

/** As exact as it was told, and never nothing where there is something. */
function converted(told: string, kind: QuantityKind, units: UnitSystem): string {
  const value = valueIn(kind, Number(told), units);
  const own = told.split('.')[1]?.length ?? 0;
  const size = Math.abs(value);
  const least = Math.max(LEAST_DECIMALS[kind] ?? 0, size < 1 ? 2 : size < 10 ? 1 : 0);
  return formatFigure(value, Math.min(MOST_DECIMALS, Math.max(own, least)));
}

const kindOfFigure = ({ unit, difference }: Figure): QuantityKind | null =>
  unit === '°C' && difference === true ? 'warming' : kindOf(unit);

const settingFor = (units: UnitSystem): Setting => ({
  figure: (part) => {
    const kind = kindOfFigure(part);
    const told = digits(part, part.figure);
    const number = kind === null ? inLocale(told) : converted(told, kind, units);
    if (isBare(part)) return number;
    return kind === null ? `${number} ${t(part.unit)}` : `${number}${NO_BREAK}${unitOf(kind, units)}`;
  },
  place: (part) => `${placeUnit(units)}${NO_BREAK}${converted(digits(part, part.place), 'distance', units)}`,
});

/** Parts as one text in the reader's units, without tags. */
export const setIn = (units: UnitSystem, parts: Parts): string =>
  setParts(withoutTags(parts), settingFor(units));

/** A text of the server's in the reader's units, by the parts beside it; it has none where it has no figures. */
export const inUnits = (units: UnitSystem, text: string, parts?: Parts): string =>
  parts === undefined ? text : setIn(units, parts);

/** The same of a caution, a reason, or whatever has its text and parts by these names. */
export const saidIn = (units: UnitSystem, { text, parts }: { text: string; parts?: Parts }): string =>
  inUnits(units, text, parts);
