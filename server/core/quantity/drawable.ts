import type { RigFile } from '../../contract/rig.ts';

type Tank = RigFile['fuel']['tanks'][number];

/** Litres of the tanks that can be drawn. */
export function drawableL(tanks: readonly Tank[]): number {
  return tanks.reduce((sum, tank) => sum + filledL(tank) - (tank.unusableLitres ?? 0), 0);
}

/** Litres in a container that is filled as far as its filling limit allows. */
export const filledL = (container: { litres: number; fillPercent?: number }): number =>
  container.fillPercent === undefined ? container.litres : (container.litres * container.fillPercent) / 100;
