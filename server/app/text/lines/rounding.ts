import {
  atLeast,
  distanceIn,
  distanceUnit,
  isInLitres,
  needed,
  placeWord,
  volumeIn,
} from '../../../words/parts/reader-figures.ts';
import { readerUnits, volumeSign } from '../../../words/parts/reader-units.ts';

export { atLeast, needed };

/** What one reads on the way is in the reader's units, rounded to the side that one can rely on. */

/** The figure of a distance or a place, as a name has it. */
export const kmText = (km: number): string => String(Math.round(distanceIn(km)));
/** Of a place that must not be passed: never beyond it. */
export const kmBefore = (km: number): string => String(Math.floor(distanceIn(km)));

/** "km 212", "mile 132"; one that must not be passed. */
export const placeText = (km: number): string => atPlace(kmText(km));
export const placeBefore = (km: number): string => atPlace(kmBefore(km));
/** Figures of places behind their word: "km 12, 30". */
export const atPlace = (figures: string): string => `${placeWord()} ${figures}`;

/** "140 km", "87 mi". */
export const lengthText = (km: number): string => withDistance(kmText(km));

const litreSign = (): string => (isInLitres() ? LITRE : volumeSign(readerUnits()));
const LITRE = 'l';
/** "12 l", "3.2 gal". */
export const neededText = (litres: number): string => withVolume(needed(litres));
export const atLeastText = (litres: number): string => withVolume(atLeast(litres));

/** A figure in the reader's unit, with that unit. */
export const withDistance = (figure: string): string => `${figure} ${distanceUnit()}`;
export const withVolume = (figure: string): string => `${figure} ${litreSign()}`;

/** The reader's unit of a column whose figures are told as kilometres or litres; any other stays. */
export function columnUnit(unit: string): string {
  if (unit === 'km') return distanceUnit();
  return unit === LITRE && !isInLitres() ? readerUnits().volume : unit;
}

/** Kilometres, or litres, in the reader's unit, unrounded. */
export const distanceFigure = distanceIn;
export const volumeFigure = volumeIn;
