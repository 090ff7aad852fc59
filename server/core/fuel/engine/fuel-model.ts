import type { FuelKind, RigFile } from '../../../contract/rig.ts';
import { SURFACES, type Surface } from '../../../contract/surface.ts';
import type { Assumption } from '../../quantity/assumption.ts';
import { FUEL_KINDS } from './kinds.ts';
import { defaultLoadPercent } from './load.ts';
import { DRAG_AREA_M2 } from './physics.ts';
import { SURFACE_FACTORS } from './surface-factors.ts';

/** How a rig uses fuel beyond its rate, every default filled in. */
export interface FuelModel {
  /** False when the rig file says nothing of all this: then one rate holds all the way, unless the trip names surfaces. */
  told: boolean;
  observed: { surface: Surface; massKg: number | null };
  factors: Record<Surface, number>;
  /** Surfaces whose factor the user gave. */
  ownFactors: readonly Surface[];
  /** Percent for each 100 kg above the observed mass; null where that mass is not told. */
  loadPercentPer100Kg: number | null;
  /** Litres per hour; 0 where nothing goes. */
  perHour: { idling: number; crawling: number; airConditioning: number; heater: number };
  hours: { idlingPerDay: number; airConditioningPerDay: number; heaterPerNight: number };
  climb: { efficiency: number; giveBack: number; thresholdM: number };
  engine: NonNullable<RigFile['fuel']['engine']>;
  urea: RigFile['fuel']['urea'] | null;
  physics: { dragAreaM2: number; tyreBar: number | null };
}

/** Share of a descent's energy that spares fuel (ours: the rest goes into brakes and an engine that turns anyway). */
const GIVE_BACK = 0.3;
/** Rises and falls up to this are taken for noise of the measuring, metres (ours). */
const THRESHOLD_M = 10;
/** Air conditioning on top of idling, and a fuel-burning heater on a middle setting, litres per hour (ours). */
const COOLING_L_PER_HOUR = 0.6;
const HEATER_L_PER_HOUR = 0.25;

type FuelFile = RigFile['fuel'];
type Assume = (path: Assumption['path'], value: string, why: string) => void;

/** The parts of a rig's fuel that make it more than one rate all the way. */
const DETAIL = [
  'observed',
  'surfaceFactors',
  'perHour',
  'hours',
  'climb',
  'loadPercentPer100Kg',
] as const satisfies (keyof FuelFile)[];

/** Fills in what a rig file leaves out of its fuel use. Only defaults that come to bear are told as assumptions. */
export function settleFuelModel(file: FuelFile, assume: Assume): FuelModel {
  const told = DETAIL.some((key) => file[key] !== undefined);
  const kind = FUEL_KINDS[file.kind];
  const massKg = file.observed?.massKg ?? null;
  const rate = (path: string, given: number | undefined, hours: number, standard: number, why: string) => {
    if (given !== undefined) return given;
    if (hours === 0) return 0;
    assume(`/fuel/perHour/${path}`, `${standard.toFixed(2)} l/h`, why);
    return standard;
  };
  const hours = {
    idlingPerDay: file.hours?.idlingPerDay ?? 0,
    airConditioningPerDay: file.hours?.airConditioningPerDay ?? 0,
    heaterPerNight: file.hours?.heaterPerNight ?? 0,
  };
  const idling = rate(
    'idling',
    file.perHour?.idling,
    hours.idlingPerDay,
    kind.idlingLPerHour,
    idlingSource(file.kind),
  );
  return {
    told,
    observed: { surface: file.observed?.surface ?? 'unknown', massKg },
    factors: { ...SURFACE_FACTORS, ...file.surfaceFactors },
    ownFactors: SURFACES.filter((surface) => file.surfaceFactors?.[surface] !== undefined),
    loadPercentPer100Kg: massKg === null ? null : loadPercent(file, massKg, assume),
    perHour: {
      idling,
      crawling: file.perHour?.crawling ?? 0,
      airConditioning: rate(
        'airConditioning',
        file.perHour?.airConditioning,
        hours.airConditioningPerDay,
        (file.perHour?.idling ?? kind.idlingLPerHour) + COOLING_L_PER_HOUR,
        `idling and ${COOLING_L_PER_HOUR} l/h for cooling (ours)`,
      ),
      heater: rate('heater', file.perHour?.heater, hours.heaterPerNight, HEATER_L_PER_HOUR, 'ours'),
    },
    hours,
    climb: climbOf(file, massKg, kind.climbEfficiency, assume),
    engine: file.engine ?? {},
    urea: file.urea ?? null,
    physics: physicsOf(file, massKg, assume),
  };
}

const idlingSource = (kind: FuelKind) =>
  kind === 'diesel' || kind === 'petrol'
    ? `${kind === 'diesel' ? 'medium heavy diesel' : 'large petrol sedan'}, US DOE Fact of the Week 861`
    : 'petrol of US DOE Fact of the Week 861, by energy of a litre (ours)';

function loadPercent(file: FuelFile, massKg: number, assume: Assume): number {
  if (file.loadPercentPer100Kg !== undefined) return file.loadPercentPer100Kg;
  const percent = defaultLoadPercent(massKg);
  assume(
    '/fuel/loadPercentPer100Kg',
    `${percent.toFixed(2)} %`,
    'published 1 % for 100 lb of an average car, by the mass of this vehicle (scaling ours)',
  );
  return percent;
}

function climbOf(file: FuelFile, massKg: number | null, efficiency: number, assume: Assume) {
  const settle = (key: 'efficiency' | 'giveBack' | 'thresholdM', standard: number, unit: string) => {
    const given = file.climb?.[key];
    if (given !== undefined) return given;
    if (massKg !== null) assume(`/fuel/climb/${key}`, `${standard}${unit}`, 'ours');
    return standard;
  };
  return {
    efficiency: settle('efficiency', efficiency, ''),
    giveBack: settle('giveBack', GIVE_BACK, ''),
    thresholdM: settle('thresholdM', THRESHOLD_M, ' m'),
  };
}

function physicsOf(file: FuelFile, massKg: number | null, assume: Assume): FuelModel['physics'] {
  const told = file.physics?.dragAreaM2;
  if (told === undefined && massKg !== null) {
    assume('/fuel/physics/dragAreaM2', `${DRAG_AREA_M2} m²`, 'ours; for the estimate from physics only');
  }
  return { dragAreaM2: told ?? DRAG_AREA_M2, tyreBar: file.physics?.tyreBar ?? null };
}

/** What a rig file told of its fuel use, with the defaults that come to bear written into it. */
export function settledDetail(file: FuelFile, model: FuelModel): Partial<FuelFile> {
  const { observed, surfaceFactors, hours, engine, urea, physics } = file;
  const { perHour } = model;
  const rates = {
    ...(perHour.idling > 0 ? { idling: perHour.idling } : {}),
    ...(perHour.crawling > 0 ? { crawling: perHour.crawling } : {}),
    ...(perHour.airConditioning > 0 ? { airConditioning: perHour.airConditioning } : {}),
    ...(perHour.heater > 0 ? { heater: perHour.heater } : {}),
  };
  const massTold = model.observed.massKg !== null;
  return {
    ...(observed === undefined ? {} : { observed }),
    ...(surfaceFactors === undefined ? {} : { surfaceFactors }),
    ...(file.perHour === undefined && hours === undefined ? {} : { perHour: { ...file.perHour, ...rates } }),
    ...(hours === undefined ? {} : { hours }),
    ...(file.climb === undefined && !massTold ? {} : { climb: model.climb }),
    ...(model.loadPercentPer100Kg === null ? {} : { loadPercentPer100Kg: model.loadPercentPer100Kg }),
    ...(file.loadPercentPer100Kg === undefined || massTold
      ? {}
      : { loadPercentPer100Kg: file.loadPercentPer100Kg }),
    ...(engine === undefined ? {} : { engine }),
    ...(urea === undefined ? {} : { urea }),
    ...(physics === undefined && !massTold
      ? {}
      : { physics: { ...physics, dragAreaM2: model.physics.dragAreaM2 } }),
  };
}
