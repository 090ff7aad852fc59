import { at } from '../lists/at.ts';
import { type Container, type Emptying, sharesOf, tanksOf } from './containers.ts';
import type { MassModel } from './settle-mass.ts';
import {
  type Loads,
  loadsOf,
  type Moments,
  momentsOf,
  NO_MOMENTS,
  type PointMass,
  placeOfPosition,
  withMass,
} from './statics.ts';

/** Usable litres aboard in the fixed tanks. */
export interface Levels {
  fuelL: number;
  waterL: number;
}

/** What is in each container, litres that can be used or not, in the order of the model's containers. */
export type Contents = readonly number[];

/** Contents at levels of the fixed tanks; cans are empty. */
export function contentsAt(model: MassModel, levels: Levels, emptying: Emptying): number[] {
  const litresIn = new Map<Container, number>();
  for (const commodity of ['fuel', 'water'] as const) {
    const tanks = tanksOf(model, commodity);
    const shares = sharesOf(tanks, commodity === 'fuel' ? levels.fuelL : levels.waterL, emptying);
    for (const [index, tank] of tanks.entries()) litresIn.set(tank, tank.unusableL + at(shares, index));
  }
  return model.containers.map((container) => litresIn.get(container) ?? 0);
}

/** Moments of what tanks hold at a level of them all, with what cannot be drawn. */
export function heldMoments(tanks: readonly Container[], levelL: number, emptying: Emptying): Moments {
  const shares = sharesOf(tanks, levelL, emptying);
  return tanks.reduce(
    (sum, { unusableL, kgPerLitre, position }, index) =>
      withMass(sum, (unusableL + at(shares, index)) * kgPerLitre, placeOfPosition(position)),
    NO_MOMENTS,
  );
}

/** Every container as full as it may be, cans as well. */
export const fullContents = (model: MassModel): number[] =>
  model.containers.map((container) => container.litres);

/** Moments of all that does not change along the way. */
export const fixedMoments = (model: MassModel): Moments => momentsOf(model.fixed);

/** Moments with contents added to those of the fixed masses. */
export function withContents(model: MassModel, fixed: Moments, contents: Contents): Moments {
  return model.containers.reduce(
    (sum, container, index) =>
      withMass(sum, at(contents, index) * container.kgPerLitre, placeOfPosition(container.position)),
    fixed,
  );
}

/** Loads with these contents. */
export const loadsWith = (model: MassModel, fixed: Moments, contents: Contents): Loads =>
  loadsOf(withContents(model, fixed, contents), model.frame);

/** Every mass aboard with these contents, as terms: what the kerb mass includes is taken off. */
export function massesWith(model: MassModel, contents: Contents): PointMass[] {
  const filled = model.containers.map(({ path, name, kgPerLitre, position }, index): PointMass => {
    const litres = at(contents, index);
    const label = { phrase: 'filling', facts: { litres, of: name } } as const;
    return { path, label, kg: litres * kgPerLitre, ...placeOfPosition(position) };
  });
  return [...model.fixed, ...filled.filter((mass) => mass.kg !== 0)];
}
