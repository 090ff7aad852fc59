import type { ContainerEffect, MassState } from '../../server/contract/vehicle.ts';

/**
 * Litres in each container at a state, what cannot be drawn included, for the drawing: tanks of a commodity hold alike
 * shares, or empty in the order listed. Cans are empty but where the state has everything full.
 */
export function heldShares(
  containers: readonly ContainerEffect[],
  state: Pick<MassState, 'kind' | 'fuelL' | 'waterL'>,
  emptying: 'together' | 'in-order',
): number[] {
  if (state.kind === 'full') return containers.map(({ litres }) => litres);
  const held = new Map<ContainerEffect, number>();
  for (const commodity of ['fuel', 'water'] as const) {
    const tanks = containers.filter((one) => one.fixed && one.commodity === commodity);
    const all = tanks.reduce((sum, tank) => sum + usableL(tank), 0);
    const level = Math.min(all, commodity === 'fuel' ? state.fuelL : state.waterL);
    // The first listed is drawn from first: what is left stands in the last ones.
    let left = level;
    for (const tank of tanks.toReversed()) {
      const room = usableL(tank);
      const litres = emptying === 'in-order' ? Math.min(room, left) : all === 0 ? 0 : (level * room) / all;
      left -= litres;
      held.set(tank, tank.unusableLitres + Math.max(0, litres));
    }
  }
  return containers.map((container) => held.get(container) ?? 0);
}

const usableL = ({ litres, unusableLitres }: ContainerEffect): number => litres - unusableLitres;
