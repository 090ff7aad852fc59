import type { Span } from '../../server/contract/common.ts';
import { metricOf } from '../units/conversions.ts';
import type { UnitSystem } from '../units/units.ts';
import { distanceIn } from '../units/units.ts';

/** Round figures along the route in the reader's unit, with the km where each stands. */
export interface RulerMark {
  atKm: number;
  figure: number;
}

const ROUND = [1, 2, 5];

/** The smallest 1, 2 or 5 times a power of ten that is at least `least`. */
export function roundStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  const factor = ROUND.find((round) => round * power >= least * (1 - 1e-9)) ?? 10;
  return factor * power;
}

/** Marks for a stretch drawn `heightPx` high, at least `spacingPx` apart and at whole km or miles. */
export function rulerMarks(
  { fromKm, toKm }: Span,
  heightPx: number,
  spacingPx: number,
  units: UnitSystem,
): RulerMark[] {
  const length = distanceIn(toKm - fromKm, units);
  if (!(length > 0) || !(heightPx > 0)) return [];
  const step = Math.max(1, roundStep((length * spacingPx) / heightPx));
  const kmPerUnit = metricOf('distance', 1, units);
  const first = Math.ceil(distanceIn(fromKm, units) / step - 1e-9);
  const last = Math.floor(distanceIn(toKm, units) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
    const figure = (first + i) * step;
    return { atKm: figure * kmPerUnit, figure };
  });
}
