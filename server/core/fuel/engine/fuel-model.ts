import type { RigFile } from '../../../contract/rig.ts';
import { SURFACES, type Surface } from '../../../contract/surface.ts';
import {
  COOLING_L_PER_HOUR,
  DRAG_AREA_M2,
  GIVE_BACK,
  HEATER_L_PER_HOUR,
  THRESHOLD_M,
} from '../../defaults/rig-defaults.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import { type Assume, OURS } from '../../quantity/assumption.ts';
import { FUEL_KINDS } from './kinds.ts';
import { defaultLoadPercent } from './load.ts';
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

type FuelFile = RigFile['fuel'];

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
  const massKg = file.observed?.massKg ?? null;
  const hours = {
    idlingPerDay: file.hours?.idlingPerDay ?? 0,
    airConditioningPerDay: file.hours?.airConditioningPerDay ?? 0,
    heaterPerNight: file.hours?.heaterPerNight ?? 0,
  };
  return {
    told: DETAIL.some((key) => file[key] !== undefined),
    observed: { surface: file.observed?.surface ?? 'unknown', massKg },
    factors: { ...SURFACE_FACTORS, ...file.surfaceFactors },
    ownFactors: SURFACES.filter((surface) => file.surfaceFactors?.[surface] !== undefined),
    loadPercentPer100Kg: massKg === null ? null : loadPercent(file, massKg, assume),
    perHour: perHourOf(file, hours, assume),
    hours,
    climb: climbOf(file, massKg, assume),
    engine: file.engine ?? {},
    urea: file.urea ?? null,
    physics: physicsOf(file, massKg, assume),
  };
}

/** Litres an hour: the user's, else a default where the engine or the heater runs by the hour at all. */
function perHourOf(file: FuelFile, hours: FuelModel['hours'], assume: Assume): FuelModel['perHour'] {
  const { kind, perHour } = file;
  const idlingL = FUEL_KINDS[kind].idlingLPerHour;
  const rate = (
    key: 'idling' | 'airConditioning' | 'heater',
    hoursOfIt: number,
    { litres, why }: { litres: number; why: Phrase },
  ) => {
    const own = perHour?.[key];
    if (own !== undefined) return own;
    if (hoursOfIt === 0) return 0;
    assume(`/fuel/perHour/${key}`, { phrase: 'litres-an-hour', facts: { litres } }, why);
    return litres;
  };
  return {
    idling: rate('idling', hours.idlingPerDay, {
      litres: idlingL,
      why: { phrase: 'idling-source', facts: { kind } },
    }),
    crawling: perHour?.crawling ?? 0,
    airConditioning: rate('airConditioning', hours.airConditioningPerDay, {
      litres: (perHour?.idling ?? idlingL) + COOLING_L_PER_HOUR,
      why: { phrase: 'idling-and-cooling', facts: { coolingLPerHour: COOLING_L_PER_HOUR } },
    }),
    heater: rate('heater', hours.heaterPerNight, { litres: HEATER_L_PER_HOUR, why: OURS }),
  };
}

function loadPercent(file: FuelFile, massKg: number, assume: Assume): number {
  if (file.loadPercentPer100Kg !== undefined) return file.loadPercentPer100Kg;
  const percent = defaultLoadPercent(massKg);
  const value: Phrase = { phrase: 'percent-exactly', facts: { percent } };
  assume('/fuel/loadPercentPer100Kg', value, { phrase: 'load-published', facts: {} });
  return percent;
}

function climbOf(file: FuelFile, massKg: number | null, assume: Assume): FuelModel['climb'] {
  const settle = (key: keyof FuelModel['climb'], standard: number, value: Phrase) => {
    const own = file.climb?.[key];
    if (own !== undefined) return own;
    if (massKg !== null) assume(`/fuel/climb/${key}`, value, OURS);
    return standard;
  };
  const share = (value: number): Phrase => ({ phrase: 'number', facts: { value } });
  const efficiency = FUEL_KINDS[file.kind].climbEfficiency;
  return {
    efficiency: settle('efficiency', efficiency, share(efficiency)),
    giveBack: settle('giveBack', GIVE_BACK, share(GIVE_BACK)),
    thresholdM: settle('thresholdM', THRESHOLD_M, { phrase: 'metres', facts: { m: THRESHOLD_M } }),
  };
}

function physicsOf(file: FuelFile, massKg: number | null, assume: Assume): FuelModel['physics'] {
  const own = file.physics?.dragAreaM2;
  if (own === undefined && massKg !== null) {
    const value: Phrase = { phrase: 'square-metres', facts: { m2: DRAG_AREA_M2 } };
    assume('/fuel/physics/dragAreaM2', value, { phrase: 'physics-only', facts: {} });
  }
  return { dragAreaM2: own ?? DRAG_AREA_M2, tyreBar: file.physics?.tyreBar ?? null };
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
