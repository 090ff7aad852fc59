import type { RigFile } from '../../../contract/rig.ts';
import { drawableL } from '../../quantity/drawable.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import type { CrewUse } from './crew-use.ts';

/** What each grade takes in a day, and how much of the fixed tanks is kept for one grade; litres. */
export interface GradedStore {
  drinkingPerDay: UseRange;
  washingPerDay: UseRange;
  /** Drawable litres of the fixed tanks kept for drinking water, for washing water, and for neither. */
  keptForDrinkingL: number;
  keptForWashingL: number;
  anyL: number;
}

export function gradedStore(use: CrewUse, tanks: RigFile['water']['tanks']): GradedStore {
  const kept = (grade: 'any' | 'drinking' | 'washing') =>
    drawableL(tanks.filter((tank) => (tank.grade ?? 'any') === grade));
  return {
    drinkingPerDay: use.drinking,
    washingPerDay: use.washing,
    keptForDrinkingL: kept('drinking'),
    keptForWashingL: kept('washing'),
    anyL: kept('any'),
  };
}

/** How an amount of water aboard lies in the containers. */
export interface Aboard {
  /** In those kept for washing. */
  washingL: number;
  /** In those kept for drinking water. */
  drinkingL: number;
  /** In the others: serves both. */
  anyL: number;
}

/**
 * How so many litres aboard lie in the containers. Full is full; of less nobody was told where it is, so the worst for
 * drinking is taken: what is kept for washing is full before what serves both, and that before what is kept for
 * drinking.
 */
export function aboardOf(store: GradedStore, litres: number): Aboard {
  const washingL = Math.min(store.keptForWashingL, Math.max(0, litres));
  const drinkableL = litres - washingL;
  const anyL = Math.min(store.anyL, drinkableL);
  return { washingL, drinkingL: drinkableL - anyL, anyL };
}
