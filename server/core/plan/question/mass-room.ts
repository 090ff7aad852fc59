import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import type { Container } from '../../mass/containers.ts';
import { containersOf } from '../../mass/containers.ts';
import { massModelOf } from '../../mass/settle-mass.ts';
import { fixedMoments } from '../../mass/states.ts';

/** One permitted mass, and what the containers take of it, kg. */
export interface MassLimit {
  name: 'total' | 'front' | 'rear';
  /** Permitted, less the vehicle with every tank at its heaviest for this limit, without any can. */
  leftKg: number;
  /** One empty can; what a filling adds to it, nothing where it relieves. */
  canKg: Record<Commodity, { empty: number; filling: number }>;
  /** What a litre less in the fixed tanks takes off at the least. */
  perLitreKg: Record<Commodity, number>;
}

/** What the permitted masses leave for cans. */
export interface MassRoom {
  limits: MassLimit[];
}

type Permitted = { totalKg?: number; frontKg?: number; rearKg?: number };
const KEY = { total: 'totalKg', front: 'frontKg', rear: 'rearKg' } as const satisfies Record<
  MassLimit['name'],
  keyof Permitted
>;

/** The room that a rig's permitted masses leave; null where it tells none that can be reckoned with. */
export function massRoomOf(file: RigFile): MassRoom | null {
  const model = massModelOf(withoutCans(file));
  if (model === null) return null;
  const { frame, containers } = model;
  const fixed = fixedMoments(model);
  const permitted: Permitted = model.vehicle.permitted ?? {};
  const cans = oneCanEach(file);
  const axles = frame.known.x && frame.wheelbaseM !== null ? frame.wheelbaseM : null;
  const limits: MassLimit[] = [];
  for (const name of ['total', 'front', 'rear'] as const) {
    const limitKg = permitted[KEY[name]];
    if (limitKg === undefined || (name !== 'total' && axles === null)) continue;
    const shareAt = (xM: number | null): number | null =>
      name === 'total' ? 1 : xM === null ? null : name === 'rear' ? xM / axles! : 1 - xM / axles!;
    const ofVehicle =
      name === 'total' ? fixed.kg : name === 'rear' ? fixed.x / axles! : fixed.kg - fixed.x / axles!;
    const tankShare = (tank: Container) => shareAt(tank.position?.behindFrontAxleM ?? null) ?? 1;
    const ofTanks = containers.reduce(
      (sum, tank) =>
        sum + tank.kgPerLitre * Math.max(tankShare(tank) * tank.litres, tankShare(tank) * tank.unusableL),
      0,
    );
    const canKg = { fuel: { empty: 0, filling: 0 }, water: { empty: 0, filling: 0 } };
    const perLitreKg = { fuel: 0, water: 0 };
    for (const commodity of ['fuel', 'water'] as const) {
      const can = cans[commodity];
      // A can whose place is not told may stand where it weighs most on the axle: all of it counts (ours).
      const share = shareAt(can.position?.behindFrontAxleM ?? null) ?? 1;
      canKg[commodity] = {
        empty: share * can.emptyKg,
        filling: Math.max(0, share * can.litres * can.kgPerLitre),
      };
      const tanks = containers.filter((tank) => tank.commodity === commodity);
      perLitreKg[commodity] = Math.min(...tanks.map((tank) => tankShare(tank) * tank.kgPerLitre));
    }
    limits.push({ name, leftKg: limitKg - ofVehicle - ofTanks, canKg, perLitreKg });
  }
  return limits.length === 0 ? null : { limits };
}

/** The rig without cans: how many there are is for the plan to say. */
function withoutCans(file: RigFile): RigFile {
  const bare = <T extends RigFile['fuel'] | RigFile['water']>(store: T): T =>
    store.cans === undefined ? store : { ...store, cans: { ...store.cans, owned: 0 } };
  return { ...file, fuel: bare(file.fuel), water: bare(file.water) };
}

/** One can of each commodity, as a container of its own. */
function oneCanEach(file: RigFile): Record<Commodity, Container> {
  const one = <T extends RigFile['fuel'] | RigFile['water']>(store: T): T => ({
    ...store,
    cans: { litres: 20, ...store.cans, owned: 1 },
  });
  const containers = containersOf(
    { ...file, fuel: one(file.fuel), water: one(file.water) },
    { fuel: 0, water: 0 },
  );
  const of = (commodity: Commodity) =>
    containers.find((each) => !each.fixed && each.commodity === commodity)!;
  return { fuel: of('fuel'), water: of('water') };
}
