import type { Parts } from '../../server/contract/common.ts';
import { type Figure, type Unit, withoutTags } from '../../server/words/parts/part.ts';
import { decimalsOf, digits, isBare, type Setting, setParts } from '../../server/words/parts/setting.ts';
import { t } from '../language/t.ts';
import { kindOf, type QuantityKind, unitOf, valueIn } from '../units/conversions.ts';
import { formatFigure, inLocale, NO_BREAK, placeUnit, type UnitSystem } from '../units/units.ts';

function converted(told: string, kind: QuantityKind, { unit, units }: { unit?: Unit; units: UnitSystem }) {
  const value = valueIn(kind, Number(told), units);
  return formatFigure(value, decimalsOf(told, value, unit));
}

const kindOfFigure = ({ unit, difference }: Figure): QuantityKind | null =>
  unit === '°C' && difference === true ? 'warming' : kindOf(unit);

const settingFor = (units: UnitSystem): Setting => ({
  figure: (part) => {
    const kind = kindOfFigure(part);
    const told = digits(part, part.figure);
    const number = kind === null ? inLocale(told) : converted(told, kind, { unit: part.unit, units });
    if (isBare(part)) return number;
    return kind === null ? `${number} ${t(part.unit)}` : `${number}${NO_BREAK}${unitOf(kind, units)}`;
  },
  place: (part) =>
    `${placeUnit(units)}${NO_BREAK}${converted(digits(part, part.place), 'distance', { units })}`,
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
