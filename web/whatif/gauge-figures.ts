import { formatFigure, isInLitres, type UnitSystem, volumeIn } from '../units/units.ts';

/** Less than this is noise of the reckoning and no reason for one more, in the reader's unit. */
const NOISE = 1e-6;
const stepsIn = (units: UnitSystem): number => (isInLitres(units) ? 1 : 10);

/** The least to have aboard, rounded up: never shown as less than it is. */
export function figureAtLeast(litres: number, units: UnitSystem): string {
  const steps = stepsIn(units);
  return formatFigure(Math.ceil(volumeIn(litres, units) * steps - NOISE) / steps, 1);
}

/** What is aboard beside what is needed: rounded down, but where it covers the need never below it. */
export function figureBeside(litres: number, neededL: number, units: UnitSystem): string {
  const covers = litres >= neededL - NOISE;
  const steps = stepsIn(units);
  const isBelow =
    Math.floor(volumeIn(litres, units) * steps + NOISE) < volumeIn(neededL, units) * steps - NOISE;
  return covers && isBelow ? figureAtLeast(neededL, units) : figureAboard(litres, units);
}

/** What is aboard, rounded down: never shown as more than it is. */
export function figureAboard(litres: number, units: UnitSystem): string {
  const steps = stepsIn(units);
  return formatFigure(Math.floor(volumeIn(litres, units) * steps + NOISE) / steps, 1);
}
