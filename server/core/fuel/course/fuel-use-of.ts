import type { Caution } from '../../../contract/common.ts';
import type { FuelRange, FuelUse as FuelUseTold, SurfaceRow } from '../../../contract/fuel-use.ts';
import type { RigFile } from '../../../contract/rig.ts';
import { SURFACES, type Surface } from '../../../contract/surface.ts';
import type { Course } from '../../gaps/course.ts';
import { reserveOf } from '../../gaps/need.ts';
import { amountBetween } from '../../gaps/profile.ts';
import type { Assumption } from '../../quantity/assumption.ts';
import type { Term } from '../../quantity/term.ts';
import type { Rig } from '../../rig/rig.ts';
import { climbOf } from '../../route/elevation.ts';
import type { Passing } from '../../supply/points/passing.ts';
import type { SupplyPoint } from '../../supply/points/supply-point.ts';
import { ALLOWANCE_PERCENT, kmBySurface } from '../../surface/surface.ts';
import type { Trip } from '../../trip/settle-trip.ts';
import { coldCautions } from '../engine/cold.ts';
import { fillPercentAt, fillPercentByBoilingPoint, growthL } from '../engine/filling.ts';
import { FUEL_KINDS } from '../engine/kinds.ts';
import { estimateFactors, ROLLING } from '../engine/physics.ts';
import { relativeFactor, SURFACE_FACTORS } from '../engine/surface-factors.ts';
import type { FuelPlan } from './fuel-course.ts';
import { liftedMassKg, loadFactorOf, type Rate, routeLitres } from './fuel-profiles.ts';
import { ureaOf } from './urea.ts';

export interface FuelUseSources {
  plan: FuelPlan;
  /** The course that the verdicts were reckoned on. */
  course: Course;
  /** As reckoned with, for the containers' names. */
  file: RigFile['fuel'];
  trip: Trip;
  passings: readonly Passing[];
  points: readonly SupplyPoint[];
}

/** The fuel of a trip in full. */
export type FuelUse = Omit<FuelUseTold, 'terms'> & { readonly terms: readonly Term[] };

/** The fuel of a trip, with what is to be said of it. */
export interface FuelUseReport {
  fuelUse: FuelUse;
  cautions: Caution[];
  assumptions: Assumption[];
}

/** Filling happens cool, the sun does the rest: 15 to 50 °C, the temperatures of ADR 4.1.1.4. */
const COOL_C = 15;
const WARMING_K = 35;

/** The fuel of a trip in full: ranges, surfaces, load, climb, containers, urea, and what to know about them. */
export function fuelUseOf(sources: FuelUseSources): FuelUseReport {
  const { plan, course, trip } = sources;
  const { facts } = plan;
  const { rig } = facts;
  const model = rig.fuel.model;
  const kind = FUEL_KINDS[rig.fuel.kind];
  const baseReserveL = reserveOf(course, 0).litres;

  const totals = {
    low: routeTotal(sources, 'low'),
    typical: routeTotal(sources, 'typical'),
    high: routeTotal(sources, 'high'),
  };
  const lengthKm = facts.lengthM / 1000;
  const rangesAt = (rateOf: (rate: Rate) => number) => ({
    low: rangeAt(rig, rateOf('low'), baseReserveL),
    typical: rangeAt(rig, rateOf('typical'), baseReserveL),
    high: rangeAt(rig, rateOf('high'), baseReserveL),
  });
  const urea =
    model.urea === null || model.urea === undefined
      ? null
      : ureaOf({
          urea: model.urea,
          lengthM: facts.lengthM,
          wayM: course.wayM,
          offWay: course.off.wayM,
          passings: sources.passings,
          points: sources.points,
          onwardKm: trip.onward?.km ?? 0,
        });
  return {
    fuelUse: {
      model: plan.full ? 'full' : 'even',
      range: rangesAt((rate) => rig.fuel.litresPer100Km[rate]),
      onRoute: rangesAt((rate) => (totals[rate] / lengthKm) * 100),
      routeL: totals,
      terms: course.explain(0, facts.lengthM),
      observed: model.observed,
      surfaces: surfaceRows(plan, trip),
      load: loadOf(plan),
      climb: climbRow(plan),
      fuel: {
        label: kind.label,
        densityKgPerM3: kind.densityKgPerM3,
        energyMJPerL: kind.energyMJPerL,
        source: kind.source,
      },
      filling: fillingRows(rig, sources.file),
      urea: urea?.urea ?? null,
    },
    cautions: [...coldCautions(rig.fuel.kind, trip.coldestNightC), ...(urea?.cautions ?? [])],
    assumptions: plan.full ? surfaceAssumptions(plan) : [],
  };
}

function routeTotal({ plan, course }: FuelUseSources, rate: Rate): number {
  if (plan.full) return routeLitres(plan.facts, rate).litres;
  const { lengthM, rig } = plan.facts;
  const highL = amountBetween(course.litres.out, 0, lengthM);
  return rate === 'high' ? highL : (highL * rig.fuel.litresPer100Km[rate]) / rig.fuel.litresPer100Km.high;
}

/** The base of the reserve goes at the rate the verdict uses; its share of the need goes with the need. */
function rangeAt(rig: Rig, litresPer100Km: number, baseReserveL: number): FuelRange {
  const { drawableL, reserve } = rig.fuel;
  const usableL = Math.max(0, (drawableL - baseReserveL) / (1 + reserve.shareOfNeed));
  return {
    litresPer100Km,
    beforeKm: (drawableL / litresPer100Km) * 100,
    afterKm: (usableL / litresPer100Km) * 100,
  };
}

function surfaceRows(plan: FuelPlan, trip: Trip): SurfaceRow[] {
  const { facts } = plan;
  const { fuel } = facts.rig;
  const { model } = fuel;
  const km = kmBySurface(facts.spans);
  const massKg = liftedMassKg(facts.rig, facts.massKg);
  const estimate =
    massKg === null
      ? null
      : estimateFactors({
          massKg,
          litresPer100Km: fuel.litresPer100Km.typical,
          observed: model.observed.surface,
          efficiency: model.climb.efficiency,
          energyMJPerL: FUEL_KINDS[fuel.kind].energyMJPerL.typical,
          dragAreaM2: model.physics.dragAreaM2,
          tyreBar: model.physics.tyreBar,
          kmPerHour: (surface) => facts.kmPerHour(surface, 'typical'),
        });
  return SURFACES.map((surface): SurfaceRow => {
    const rolling = surface === 'unknown' ? null : ROLLING[surface];
    return {
      surface,
      km: km.get(surface) ?? 0,
      allowancePercent: surface === 'unknown' ? trip.allowancePercent : ALLOWANCE_PERCENT[surface],
      tableFactor: model.factors[surface],
      from: model.ownFactors.includes(surface) ? 'rig' : 'ours',
      factor: relativeFactor(model.factors, surface, model.observed.surface),
      estimate: estimate?.[surface] ?? null,
      trust: rolling === null ? 'No estimate for what is not known' : `${rolling.trust}. ${rolling.source}`,
    };
  });
}

function loadOf({ facts }: FuelPlan): FuelUse['load'] {
  const { observed, loadPercentPer100Kg } = facts.rig.fuel.model;
  if (facts.massKg === null || observed.massKg === null || loadPercentPer100Kg === null) return null;
  return {
    massKg: facts.massKg,
    observedKg: observed.massKg,
    percentPer100Kg: loadPercentPer100Kg,
    factor: loadFactorOf(facts.rig, facts.massKg),
  };
}

function climbRow(plan: FuelPlan): FuelUse['climb'] {
  const { facts, measured } = plan;
  if (facts.heights === null || measured === null) return null;
  const { climb } = facts.rig.fuel.model;
  return {
    ...climbOf(facts.heights.eleM),
    rawUpM: climbOf(measured.eleM).upM,
    ...climb,
    litres: plan.full ? routeLitres(facts, 'high').climbL : null,
  };
}

function fillingRows(rig: Rig, file: RigFile['fuel']): FuelUse['filling'] {
  const { expansionPerK, initialBoilingC } = FUEL_KINDS[rig.fuel.kind];
  if (initialBoilingC === null) return [];
  const containers = [
    ...file.tanks,
    ...(file.cans === undefined || file.cans.owned === 0 ? [] : [{ name: 'can', ...file.cans }]),
  ];
  return containers.map(({ name, litres, fillPercent }) => ({
    name,
    litres,
    fillPercent: fillPercent ?? 100,
    safePercent: fillPercentAt(expansionPerK, COOL_C),
    boilingPercent: fillPercentByBoilingPoint(initialBoilingC),
    growsL: growthL(litres, expansionPerK, WARMING_K),
  }));
}

/** The factors and allowances of ours that came to bear on this route. */
function surfaceAssumptions({ facts }: FuelPlan): Assumption[] {
  const { observed, ownFactors } = facts.rig.fuel.model;
  const used = [...new Set<Surface>(facts.spans.map((span) => span.surface))];
  const factors = used
    .filter((surface) => surface !== observed.surface && !ownFactors.includes(surface))
    .map((surface) => ({
      path: `/rig/fuel/surfaceFactors/${surface}`,
      value: `${SURFACE_FACTORS[surface]} × sealed road`,
      why: 'ours',
    }));
  const allowances = used.flatMap((surface): Assumption[] => {
    if (surface === 'unknown') return [];
    const percent = ALLOWANCE_PERCENT[surface];
    const bears = facts.spans.some((span) => span.surface === surface && span.allowancePercent === percent);
    if (!bears) return [];
    return [{ path: '/trip/surfaces', value: `${surface}: ${percent} % for bends`, why: 'ours' }];
  });
  if (observed.surface !== 'unknown') return [...factors, ...allowances];
  const why = 'not told: surfaces are reckoned from sealed road and never lower the rate (ours)';
  return [{ path: '/rig/fuel/observed/surface', value: 'unknown', why }, ...factors, ...allowances];
}
