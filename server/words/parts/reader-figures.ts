import type { Units } from '../../contract/answers/units.ts';
import { aboardBeside, wholeAbove, wholeBelow } from '../../core/quantity/rounding.ts';
import { PLACE_WORDS as GERMAN_PLACES } from '../de/units/unit-words.ts';
import { PLACE_WORDS as ENGLISH_PLACES } from '../en/units/unit-words.ts';
import { type Language, language } from './language.ts';
import { metricFigure, numberText } from './metric.ts';
import type { Parts, Unit } from './part.ts';
import { conversionOf, distance, readerUnits, volume } from './reader-units.ts';
import { decimalsOf, digits, isBare, type Setting, setParts } from './setting.ts';

/** Figures as paper and files to take along have them: in the units and the language of whoever reads them. */

const PLACES: Readonly<Record<Language, Readonly<Record<Units['distance'], string>>>> = {
  en: ENGLISH_PLACES,
  de: GERMAN_PLACES,
};

/** "km", "mile", "Meile": before the figure of a place along the route. */
export const placeWord = (): string => PLACES[language()][readerUnits().distance];

/** Kilometres, or litres, in the reader's unit, unrounded; and a figure of theirs in kilometres. */
export const distanceIn = (km: number): number => distance(readerUnits()).toUser(km);
export const kmFrom = (figure: number): number => distance(readerUnits()).toMetric(figure);
export const volumeFrom = (figure: number): number => volume(readerUnits()).toMetric(figure);
export const volumeIn = (litres: number): number => volume(readerUnits()).toUser(litres);

export const distanceUnit = (): string => readerUnits().distance;

/** A gallon is too coarse where a litre is not: its tenths are kept (ours). */
export const isInLitres = (): boolean => readerUnits().volume === 'L';

/** To tenths, or to whole figures where litres are told that way, by a rule of rounding. */
const toTenth = (value: number, round: (value: number) => number): string =>
  numberText(round(value * 10) / 10);

/** There is so much at least: rounded down, gallons to a tenth. */
export const wholeAtLeast = (litres: number): string => {
  const value = volumeIn(litres);
  return isInLitres() ? numberText(wholeBelow(value)) : toTenth(value, wholeBelow);
};

/** So much is needed: rounded up, gallons to a tenth. */
export const wholeNeeded = (litres: number): string => {
  const value = volumeIn(litres);
  return isInLitres() ? numberText(wholeAbove(value)) : toTenth(value, wholeAbove);
};

/** What is aboard, beside what is needed: rounded down, but where it covers the need never below it as that is told. */
export const aboardText = (aboardL: number, neededL: number): string => {
  const [aboard, needs] = [volumeIn(aboardL), volumeIn(neededL)];
  return isInLitres()
    ? numberText(aboardBeside(aboard, needs))
    : numberText(aboardBeside(10 * aboard, 10 * needs) / 10);
};

/** Tenths below ten where they matter, of gallons always. */
const finely = (litres: number, round: (value: number) => number): string => {
  const value = volumeIn(litres);
  return isInLitres() && value >= 9.95 ? numberText(round(value)) : toTenth(value, round);
};
export const atLeast = (litres: number): string => finely(litres, wholeBelow);
export const needed = (litres: number): string => finely(litres, wholeAbove);

const converted = (told: string, value: number, unit?: Unit): string =>
  numberText(Number(value.toFixed(decimalsOf(told, value, unit))));

/** The reader's setting of sentences: as metric ones where a unit is the metric one. */
const SETTING: Setting = {
  figure: (part) => {
    const told = digits(part, part.figure);
    const conversion = conversionOf(part.unit, readerUnits(), part.difference);
    if (conversion === null || conversion.toUser(1) === 1) return metricFigure(part);
    const { unit, toUser } = conversion;
    const number = converted(told, toUser(Number(told)), part.unit);
    return isBare(part) ? number : `${number} ${unit}`;
  },
  place: (part) => {
    const told = digits(part, part.place);
    const isMetric = readerUnits().distance === 'km';
    const number = isMetric ? numberText(told) : converted(told, distanceIn(Number(told)));
    return `${placeWord()} ${number}`;
  },
};

/** Parts as one line in the reader's units and language. */
export const readerText = (parts: Parts): string => setParts(parts, SETTING);
