import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { bendsOf, type Emptying, tanksOf } from '../../mass/containers.ts';
import { type MassModel, massModelOf } from '../../mass/settle-mass.ts';
import { contentsAt, fixedMoments, withContents } from '../../mass/states.ts';
import { type Loads, loadsOf } from '../../mass/statics.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import type { ContainerLevel } from './containers.ts';
import type { Driven } from './drive.ts';

/** What the vehicle weighs at a place, on arriving and on leaving where both differ. */
export interface MassLevel {
  atM: number;
  totalKg: number;
  frontKg: number | null;
  rearKg: number | null;
}

/** A permitted mass that is broken somewhere, and by how much. */
export interface OverLimit {
  limit: 'total' | 'front' | 'rear';
  atM: number;
  overKg: number;
}

/** Scales and solver noise: less than a gram is not over, kg. */
const NOISE_KG = 1e-3;

/**
 * Masses along a driven plan with as many cans as it has; null where the rig tells no vehicle. Where the rig does not
 * tell how several tanks empty, limits are held against each way, and the masses shown are of tanks that empty alike.
 */
export function massesAlong(
  file: RigFile,
  cans: Record<Commodity, number>,
  driven: Driven,
): { levels: MassLevel[]; over: OverLimit[] } | null {
  const model = massModelOf(withCans(file, cans));
  if (model === null) return null;
  const ways: Emptying[] =
    model.vehicle.tanksEmpty === 'in-order'
      ? ['first-first']
      : model.vehicle.tanksEmpty === 'together'
        ? ['together']
        : ['together', 'first-first', 'last-first'];
  const levelsOf = (commodity: Commodity): ContainerLevel[] => {
    const bends = new Set(ways.flatMap((way) => bendsOf(tanksOf(model, commodity), way)));
    return driven[commodity].flatMap((leg) => withBends(leg.levels, [...bends]));
  };
  const along = { fuel: levelsOf('fuel'), water: levelsOf('water') };
  const places = [
    ...new Set(COMMODITIES.flatMap((commodity) => along[commodity].map(({ atM }) => atM))),
  ].sort((a, b) => a - b);
  const fixed = fixedMoments(model);
  const loads = (fuel: ContainerLevel, water: ContainerLevel, way: Emptying): Loads =>
    loadsOf(withContents(model, fixed, contentsWith(model, fuel, water, way)), model.frame);

  const levels: MassLevel[] = [];
  const worst = new Map<OverLimit['limit'], OverLimit>();
  const fuelAt = levelReader(along.fuel);
  const waterAt = levelReader(along.water);
  for (const atM of places) {
    const ofFuel = fuelAt(atM);
    const ofWater = waterAt(atM);
    const arriving = loads(ofFuel[0]!, ofWater[0]!, ways[0]!);
    levels.push(levelOf(atM, arriving));
    if (ofFuel.length > 1 || ofWater.length > 1) {
      levels.push(levelOf(atM, loads(ofFuel.at(-1)!, ofWater.at(-1)!, ways[0]!)));
    }
    // Arriving and leaving: what is let go at a stop is let go before anything else is filled there.
    for (const way of ways) {
      noteOver(worst, model, loads(ofFuel[0]!, ofWater[0]!, way), atM);
      noteOver(worst, model, loads(ofFuel.at(-1)!, ofWater.at(-1)!, way), atM);
    }
  }
  return { levels, over: [...worst.values()] };
}

function noteOver(
  worst: Map<OverLimit['limit'], OverLimit>,
  model: MassModel,
  loads: Loads,
  atM: number,
): void {
  const permitted = model.vehicle.permitted ?? {};
  const rows = [
    ['total', loads.totalKg, permitted.totalKg],
    ['front', loads.frontKg, permitted.frontKg],
    ['rear', loads.rearKg, permitted.rearKg],
  ] as const;
  for (const [limit, kg, mostKg] of rows) {
    if (kg === null || mostKg === undefined || kg <= mostKg + NOISE_KG) continue;
    const overKg = kg - mostKg;
    if (overKg > (worst.get(limit)?.overKg ?? 0)) worst.set(limit, { limit, atM, overKg });
  }
}

const levelOf = (atM: number, { totalKg, frontKg, rearKg }: Loads): MassLevel => ({
  atM,
  totalKg,
  frontKg,
  rearKg,
});

function contentsWith(
  model: MassModel,
  fuel: ContainerLevel,
  water: ContainerLevel,
  way: Emptying,
): number[] {
  const contents = contentsAt(model, { fuelL: fuel.tankL, waterL: water.tankL }, way);
  return model.containers.map((container, index) =>
    container.fixed
      ? contents[index]!
      : (container.commodity === 'fuel' ? fuel : water).cansL.reduce((sum, litres) => sum + litres, 0),
  );
}

/** With a point wherever one of several tanks runs empty: the axle loads bend there. */
function withBends(levels: readonly ContainerLevel[], bends: readonly number[]): ContainerLevel[] {
  return levels.flatMap((level, index) => {
    const before = levels[index - 1];
    if (before === undefined || before.atM === level.atM) return [level];
    const crossed = bends
      .filter((litres) => before.tankL > litres && litres > level.tankL)
      .sort((a, b) => b - a);
    return [
      ...crossed.map((litres) =>
        between(before, level, (before.tankL - litres) / (before.tankL - level.tankL)),
      ),
      level,
    ];
  });
}

const between = (before: ContainerLevel, after: ContainerLevel, share: number): ContainerLevel => ({
  atM: before.atM + share * (after.atM - before.atM),
  tankL: before.tankL + share * (after.tankL - before.tankL),
  cansL: before.cansL.map((litres, can) => litres + share * ((after.cansL[can] ?? litres) - litres)),
});

/** Reads all levels at a place, in order: those of points there, else one between its neighbours. */
function levelReader(levels: readonly ContainerLevel[]): (atM: number) => ContainerLevel[] {
  let index = 0;
  return (atM) => {
    while (index < levels.length && levels[index]!.atM < atM) index += 1;
    const there: ContainerLevel[] = [];
    for (let at = index; at < levels.length && levels[at]!.atM === atM; at += 1) there.push(levels[at]!);
    if (there.length > 0) return there;
    const before = levels[index - 1] ?? levels[0]!;
    const after = levels[index] ?? before;
    const share = after.atM === before.atM ? 0 : (atM - before.atM) / (after.atM - before.atM);
    return [{ ...between(before, after, share), atM }];
  };
}

/** The rig with as many cans as the plan has. */
function withCans(file: RigFile, cans: Record<Commodity, number>): RigFile {
  const owning = <T extends RigFile['fuel'] | RigFile['water']>(store: T, owned: number): T => ({
    ...store,
    cans: { litres: 20, ...store.cans, owned },
  });
  return { ...file, fuel: owning(file.fuel, cans.fuel), water: owning(file.water, cans.water) };
}
