import type { Commodity } from '../../../contract/common.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { at } from '../../lists/at.ts';
import { bendsOf, type Emptying, tanksOf } from '../../mass/containers.ts';
import { type MassModel, massModelOf } from '../../mass/settle-mass.ts';
import { contentsAt, fixedMoments, withContents } from '../../mass/states.ts';
import { type Loads, loadsOf } from '../../mass/statics.ts';
import { COMMODITIES } from '../../quantity/commodities.ts';
import { byCommodity } from '../side/other-of.ts';
import { type ContainerLevel, levelBetween } from './containers.ts';
import type { DrivenLeg, DrivenLegs } from './drive.ts';

/** What the vehicle weighs at a place, on arriving and on leaving where both differ. */
export interface MassLevel {
  readonly atM: number;
  readonly totalKg: number;
  readonly frontKg: number | null;
  readonly rearKg: number | null;
}

/** A permitted mass that is broken somewhere, and by how much. */
export interface OverLimit {
  readonly limit: 'total' | 'front' | 'rear';
  readonly atM: number;
  readonly overKg: number;
}

/** Scales and solver noise: less than a gram is not over, kg. */
const NOISE_KG = 1e-3;

/**
 * Masses along a driven plan with as many cans as it has; null where the rig tells no vehicle. Where the rig does not
 * tell how several tanks empty, limits are held against each way, and the masses shown are of tanks that empty alike.
 */
export function massesAlong(
  file: RigFile,
  cans: Readonly<Record<Commodity, number>>,
  legs: DrivenLegs,
): { levels: MassLevel[]; over: OverLimit[] } | null {
  const model = massModelOf(withCans(file, cans));
  if (model === null) return null;
  const ways = WAYS[model.vehicle.tanksEmpty ?? 'unknown'];
  const along = byCommodity((commodity) => levelsAlong(model, ways, commodity, legs[commodity]));
  const places = [
    ...new Set(COMMODITIES.flatMap((commodity) => along[commodity].map(({ atM }) => atM))),
  ].sort((a, b) => a - b);
  const weigh = weigherOf(model);
  const readers = byCommodity((commodity) => levelReader(along[commodity]));
  const levels: MassLevel[] = [];
  const worst = new Map<OverLimit['limit'], OverLimit>();
  for (const atM of places) {
    const there = { fuel: readers.fuel(atM), water: readers.water(atM) };
    const arriving = { fuel: there.fuel[0], water: there.water[0] };
    const leaving = { fuel: lastOf(there.fuel), water: lastOf(there.water) };
    levels.push(massLevel(atM, weigh(arriving, ways[0])));
    if (there.fuel.length > 1 || there.water.length > 1) levels.push(massLevel(atM, weigh(leaving, ways[0])));
    // Arriving and leaving: what is let go at a stop is let go before anything else is filled there.
    for (const way of ways) {
      noteOver(worst, model, weigh(arriving, way), atM);
      noteOver(worst, model, weigh(leaving, way), atM);
    }
  }
  return { levels, over: [...worst.values()] };
}

type Several<T> = readonly [T, ...T[]];

const lastOf = <T>(list: Several<T>): T => list.at(-1) ?? list[0];

/** How several tanks may empty, by what the rig tells; the first is what is shown. */
const WAYS: Record<'in-order' | 'together' | 'unknown', Several<Emptying>> = {
  'in-order': ['first-first'],
  together: ['together'],
  unknown: ['together', 'first-first', 'last-first'],
};

/** All levels of a commodity, with a point wherever one of several tanks runs empty: the axle loads bend there. */
function levelsAlong(
  model: MassModel,
  ways: Several<Emptying>,
  commodity: Commodity,
  legs: readonly DrivenLeg[],
): ContainerLevel[] {
  const bends = [...new Set(ways.flatMap((way) => bendsOf(tanksOf(model, commodity), way)))];
  return legs.flatMap((leg) => withBends(leg.levels, bends));
}

/** What is in the containers of both commodities. */
type Contents = Readonly<Record<Commodity, ContainerLevel>>;

/** Weighs the vehicle with so much in its containers, emptied one way. */
function weigherOf(model: MassModel): (contents: Contents, way: Emptying) => Loads {
  const fixed = fixedMoments(model);
  return (contents, way) =>
    loadsOf(withContents(model, fixed, litresOfEach(model, contents, way)), model.frame);
}

function litresOfEach(model: MassModel, { fuel, water }: Contents, way: Emptying): number[] {
  const inTanks = contentsAt(model, { fuelL: fuel.tankL, waterL: water.tankL }, way);
  return model.containers.map((container, index) =>
    container.fixed
      ? at(inTanks, index)
      : (container.commodity === 'fuel' ? fuel : water).cansL.reduce((sum, litres) => sum + litres, 0),
  );
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

const massLevel = (atM: number, { totalKg, frontKg, rearKg }: Loads): MassLevel => ({
  atM,
  totalKg,
  frontKg,
  rearKg,
});

function withBends(levels: readonly ContainerLevel[], bends: readonly number[]): ContainerLevel[] {
  return levels.flatMap((level, index) => {
    const before = levels[index - 1];
    if (before === undefined || before.atM === level.atM) return [level];
    const between = bends
      .filter((litres) => before.tankL > litres && litres > level.tankL)
      .sort((a, b) => b - a)
      .map((litres) => levelBetween(before, level, (before.tankL - litres) / (before.tankL - level.tankL)));
    return [...between, level];
  });
}

/** Reads all levels at a place, in order, places in order: those of points there, else one between its neighbours. */
function levelReader(levels: readonly ContainerLevel[]): (atM: number) => Several<ContainerLevel> {
  let index = 0;
  return (atM) => {
    while (index < levels.length && at(levels, index).atM < atM) index += 1;
    const first = levels[index];
    if (first?.atM !== atM) return [levelNear(levels, index, atM)];
    const there: [ContainerLevel, ...ContainerLevel[]] = [first];
    for (let next = levels[index + 1]; next?.atM === atM; next = levels[index + there.length])
      there.push(next);
    return there;
  };
}

/** A level at a place between that of an index and the one before it; at either end that of the end. */
function levelNear(levels: readonly ContainerLevel[], index: number, atM: number): ContainerLevel {
  const before = levels[index - 1] ?? at(levels, 0);
  const after = levels[index] ?? before;
  const share = after.atM === before.atM ? 0 : (atM - before.atM) / (after.atM - before.atM);
  return { ...levelBetween(before, after, share), atM };
}

/** The rig with as many cans as the plan has. */
function withCans(file: RigFile, cans: Readonly<Record<Commodity, number>>): RigFile {
  const owning = <T extends RigFile['fuel'] | RigFile['water']>(store: T, owned: number): T => ({
    ...store,
    cans: { litres: 20, ...store.cans, owned },
  });
  return { ...file, fuel: owning(file.fuel, cans.fuel), water: owning(file.water, cans.water) };
}
