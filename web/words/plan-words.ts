import type { Edge } from '../../server/contract/analysis.ts';
import type { Commodity } from '../../server/contract/common.ts';
import type { Plan } from '../../server/contract/plan.ts';
import type { FuelKind } from '../../server/contract/rig.ts';
import { plural, t } from '../language/t.ts';
import { formatAtKm, formatLitres, type UnitSystem } from '../units/units.ts';
import { edgeName, FUEL_WORDS } from './words.ts';

/** "Dune station (km 785)". */
export const placeWords = (edge: Edge, units: UnitSystem): string =>
  `${edgeName(edge)} (${formatAtKm(edge.atKm, units)})`;

/** Whether some leg keeps the reserve only if what nobody knows turns out well. */
export const hasUnknown = ({ legs }: Plan): boolean =>
  [...legs.fuel, ...legs.water].some(({ verdict }) => verdict === 'unknown');

/** What is poured, in a word. */
export const contentWord = (commodity: Commodity, fuel: FuelKind): string =>
  commodity === 'fuel' ? FUEL_WORDS[fuel] : t('water');

const CAN_WORDS: Record<Commodity, readonly [one: string, other: string]> = {
  fuel: [t('fuel can'), t('fuel cans')],
  water: [t('water can'), t('water cans')],
};

/** "fuel cans", of so many. */
export const cansFor = (commodity: Commodity, cans: number): string => plural(cans, ...CAN_WORDS[commodity]);

export const countCans = (cans: number): string => `${cans} ${plural(cans, t('can'), t('cans'))}`;

/** "3 l above the reserve", "12 l too little". */
export const marginWords = (marginL: number, units: UnitSystem): string =>
  marginL < 0
    ? t`${formatLitres(-marginL, units)} too little for the reserve`
    : t`${formatLitres(marginL, units)} above the reserve`;

/** Places in one breath, one that comes again with how often: "km 262, 418 (2), 486". */
export function atPlaces(places: readonly number[], units: UnitSystem): string {
  const counts = new Map<string, number>();
  for (const atKm of places) {
    const text = formatAtKm(atKm, units);
    counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  return [...counts]
    .map(([text, count], index) => {
      const place = index === 0 ? text : text.replace(/^\S+\s/, '');
      return count === 1 ? place : `${place} (${count})`;
    })
    .join(', ');
}
