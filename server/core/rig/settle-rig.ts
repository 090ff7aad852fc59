import type { RigFile } from '../../contract/rig.ts';
import { withWaste } from '../crew/needs/crew-use.ts';
import { gradedStore } from '../crew/needs/graded-store.ts';
import { times } from '../crew/needs/range.ts';
import { type SettledCrew, settleCrew } from '../crew/needs/settle-crew.ts';
import {
  CAN_LITRES,
  FUEL_HIGH,
  FUEL_RESERVE,
  PACE_SLOW,
  RIG_NAME,
  UNUSABLE_LITRES,
  WATER_HIGH,
  WATER_RESERVE,
} from '../defaults/rig-defaults.ts';
import { settledDetail, settleFuelModel } from '../fuel/engine/fuel-model.ts';
import { fuelTanksOf, isGas, LPG_FILL_PERCENT } from '../fuel/engine/gas.ts';
import { settleVehicle } from '../mass/settle-mass.ts';
import type { Phrase } from '../phrases/phrases.ts';
import { type Assume, type Assumption, OURS } from '../quantity/assumption.ts';
import { drawableL, filledL } from '../quantity/drawable.ts';
import { metresOf } from '../quantity/rates.ts';
import type { UseRange } from '../quantity/use-range.ts';
import { settleTreatment } from '../treatment/line/settle-treatment.ts';
import { feedFactor } from '../treatment/line/taps.ts';
import { stagesToDrink, type Treatment } from '../treatment/line/treatment.ts';
import type { Reserve, Rig, Store } from './rig.ts';

/** A rig ready to be reckoned with, the file with every default written into it, and which defaults those were. */
export interface SettledRig {
  readonly rig: Rig;
  readonly settled: RigFile;
  readonly assumptions: readonly Assumption[];
}

/** Fills in what the rig file leaves out. The file is taken as checked (check-rig). */
export function settleRig(file: RigFile): SettledRig {
  const assumptions: Assumption[] = [];
  const assume: Assume = (path, value, why) => assumptions.push({ path, value, why });

  const fuelUse = fuelUseOf(file, assume);
  const ofRig = waterUseOf(file, assume);
  const drinkers = drinkersOf(file, ofRig, assume);
  const { crew } = drinkers;
  const pace = settlePace(file.pace, assume);
  const [fuelStore, waterStore] = settleStores(file, assume);
  const model = settleFuelModel(file.fuel, assume);
  const line = file.treatment === undefined ? null : settleTreatment(file.treatment, assume);
  const name = file.name ?? RIG_NAME;
  const ropeAndBucket = file.equipment?.ropeAndBucket ?? false;
  const rig: Rig = {
    name,
    fuel: {
      kind: file.fuel.kind,
      litresPer100Km: fuelUse,
      ...storeOf(fuelStore, !isGas(file.fuel.kind)),
      model,
    },
    water: {
      ...drinkers.rates,
      grades: crew === null ? null : gradedStore(crew.use, file.water.tanks),
      ...storeOf(waterStore, true),
    },
    pace,
    ropeAndBucket,
    crew: crew === null ? null : { file: crew.settled, use: crew.use },
    treatment: line?.treatment ?? null,
  };
  const settled: RigFile = {
    name,
    fuel: { kind: rig.fuel.kind, litresPer100Km: fuelUse, ...fuelStore, ...settledDetail(file.fuel, model) },
    water: { ...(ofRig === null ? {} : { litresPerDay: ofRig }), ...waterStore },
    pace,
    equipment: { ropeAndBucket },
    ...(crew === null ? {} : { crew: crew.settled }),
    ...(line === null ? {} : { treatment: line.settled }),
    ...(file.vehicle === undefined ? {} : { vehicle: file.vehicle }),
    ...(file.sure === undefined ? {} : { sure: file.sure }),
  };
  return { rig, settled: settleVehicle(settled, assume), assumptions };
}

const fuelUseOf = ({ fuel }: RigFile, assume: Assume): UseRange =>
  rangeOf(fuel.litresPer100Km, FUEL_HIGH, (litres) =>
    assume(
      '/fuel/litresPer100Km/high',
      { phrase: 'litres-per-100-km', facts: { litres } },
      { phrase: 'typical-times', facts: { factor: FUEL_HIGH } },
    ),
  );

/** The rig's own litres a day; null where only its crew is told. */
function waterUseOf({ water }: RigFile, assume: Assume): UseRange | null {
  if (water.litresPerDay === undefined) return null;
  return rangeOf(water.litresPerDay, WATER_HIGH, (litres) =>
    assume(
      '/water/litresPerDay/high',
      { phrase: 'litres-a-day', facts: { litres } },
      { phrase: 'typical-times', facts: { factor: WATER_HIGH } },
    ),
  );
}

/** Who drinks, and what goes from the tanks for them: with what reverse osmosis throws away, and without. */
function drinkersOf(file: RigFile, ofRig: UseRange | null, assume: Assume) {
  const atTap = file.crew === undefined ? null : settleCrew(file.crew, ofRig, assume);
  const feed = file.treatment === undefined ? 1 : feedOf(settleTreatment(file.treatment, () => {}).treatment);
  const crew = atTap === null ? null : withOsmosis(atTap, feed);
  const rates = {
    litresPerDay: waterRate(crew, ofRig, feed),
    tapLitresPerDay: waterRate(atTap, ofRig, 1).high,
  };
  return { crew, rates };
}

/** Without a crew nobody knows what of it goes through a membrane: all of it is taken to. */
function waterRate(crew: SettledCrew | null, ofRig: UseRange | null, feed: number): UseRange {
  if (crew !== null) return crew.use.total;
  if (ofRig === null) throw new Error('a rig with neither /water/litresPerDay nor /crew was not refused');
  return feed === 1 ? ofRig : times(ofRig, feed);
}

/** What drinking water takes from the tank for each litre at the tap: reverse osmosis throws the rest away. */
const feedOf = (line: Treatment): number =>
  line.at === 'tap' ? feedFactor(line.stages, 0, stagesToDrink(line)) : 1;

const withOsmosis = (crew: SettledCrew, feed: number): SettledCrew =>
  feed === 1 ? crew : { ...crew, use: withWaste(crew.use, feed) };

function rangeOf(use: number | UseRange, high: number, assumed: (high: number) => void): UseRange {
  if (typeof use !== 'number') return use;
  assumed(use * high);
  return { low: use / high, typical: use, high: use * high };
}

function settlePace({ kmPerHour, hoursPerDay, bySurface }: RigFile['pace'], assume: Assume): Rig['pace'] {
  const surfaces = bySurface === undefined ? {} : { bySurface };
  if (typeof kmPerHour !== 'number') return { hoursPerDay, kmPerHour, ...surfaces };
  const slow = kmPerHour * PACE_SLOW;
  assume(
    '/pace/kmPerHour/slow',
    { phrase: 'kilometres-an-hour', facts: { km: slow } },
    { phrase: 'typical-times', facts: { factor: PACE_SLOW } },
  );
  return { hoursPerDay, kmPerHour: { slow, typical: kmPerHour, fast: kmPerHour / PACE_SLOW }, ...surfaces };
}

type FuelStoreFile = Pick<RigFile['fuel'], 'tanks'> & Required<Pick<RigFile['fuel'], 'cans' | 'reserve'>>;
type WaterStoreFile = Pick<RigFile['water'], 'tanks'> & Required<Pick<RigFile['water'], 'cans' | 'reserve'>>;

/** Tanks, cans and reserve of both, as files. */
function settleStores({ fuel, water }: RigFile, assume: Assume): [FuelStoreFile, WaterStoreFile] {
  const fuelCans = fuelCansOf(fuel, assume);
  const waterCans = water.cans ?? usualCans('/water/cans', assume);
  assumeFillLimit(fuel, assume);
  const [fuelReserve, waterReserve] = [fuel.reserve, water.reserve].map(toldReserve);
  if (fuelReserve === undefined) {
    const facts = { m: metresOf(FUEL_RESERVE.km), share: FUEL_RESERVE.shareOfNeed };
    assume('/fuel/reserve', { phrase: 'reserve-of-way', facts }, OURS);
  }
  if (waterReserve === undefined) {
    assume('/water/reserve', { phrase: 'days', facts: { days: WATER_RESERVE.days } }, OURS);
  }
  return [
    { tanks: settleTanks(fuelTanksOf(fuel)), cans: fuelCans, reserve: fuelReserve ?? FUEL_RESERVE },
    { tanks: settleTanks(water.tanks), cans: waterCans, reserve: waterReserve ?? WATER_RESERVE },
  ];
}

/** A reserve with nothing in it tells none. */
const toldReserve = <Reserve extends object>(reserve: Reserve | undefined): Reserve | undefined =>
  reserve === undefined || Object.keys(reserve).length === 0 ? undefined : reserve;

function usualCans(path: string, assume: Assume) {
  const value: Phrase = { phrase: 'cans-none-owned', facts: { litres: CAN_LITRES } };
  assume(path, value, { phrase: 'usual-can', facts: {} });
  return { litres: CAN_LITRES, owned: 0 };
}

/** A gas is never carried in cans: those that are told are left out, and that is said. */
function fuelCansOf({ kind, cans }: RigFile['fuel'], assume: Assume): FuelStoreFile['cans'] {
  if (!isGas(kind)) return cans ?? usualCans('/fuel/cans', assume);
  if (cans?.owned === 0) return cans;
  assume('/fuel/cans', { phrase: 'none', facts: {} }, { phrase: 'gas-not-in-cans', facts: { kind } });
  return { litres: cans?.litres ?? CAN_LITRES, owned: 0 };
}

function assumeFillLimit({ kind, tanks }: RigFile['fuel'], assume: Assume): void {
  if (kind !== 'lpg') return;
  for (const [index, { fillPercent }] of tanks.entries()) {
    if (fillPercent !== undefined) continue;
    const value: Phrase = { phrase: 'percent', facts: { percent: LPG_FILL_PERCENT } };
    assume(`/fuel/tanks/${index}/fillPercent`, value, { phrase: 'lpg-fill-limit', facts: {} });
  }
}

const settleTanks = <Tank extends { unusableLitres?: number }>(tanks: readonly Tank[]) =>
  tanks.map((tank) => ({ ...tank, unusableLitres: tank.unusableLitres ?? UNUSABLE_LITRES }));

const storeOf = ({ tanks, cans, reserve }: FuelStoreFile | WaterStoreFile, takesCans: boolean): Store => ({
  takesCans,
  drawableL: drawableL(tanks),
  canL: filledL(cans),
  cansOwned: cans.owned,
  reserve: reserveOf(reserve),
});

/** A reserve that names only a share of the need has no base; one that names only a base has no share. */
function reserveOf(file: FuelStoreFile['reserve'] & WaterStoreFile['reserve']): Reserve {
  const shareOfNeed = file.shareOfNeed ?? 0;
  if (file.km !== undefined) return { base: { unit: 'km', value: file.km }, shareOfNeed };
  if (file.days !== undefined) return { base: { unit: 'days', value: file.days }, shareOfNeed };
  if (file.fraction !== undefined) return { base: { unit: 'fraction', value: file.fraction }, shareOfNeed };
  return { base: { unit: 'litres', value: file.litres ?? 0 }, shareOfNeed };
}
