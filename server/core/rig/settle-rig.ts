import type { RigFile } from '../../contract/rig.ts';
import { gradedStore } from '../crew/needs/graded-store.ts';
import { settleCrew } from '../crew/needs/settle-crew.ts';
import { settledDetail, settleFuelModel } from '../fuel/engine/fuel-model.ts';
import { settleVehicle } from '../mass/settle-mass.ts';
import type { Assumption } from '../quantity/assumption.ts';
import { drawableL, filledL } from '../quantity/drawable.ts';
import type { UseRange } from '../quantity/use-range.ts';
import { settleTreatment } from '../treatment/line/settle-treatment.ts';
import type { Reserve, Rig } from './rig.ts';

/** High end of a fuel rate given as one number (ours). */
const FUEL_HIGH = 1.25;
/** High end of a water rate given as one number (ours). */
const WATER_HIGH = 1.5;
/** Slow end of a pace given as one number (ours). */
const PACE_SLOW = 0.7;
/** The usual size of a portable can (common practice, no source). */
const CAN_LITRES = 20;
/** Reserves (ours: no agency publishes one for land vehicles). */
const FUEL_RESERVE = { km: 100, shareOfNeed: 0.1 };
const WATER_RESERVE = { days: 2 };

type FuelReserveFile = NonNullable<RigFile['fuel']['reserve']>;
type WaterReserveFile = NonNullable<RigFile['water']['reserve']>;

/**
 * Fills in what the rig file leaves out. Gives the rig to reckon with, the file with every default written into it,
 * and which defaults those were. The file is taken as checked (check-rig).
 */
export function settleRig(file: RigFile): { rig: Rig; settled: RigFile; assumptions: Assumption[] } {
  const assumptions: Assumption[] = [];
  const assume = (path: string, value: string, why: string) => assumptions.push({ path, value, why });

  const fuelUse = rangeOf(file.fuel.litresPer100Km, FUEL_HIGH, (high) =>
    assume('/fuel/litresPer100Km/high', `${high} l/100 km`, `typical × ${FUEL_HIGH} (ours)`),
  );
  const toldUse =
    file.water.litresPerDay === undefined
      ? null
      : rangeOf(file.water.litresPerDay, WATER_HIGH, (high) =>
          assume('/water/litresPerDay/high', `${high} l a day`, `typical × ${WATER_HIGH} (ours)`),
        );
  const crew = file.crew === undefined ? null : settleCrew(file.crew, toldUse, assume);
  const waterUse = crew?.use.total ?? toldUse;
  if (waterUse === null) throw new Error('a rig with neither /water/litresPerDay nor /crew was not refused');
  const pace = file.pace.kmPerHour;
  const kmPerHour =
    typeof pace === 'number' ? { slow: pace * PACE_SLOW, typical: pace, fast: pace / PACE_SLOW } : pace;
  if (typeof pace === 'number') {
    assume('/pace/kmPerHour/slow', `${kmPerHour.slow} km/h`, `typical × ${PACE_SLOW} (ours)`);
  }

  const fuelCans = file.fuel.cans ?? { litres: CAN_LITRES, owned: 0 };
  const waterCans = file.water.cans ?? { litres: CAN_LITRES, owned: 0 };
  if (file.fuel.cans === undefined) assume('/fuel/cans', '20 l, none owned', 'usual size (common practice)');
  if (file.water.cans === undefined)
    assume('/water/cans', '20 l, none owned', 'usual size (common practice)');

  const fuelReserve: FuelReserveFile = file.fuel.reserve ?? FUEL_RESERVE;
  const waterReserve: WaterReserveFile = file.water.reserve ?? WATER_RESERVE;
  if (file.fuel.reserve === undefined) assume('/fuel/reserve', '100 km and 10 % of the need', 'ours');
  if (file.water.reserve === undefined) assume('/water/reserve', '2 days', 'ours');

  const bySurface = file.pace.bySurface === undefined ? {} : { bySurface: file.pace.bySurface };
  const fuelModel = settleFuelModel(file.fuel, assume);
  const name = file.name ?? 'unnamed rig';
  const ropeAndBucket = file.equipment?.ropeAndBucket ?? false;
  const line = file.treatment === undefined ? null : settleTreatment(file.treatment, assume);
  const tanksOf = (tanks: RigFile['fuel']['tanks']) =>
    tanks.map((tank) => ({ ...tank, unusableLitres: tank.unusableLitres ?? 0 }));

  return {
    rig: {
      name,
      fuel: {
        kind: file.fuel.kind,
        litresPer100Km: fuelUse,
        drawableL: drawableL(file.fuel.tanks),
        canL: filledL(fuelCans),
        cansOwned: fuelCans.owned,
        reserve: reserveOf(fuelReserve),
        model: fuelModel,
      },
      water: {
        litresPerDay: waterUse,
        grades: crew === null ? null : gradedStore(crew.use, file.water.tanks),
        drawableL: drawableL(file.water.tanks),
        canL: filledL(waterCans),
        cansOwned: waterCans.owned,
        reserve: reserveOf(waterReserve),
      },
      pace: { hoursPerDay: file.pace.hoursPerDay, kmPerHour, ...bySurface },
      ropeAndBucket,
      crew: crew === null ? null : { file: crew.settled, use: crew.use },
      treatment: line?.treatment ?? null,
    },
    settled: settleVehicle(
      {
        name,
        fuel: {
          kind: file.fuel.kind,
          litresPer100Km: fuelUse,
          tanks: tanksOf(file.fuel.tanks),
          cans: fuelCans,
          reserve: fuelReserve,
          ...settledDetail(file.fuel, fuelModel),
        },
        water: {
          ...(toldUse === null ? {} : { litresPerDay: toldUse }),
          tanks: tanksOf(file.water.tanks),
          cans: waterCans,
          reserve: waterReserve,
        },
        pace: { hoursPerDay: file.pace.hoursPerDay, kmPerHour, ...bySurface },
        equipment: { ropeAndBucket },
        ...(crew === null ? {} : { crew: crew.settled }),
        ...(line === null ? {} : { treatment: line.settled }),
        ...(file.vehicle === undefined ? {} : { vehicle: file.vehicle }),
      },
      assume,
    ),
    assumptions,
  };
}

function rangeOf(use: number | UseRange, high: number, assumed: (high: number) => void): UseRange {
  if (typeof use !== 'number') return use;
  assumed(use * high);
  return { low: use / high, typical: use, high: use * high };
}

/** A reserve that names only a share of the need has no base; one that names only a base has no share. */
function reserveOf(file: FuelReserveFile & WaterReserveFile): Reserve {
  const shareOfNeed = file.shareOfNeed ?? 0;
  if (file.km !== undefined) return { base: { unit: 'km', value: file.km }, shareOfNeed };
  if (file.days !== undefined) return { base: { unit: 'days', value: file.days }, shareOfNeed };
  if (file.fraction !== undefined) return { base: { unit: 'fraction', value: file.fraction }, shareOfNeed };
  return { base: { unit: 'litres', value: file.litres ?? 0 }, shareOfNeed };
}
