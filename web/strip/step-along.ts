import type { StripAnalysis } from '../levels/plan-report.ts';
import { metricOf, type UnitSystem } from '../units/conversions.ts';
import { roundStep } from './ruler.ts';

/** Arrow keys take about this many steps along what is shown. */
const STEPS = 200;

/**
 * Where a key leads along the route, km: arrows by a round step, page keys to the next fill, Home and End to the ends.
 * Null for other keys. Without a place yet, it starts from the beginning.
 */
export function stepAlong(
  analysis: StripAnalysis,
  units: UnitSystem,
  { atKm, visibleKm }: { atKm: number | null; visibleKm: number },
  key: string,
): number | null {
  const { lengthKm } = analysis.route;
  const unitKm = metricOf('distance', 1, units);
  const stepKm = unitKm * Math.max(1, roundStep(visibleKm / unitKm / STEPS));
  const from = atKm ?? 0;
  const fills = [...analysis.fuel.gaps, ...analysis.water.gaps].map((gap) => gap.to.atKm);
  const keep = (km: number) => Math.min(Math.max(km, 0), lengthKm);
  switch (key) {
    case 'ArrowUp':
    case 'ArrowRight':
      return keep((Math.floor(from / stepKm + 1e-9) + 1) * stepKm);
    case 'ArrowDown':
    case 'ArrowLeft':
      return keep((Math.ceil(from / stepKm - 1e-9) - 1) * stepKm);
    case 'PageUp':
      return keep(Math.min(lengthKm, ...fills.filter((km) => km > from)));
    case 'PageDown':
      return keep(Math.max(0, ...fills.filter((km) => km < from)));
    case 'Home':
      return 0;
    case 'End':
      return lengthKm;
    default:
      return null;
  }
}
