import type { FuelRange, FuelUse, SurfaceRow } from '../../contract/fuel-use.ts';
import { figure, km, litres } from './lines/figures.ts';
import { plain } from './lines/plain.ts';
import { type Column, tableText } from './lines/table-text.ts';

const left = (head: string): Column => ({ head, unit: '', lean: 'left' });
const right = (head: string, unit: string): Column => ({ head, unit, lean: 'right' });

const SURFACE_COLUMNS: readonly Column[] = [
  left('surface'),
  right('way', 'km'),
  right('allowance', '%'),
  right('factor', '× own rate'),
  left('from'),
  right('physics', '× own rate'),
];

/** Fuel use as text: how far a full load goes, and, where more than one rate was told, what the litres are made of. */
export function fuelUseText(use: FuelUse): string[] {
  const lines = ['Fuel use', `a full load goes, at your rate: ${rangesText(use.range)}`];
  if (use.model === 'full') {
    lines.push(`on this route: ${rangesText(use.onRoute)}`);
    lines.push(
      `the whole route takes ${litres(use.routeL.low)}, ${litres(use.routeL.typical)} or ${litres(use.routeL.high)}, the last of it:`,
    );
    for (const term of use.terms) lines.push(`- ${litres(term.value)}: ${plain(term.label)}`);
    const driven = use.surfaces.filter((row) => row.km > 0);
    lines.push(...tableText(SURFACE_COLUMNS, driven.map(surfaceCells)));
    for (const row of driven.filter((one) => one.estimate !== null)) {
      lines.push(`physics on ${row.surface}: ${plain(row.trust)}`);
    }
  }
  if (use.load !== null && use.load.factor !== 1) {
    const { massKg, observedKg, percentPer100Kg, factor } = use.load;
    lines.push(
      `load: ${figure(massKg)} kg against ${figure(observedKg)} kg observed, ${figure(percentPer100Kg)} % for 100 kg: × ${factor.toFixed(3)}`,
    );
  }
  if (use.climb !== null) {
    const taken = use.climb.litres === null ? 'not reckoned' : litres(use.climb.litres);
    lines.push(`climbs: ${use.climb.upM.toFixed(0)} m up, ${use.climb.downM.toFixed(0)} m down: ${taken}`);
  }
  if (use.urea !== null) {
    const { needL, tankL, rangeKm, longestKm, points } = use.urea;
    lines.push(
      `urea solution: ${litres(needL)} over the route, tank ${litres(tankL)}, which goes ${km(rangeKm)}; longest way without ${km(longestKm)}; listed at ${points.length} places`,
    );
  }
  return lines;
}

const rangesText = ({ low, typical, high }: Record<'low' | 'typical' | 'high', FuelRange>): string =>
  `${[low, typical, high].map((range) => km(range.beforeKm)).join(', ')} to the last drop; ${[
    low,
    typical,
    high,
  ]
    .map((range) => km(range.afterKm))
    .join(', ')} to the reserve (low, typical, high use)`;

const surfaceCells = (row: SurfaceRow): string[] => [
  row.surface,
  figure(row.km),
  figure(row.allowancePercent),
  row.factor.toFixed(2),
  row.from === 'rig' ? 'your rig' : 'ours',
  row.estimate === null ? '-' : `${row.estimate.low.toFixed(2)} to ${row.estimate.high.toFixed(2)}`,
];
