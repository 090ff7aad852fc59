import { wholeAbove, wholeBelow } from '../../server/core/quantity/rounding.ts';
import { numberText } from '../../server/words/parts/metric.ts';
import {
  distanceIn,
  distanceUnit,
  isInLitres,
  kmFrom,
  placeWord,
  volumeFrom,
  volumeIn,
  wholeAtLeast,
  wholeNeeded,
} from '../../server/words/parts/reader-figures.ts';
import { length, readerUnits, volumeSign } from '../../server/words/parts/reader-units.ts';

/** Figures as the view from the seat has them: in the units and the language of the file, with their unit. */

const NO_BREAK = '\u00a0';
const withUnit = (figure: string, unit: string): string => `${figure}${NO_BREAK}${unit}`;
const M_PER_KM = 1000;

export const volumeUnit = (): string => volumeSign(readerUnits());
/** What one can rely on: rounded down. */
export const litresAtLeast = (litres: number): string =>
  withUnit(wholeAtLeast(Math.max(0, litres)), volumeUnit());
/** What is missing or needed: rounded up. */
export const litresAtMost = (litres: number): string =>
  withUnit(wholeNeeded(Math.max(0, litres)), volumeUnit());

/** The figure of a reading from which steps go on, in litres: a whole litre, or a tenth of a gallon. */
export const fromWhole = (litres: number): number =>
  isInLitres() ? Math.floor(litres) : volumeFrom(wholeBelow(10 * volumeIn(litres)) / 10);

/** By how much a reading is stepped: litres, or tenths and whole gallons. */
export const volumeSteps = (): { readonly label: string; readonly stepL: number }[] =>
  (isInLitres() ? [1, 10] : [0.5, 5]).map((step) => ({ label: numberText(step), stepL: volumeFrom(step) }));

export const hoursAtMost = (hours: number): string => numberText(Math.max(0, wholeAbove(hours)));
/** Tenths, rounded down: days that something lasts. */
export const tenthsAtLeast = (value: number): string => numberText(Math.max(0, wholeBelow(value * 10) / 10));

/** A way to drive, rounded up; one that is still free, rounded down. */
export const wayToDrive = (metres: number): string =>
  withUnit(numberText(Math.max(0, wholeAbove(distanceIn(metres / M_PER_KM)))), distanceUnit());
export const wayFree = (metres: number): string => withUnit(numberText(wholeBefore(metres)), distanceUnit());

const wholeBefore = (metres: number): number => Math.max(0, wholeBelow(distanceIn(metres / M_PER_KM)));

/** A place that must not be passed is never told as farther than it is: "km 74", and its metres. */
export const placeBefore = (metres: number): string => withUnit(placeWord(), numberText(wholeBefore(metres)));
export const metresBefore = (metres: number): number => kmFrom(wholeBefore(metres)) * M_PER_KM;

/** A place of the road, with a tenth where it has one: its figure, and with its word. */
export const placeFigure = (metres: number): string =>
  numberText(Math.round(distanceIn(metres / M_PER_KM) * 10) / 10);
export const placeOf = (metres: number): string => withUnit(placeWord(), placeFigure(metres));
/** The same in a list, whole. */
export const wholePlaceOf = (metres: number): string =>
  withUnit(placeWord(), numberText(Math.round(distanceIn(metres / M_PER_KM))));

/** Metres of a figure of the reader's. */
export const metresOf = (figure: number): number => kmFrom(figure) * M_PER_KM;
/** The whole figure of a place, from which steps go on. */
export const wholeFigure = (metres: number): number => Math.round(distanceIn(metres / M_PER_KM));

/** A distance off the road: metres or feet, or kilometres or miles where it is that far. */
export function offRoad(metres: number): string {
  if (metres >= M_PER_KM) return withUnit(placeFigure(metres), distanceUnit());
  const { toUser, unit } = length(readerUnits());
  return withUnit(numberText(Math.ceil(toUser(metres) / 10) * 10), unit);
}
