import type { RigFile } from '../../contract/rig.ts';
import type { Position } from '../../contract/vehicle.ts';
import { UNUSABLE_LITRES } from '../defaults/rig-defaults.ts';
import { at } from '../lists/at.ts';
import type { ContainerName } from '../phrases/rig/mass.ts';
import { filledL } from '../quantity/drawable.ts';
import { fuelKgPerLitre, WATER_KG_PER_L } from './densities.ts';

/** A tank, or all owned cans of one commodity together. */
export interface Container {
  /** In the rig file: "/fuel/tanks/0". */
  path: string;
  name: ContainerName;
  commodity: 'fuel' | 'water';
  fixed: boolean;
  /** Filled as far as it may be, cans all together. */
  litres: number;
  unusableL: number;
  /** Added to the kerb mass by the container itself, kg. */
  emptyKg: number;
  /** Litres that the kerb mass includes. */
  kerbL: number;
  kgPerLitre: number;
  position: Position | null;
  marking: string | null;
}

/**
 * One empty can of 20 l, kg: the heavier end of what makers' sheets show (fuel 4.0 to 4.7 of steel, water 1.0 to 1.8
 * of polyethylene; check-values K2 and K3, from memory). Other sizes in proportion (ours).
 */
const CAN_KG_PER_L = { fuel: 4.7 / 20, water: 1.8 / 20 } as const;

/** Mass of one empty can where the rig does not tell it, kg. */
export const defaultCanKg = (commodity: 'fuel' | 'water', litres: number): number =>
  CAN_KG_PER_L[commodity] * litres;

/** Percents of the tanks' capacity that the kerb mass includes. */
export interface KerbFillings {
  fuel: number;
  water: number;
}

/** All containers of a rig: tanks in the order of the file, then cans, fuel before water. */
export const containersOf = (file: RigFile, kerb: KerbFillings): Container[] =>
  (['fuel', 'water'] as const).flatMap((commodity) => [
    ...tankContainers(file, commodity, kerb[commodity]),
    ...canContainer(file, commodity),
  ]);

const kgPerLitreOf = ({ fuel }: RigFile, commodity: 'fuel' | 'water'): number =>
  commodity === 'fuel' ? fuelKgPerLitre(fuel.kind) : WATER_KG_PER_L;

const tankContainers = (file: RigFile, commodity: 'fuel' | 'water', kerbPercent: number): Container[] =>
  file[commodity].tanks.map((tank, index) => ({
    path: `/${commodity}/tanks/${index}`,
    name: { phrase: 'own-name', facts: { name: tank.name } },
    commodity,
    fixed: true,
    litres: filledL(tank),
    unusableL: tank.unusableLitres ?? UNUSABLE_LITRES,
    emptyKg: tank.emptyKg ?? 0,
    kerbL: tank.emptyKg === undefined ? (tank.litres * kerbPercent) / 100 : 0,
    kgPerLitre: kgPerLitreOf(file, commodity),
    position: tank.position ?? null,
    marking: tank.marking ?? null,
  }));

/** All owned cans of a commodity together; none where none are owned. */
function canContainer(file: RigFile, commodity: 'fuel' | 'water'): Container[] {
  const { cans } = file[commodity];
  if (cans === undefined || cans.owned === 0) return [];
  const { owned, litres } = cans;
  return [
    {
      path: `/${commodity}/cans`,
      name: { phrase: 'owned-cans', facts: { commodity, owned, litres } },
      commodity,
      fixed: false,
      litres: owned * filledL(cans),
      unusableL: 0,
      emptyKg: owned * (cans.emptyKg ?? defaultCanKg(commodity, litres)),
      kerbL: 0,
      kgPerLitre: kgPerLitreOf(file, commodity),
      position: cans.position ?? null,
      marking: cans.marking ?? null,
    },
  ];
}

/** Litres that can be drawn from a container. */
export const usableL = (container: Container): number => container.litres - container.unusableL;

/** The fixed ones of a commodity, in the order of the file. */
export const tanksOf = (
  { containers }: { containers: readonly Container[] },
  commodity: 'fuel' | 'water',
): Container[] => containers.filter((one) => one.fixed && one.commodity === commodity);

/** How several tanks of one commodity empty: all alike, or one after the other from the first or from the last. */
export type Emptying = 'together' | 'first-first' | 'last-first';

/** What each of some containers holds for use when together they hold `levelL`, litres; never more than it can. */
export function sharesOf(containers: readonly Container[], levelL: number, emptying: Emptying): number[] {
  const totalL = containers.reduce((sum, container) => sum + usableL(container), 0);
  const level = Math.min(totalL, Math.max(0, levelL));
  if (emptying === 'together') {
    return containers.map((container) => (totalL === 0 ? 0 : (level * usableL(container)) / totalL));
  }
  // The one that empties last holds what is left.
  const order = [...containers.keys()];
  if (emptying === 'first-first') order.reverse();
  const shares = containers.map(() => 0);
  let left = level;
  for (const index of order) {
    const share = Math.min(left, usableL(at(containers, index)));
    shares[index] = share;
    left -= share;
  }
  return shares;
}

/** Levels at which one of the tanks runs empty, litres: there the loads bend. Nothing left is one of them. */
export function bendsOf(containers: readonly Container[], emptying: Emptying): number[] {
  const bends = [0];
  if (emptying === 'together') return bends;
  const order = emptying === 'first-first' ? [...containers].reverse() : containers;
  let sum = 0;
  for (const container of order.slice(0, -1)) {
    sum += usableL(container);
    bends.push(sum);
  }
  return bends;
}
