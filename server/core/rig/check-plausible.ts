import type { RigFile } from '../../contract/rig.ts';
import type { Surface } from '../../contract/surface.ts';
import type { TripFile } from '../../contract/trip.ts';
import { FUEL_KINDS, REGULATORY_MJ_PER_L } from '../fuel/engine/kinds.ts';
import type { Misfit, UnusualUnit } from '../phrases/misfits.ts';

/** A figure with the range in which it usually lies; the ranges are ours. */
interface Figure {
  readonly path: string;
  readonly value: number | undefined;
  readonly least: number;
  readonly most: number;
  readonly unit: UnusualUnit;
}

/** Speed of a day's journey, and hours at the wheel with a second driver. */
const MOST_KM_PER_HOUR = 130;
const MOST_HOURS_PER_DAY = 16;
/** Where the height of the roof is not told. */
const MOST_CG_HEIGHT_M = 2;
/** Of the kerb mass: roofs of cars bear some 50 to 150 kg. */
const MOST_ROOF_SHARE = 0.5;
const MOST_PET_KG = { dog: 120, cat: 15, other: 1000 };
/** Slower than on a sealed road some vehicles use a little less on gravel; nothing rolls easier in what is soft. */
const LEAST_FACTOR: Partial<Record<Surface, number>> = {
  gravel: 0.8,
  track: 0.9,
  sand: 1,
  rock: 0.9,
  mud: 1,
};
const MOST_FACTOR = 10;

/**
 * The first figure outside the range in which such figures usually lie; null when there is none. Those that `sure` lists
 * by their path are taken as they are.
 */
export function checkPlausible(rig: RigFile): Misfit | null {
  return unusual([...fuelFigures(rig), ...paceFigures(rig), ...vehicleFigures(rig)], rig.sure);
}

/** The same of a trip. */
export const checkTripPlausible = (trip: TripFile): Misfit | null =>
  unusual([hoursFigure('/campAfterHours', trip.campAfterHours)], trip.sure);

function unusual(figures: readonly Figure[], sure: readonly string[] = []): Misfit | null {
  for (const { path, value, least, most, unit } of figures) {
    if (value === undefined || (value >= least && value <= most) || sure.includes(path)) continue;
    return { path, misfit: 'unusual', facts: { value, least, most, unit } };
  }
  return null;
}

/** Use against mass: from 0.5 l a tonne and a litre to 12 l a tonne and ten litres, in diesel of the same energy. */
function fuelFigures({ fuel, vehicle }: RigFile): Figure[] {
  const use = fuel.litresPer100Km;
  const tonnes = (vehicle?.kerbKg ?? fuel.observed?.massKg ?? Number.NaN) / 1000;
  const dieselPerLitre = REGULATORY_MJ_PER_L.diesel / FUEL_KINDS[fuel.kind].energyMJPerL.typical;
  const rate: Figure = {
    path: '/fuel/litresPer100Km',
    value: typeof use === 'number' ? use : use.typical,
    least: rounded((1 + 0.5 * tonnes) * dieselPerLitre),
    most: rounded((10 + 12 * tonnes) * dieselPerLitre),
    unit: 'l/100 km',
  };
  const factors = Object.entries(LEAST_FACTOR).map(
    ([surface, least]): Figure => ({
      path: `/fuel/surfaceFactors/${surface}`,
      value: fuel.surfaceFactors?.[surface as Surface],
      least,
      most: MOST_FACTOR,
      unit: 'surface-factor',
    }),
  );
  return [...(Number.isNaN(tonnes) ? [] : [rate]), ...factors];
}

const rounded = (litres: number): number => Math.round(litres * 10) / 10;

function paceFigures({ pace }: RigFile): Figure[] {
  const bySurface = Object.entries(pace.bySurface ?? {}).flatMap(([surface, own]) => [
    speedFigure(`/pace/bySurface/${surface}/kmPerHour`, own.kmPerHour),
    hoursFigure(`/pace/bySurface/${surface}/hoursPerDay`, own.hoursPerDay),
  ]);
  return [
    speedFigure('/pace/kmPerHour', pace.kmPerHour),
    hoursFigure('/pace/hoursPerDay', pace.hoursPerDay),
    ...bySurface,
  ];
}

const speedFigure = (path: string, speed: RigFile['pace']['kmPerHour']): Figure => ({
  path,
  value: typeof speed === 'number' ? speed : speed.typical,
  least: 0,
  most: MOST_KM_PER_HOUR,
  unit: 'km/h',
});

const hoursFigure = (path: string, value: number | undefined): Figure => ({
  path,
  value,
  least: 0,
  most: MOST_HOURS_PER_DAY,
  unit: 'driving-hours',
});

function vehicleFigures({ vehicle, crew }: RigFile): Figure[] {
  const pets = (crew?.pets ?? []).map(
    ({ kind, kg }, index): Figure => ({
      path: `/crew/pets/${index}/kg`,
      value: kg,
      least: 0,
      most: MOST_PET_KG[kind],
      unit: 'kg',
    }),
  );
  if (vehicle === undefined) return pets;
  const { kerbKg, cgHeightM, cabin, permitted } = vehicle;
  return [
    ...pets,
    {
      path: '/vehicle/cgHeightM',
      value: cgHeightM,
      least: 0,
      most: Math.min(cabin?.roofHeightM ?? MOST_CG_HEIGHT_M, MOST_CG_HEIGHT_M),
      unit: 'height',
    },
    {
      path: '/vehicle/permitted/roofKg',
      value: permitted?.roofKg,
      least: 0,
      most: kerbKg * MOST_ROOF_SHARE,
      unit: 'kg',
    },
  ];
}
