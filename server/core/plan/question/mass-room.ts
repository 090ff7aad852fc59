import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { at } from '../../lists/at.ts';
import { type Container, containersOf } from '../../mass/containers.ts';
import { massModelOf } from '../../mass/settle-mass.ts';
import type { PointMass } from '../../mass/statics.ts';
import { byCommodity } from '../side/other-of.ts';

/** One permitted mass, and what the containers take of it, kg. */
export interface MassLimit {
  readonly name: 'total' | 'front' | 'rear';
  /** Permitted, less the vehicle with every tank at its heaviest for this limit, without any can. */
  readonly leftKg: number;
  /** One empty can; what a filling adds to it, nothing where it relieves. */
  readonly canKg: Readonly<Record<Commodity, { readonly empty: number; readonly filling: number }>>;
  /** What a litre less in the fixed tanks takes off at the least. */
  readonly perLitreKg: Readonly<Record<Commodity, number>>;
}

/** What the permitted masses leave for cans. */
export interface MassRoom {
  readonly limits: readonly MassLimit[];
}

/** Whether an empty can takes something off a limit: those that stand behind the axles relieve the one in front. */
export const emptyRelieves = (limits: readonly MassLimit[], commodity: Commodity): boolean =>
  limits.some(({ canKg }) => canKg[commodity].empty < 0);

type Permitted = { totalKg?: number; frontKg?: number; rearKg?: number };
const LIMITS = { total: 'totalKg', front: 'frontKg', rear: 'rearKg' } as const satisfies Record<
  MassLimit['name'],
  keyof Permitted
>;
const NAMES: readonly MassLimit['name'][] = ['total', 'front', 'rear'];

/**
 * The room that a rig's permitted masses leave; null where it tells none that can be reckoned with. Of an axle whose load is
 * known in part, that part is held against the limit: what stands at an unknown place may rest on the other one.
 */
export function massRoomOf(file: RigFile): MassRoom | null {
  const model = massModelOf(withoutCans(file));
  if (model === null) return null;
  const { frame, containers, fixed } = model;
  const permitted: Permitted = model.vehicle.permitted ?? {};
  const cans = oneCanEach(file);
  const wheelbaseM = model.vehicle.axleKg === undefined ? null : frame.wheelbaseM;
  const limits = NAMES.flatMap((name): MassLimit[] => {
    const limitKg = permitted[LIMITS[name]];
    const bearer = bearerOf(name, wheelbaseM);
    if (limitKg === undefined || bearer === null) return [];
    return [
      {
        name,
        leftKg: limitKg - leastFixedKg(bearer, fixed) - heaviestKg(bearer, containers),
        canKg: byCommodity((commodity) => canShareKg(bearer, cans[commodity])),
        perLitreKg: byCommodity((commodity) => leastPerLitreKg(bearer, containers, commodity)),
      },
    ];
  });
  return limits.length === 0 ? null : { limits };
}

/** What bears masses: the whole vehicle, or one axle, by the lever. */
interface Bearer {
  /** How much of a mass at a place rests on it; metres behind the front axle. */
  readonly shareAt: (behindM: number) => number;
  /** Of what stands at an unknown place, the least and the most. */
  readonly unknownShare: { readonly least: number; readonly most: number };
}

const BETWEEN_AXLES = { least: 0, most: 1 } as const;

/** Null where the axles cannot be reckoned. */
function bearerOf(name: MassLimit['name'], wheelbaseM: number | null): Bearer | null {
  if (name === 'total') return { shareAt: () => 1, unknownShare: { least: 1, most: 1 } };
  if (wheelbaseM === null) return null;
  const rear = (behindM: number) => behindM / wheelbaseM;
  const shareAt = name === 'rear' ? rear : (behindM: number) => 1 - rear(behindM);
  return { shareAt, unknownShare: BETWEEN_AXLES };
}

/** What rests at the least of all that does not change. What the kerb mass includes comes off what rides in its place. */
function leastFixedKg({ shareAt, unknownShare }: Bearer, masses: readonly PointMass[]): number {
  const unknownKg = new Map<string, number>();
  let restsKg = 0;
  for (const { path, kg, xM } of masses) {
    if (xM === null) unknownKg.set(path, (unknownKg.get(path) ?? 0) + kg);
    else restsKg += kg * shareAt(xM);
  }
  for (const kg of unknownKg.values()) restsKg += kg * (kg < 0 ? unknownShare.most : unknownShare.least);
  return restsKg;
}

/** Cans whose place is not told may stand where they weigh most on the axle: all of them counts (ours). */
const shareOf = ({ shareAt }: Bearer, { position }: Container): number =>
  position === null ? 1 : shareAt(position.behindFrontAxleM);

const shareOfTank = ({ shareAt, unknownShare }: Bearer, { position }: Container): number =>
  position === null ? unknownShare.least : shareAt(position.behindFrontAxleM);

/** All tanks, each filled as weighs most. */
const heaviestKg = (bearer: Bearer, tanks: readonly Container[]): number =>
  tanks.reduce((sum, tank) => {
    const share = shareOfTank(bearer, tank);
    return sum + tank.kgPerLitre * Math.max(share * tank.litres, share * tank.unusableL);
  }, 0);

function canShareKg(bearer: Bearer, can: Container): { empty: number; filling: number } {
  const share = shareOf(bearer, can);
  return { empty: share * can.emptyKg, filling: Math.max(0, share * can.litres * can.kgPerLitre) };
}

function leastPerLitreKg(bearer: Bearer, tanks: readonly Container[], commodity: Commodity): number {
  const own = tanks.filter((tank) => tank.commodity === commodity);
  return own.length === 0 ? 0 : Math.min(...own.map((tank) => shareOfTank(bearer, tank) * tank.kgPerLitre));
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
  const rig = { ...file, fuel: one(file.fuel), water: one(file.water) };
  const cans = containersOf(rig, { fuel: 0, water: 0 }).filter(({ fixed }) => !fixed);
  return byCommodity((commodity) => {
    const ofCommodity = cans.filter((can) => can.commodity === commodity);
    return at(ofCommodity, 0);
  });
}
