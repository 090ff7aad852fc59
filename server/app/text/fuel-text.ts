import type { FuelRange, FuelUse, SurfaceRow } from '../../contract/fuel-use.ts';
import { PRINTED } from '../../words/printed.ts';
import { figure, km, litres } from './lines/figures.ts';
import { plain } from './lines/plain.ts';
import { type Column, left, right, tableText } from './lines/table-text.ts';

const WORDS = PRINTED.fuel;
const HEADS = WORDS.columns;

const SURFACE_COLUMNS: readonly Column[] = [
  left(HEADS.surface),
  right(HEADS.way),
  right(HEADS.allowance),
  right(HEADS.factor),
  left(HEADS.from),
  right(HEADS.physics),
];

/** Fuel use as text: how far a full load goes, and, where more than one rate was told, what the litres are made of. */
export function fuelUseText(use: FuelUse): string[] {
  const lines = [WORDS.head, WORDS.fullLoad(rangesText(use.range))];
  if (use.model === 'full') {
    lines.push(WORDS.onRoute(rangesText(use.onRoute)));
    const { low, typical, high } = use.routeL;
    lines.push(WORDS.routeTakes(litres(low), litres(typical), litres(high)));
    for (const term of use.terms) lines.push(`- ${litres(term.value)}: ${plain(term.label)}`);
    const driven = use.surfaces.filter((row) => row.km > 0);
    lines.push(...tableText(SURFACE_COLUMNS, driven.map(surfaceCells)));
    for (const row of driven.filter((one) => one.estimate !== null)) {
      lines.push(WORDS.physicsOn(row.surface, plain(row.trust)));
    }
  }
  if (use.load !== null && use.load.factor !== 1) {
    const { massKg, observedKg, percentPer100Kg, factor } = use.load;
    lines.push(
      WORDS.load({
        mass: figure(massKg),
        observed: figure(observedKg),
        percent: figure(percentPer100Kg),
        factor: factor.toFixed(3),
      }),
    );
  }
  if (use.climb !== null) {
    const taken = use.climb.litres === null ? WORDS.notReckoned : litres(use.climb.litres);
    lines.push(WORDS.climbs(use.climb.upM.toFixed(0), use.climb.downM.toFixed(0), taken));
  }
  if (use.urea !== null) {
    const { needL, tankL, rangeKm, longestKm, points } = use.urea;
    lines.push(
      WORDS.urea(litres(needL), {
        tank: litres(tankL),
        range: km(rangeKm),
        longest: km(longestKm),
        places: points.length,
      }),
    );
  }
  return lines;
}

function rangesText({ low, typical, high }: Record<'low' | 'typical' | 'high', FuelRange>): string {
  const ranges = [low, typical, high];
  return WORDS.ranges(
    ranges.map((range) => km(range.beforeKm)),
    ranges.map((range) => km(range.afterKm)),
  );
}

const surfaceCells = (row: SurfaceRow): string[] => [
  row.surface,
  figure(row.km),
  figure(row.allowancePercent),
  row.factor.toFixed(2),
  row.from === 'rig' ? WORDS.yourRig : WORDS.ours,
  row.estimate === null ? '-' : WORDS.between(row.estimate.low.toFixed(2), row.estimate.high.toFixed(2)),
];
