import type { Commodity } from '../../server/contract/common.ts';
import type { PlanEdge } from '../../server/contract/plan.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import { formatAtKm, formatLitres, type UnitSystem } from '../units.ts';
import { edgeName, FUEL_WORDS } from '../words.ts';

/** "Dune station (km 785)". */
export const placeWords = (edge: PlanEdge, units: UnitSystem): string =>
  `${edgeName(edge)} (${formatAtKm(edge.atKm, units)})`;

/** What is poured, in a word. */
export const contentWord = (commodity: Commodity, fuel: FuelKind): string =>
  commodity === 'fuel' ? FUEL_WORDS[fuel] : 'water';

export const countCans = (cans: number): string => `${cans} ${cans === 1 ? 'can' : 'cans'}`;

/** "3 l above the reserve", "12 l too little". */
export const marginWords = (marginL: number, units: UnitSystem): string =>
  marginL < 0
    ? `${formatLitres(-marginL, units)} too little for the reserve`
    : `${formatLitres(marginL, units)} above the reserve`;

/** Places in one breath: "km 262, 418, 486". */
export function atPlaces(places: readonly number[], units: UnitSystem): string {
  const [first, ...rest] = places;
  if (first === undefined) return '';
  const more = rest.map((atKm) => formatAtKm(atKm, units).replace(/^\S+\s/, ''));
  return [formatAtKm(first, units), ...more].join(', ');
}
