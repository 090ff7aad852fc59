import type { RigFile } from '../../../contract/rig.ts';
import { FILL_PERCENT } from '../../defaults/rig-defaults.ts';
import type { Course } from '../../gaps/course/course.ts';
import { amountBetween } from '../../gaps/course/profile.ts';
import { reserveOf } from '../../gaps/need.ts';
import type { Caution } from '../../phrases/cautions.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import type { Assumption } from '../../quantity/assumption.ts';
import { litresPer100Km, litresPerM } from '../../quantity/rates.ts';
import type { Rig } from '../../rig/rig.ts';
import { climbOf } from '../../route/elevation.ts';
import type { Passing } from '../../supply/points/passing.ts';
import type { SupplyPoint } from '../../supply/points/supply-point.ts';
import type { Trip } from '../../trip/settle-trip.ts';
import { coldCautions } from '../engine/cold.ts';
import { fillPercentAt, fillPercentByBoilingPoint, growthL } from '../engine/filling.ts';
import { FUEL_KINDS } from '../engine/kinds.ts';
import type { FuelPlan } from './fuel-course.ts';
import type { FuelFacts, Rate } from './fuel-facts.ts';
import { routeLitres } from './fuel-profiles.ts';
import type { ClimbRow, FillingRow, FuelRange, FuelUse, LoadRow } from './fuel-use.ts';
import { loadFactorOf } from './surface-rate.ts';
import { surfaceAssumptions, surfaceRows } from './surface-rows.ts';
import { type UreaReport, ureaOf } from './urea.ts';

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

/** The fuel of a trip, with what is to be said of it. */
export interface FuelUseReport {
  readonly fuelUse: FuelUse;
  readonly cautions: readonly Caution[];
  readonly assumptions: readonly Assumption[];
}

/** Filling happens cool, the sun does the rest: 15 to 50 °C, the temperatures of ADR 4.1.1.4. */
const COOL_C = 15;
const WARMING_K = 35;

/** The fuel of a trip in full: ranges, surfaces, load, climb, containers, urea, and what to know about them. */
export function fuelUseOf(sources: FuelUseSources): FuelUseReport {
  const { plan, course, trip } = sources;
  const { facts } = plan;
  const { kind, model } = facts.rig.fuel;
  const urea = ureaReport(sources);
  return {
    fuelUse: {
      model: plan.full ? 'full' : 'even',
      ...rangesOf(sources),
      terms: course.explain(0, facts.lengthM),
      observed: model.observed,
      surfaces: surfaceRows(facts),
      load: loadRow(facts),
      climb: climbRow(plan),
      fuel: {
        label: { phrase: 'fuel-kind', facts: { kind } },
        densityKgPerM3: FUEL_KINDS[kind].densityKgPerM3,
        energyMJPerL: FUEL_KINDS[kind].energyMJPerL,
        source: { phrase: 'fuel-kind-source', facts: { kind } },
      },
      filling: fillingRows(facts.rig, sources.file),
      urea: urea?.urea ?? null,
    },
    cautions: [
      ...coldCautions(kind, trip.coldestNightC),
      ...gasCautions(facts.rig),
      ...(urea?.cautions ?? []),
    ],
    assumptions: plan.full ? surfaceAssumptions(facts) : [],
  };
}

/** Pumps sell CNG by the kilogram, the rig has litres of tank: what they come to. */
function gasCautions({ fuel }: Rig): Caution[] {
  if (fuel.kind !== 'cng') return [];
  const kgPerL = FUEL_KINDS.cng.densityKgPerM3.typical / 1000;
  const facts = {
    tanksKg: fuel.drawableL * kgPerL,
    kgPer100Km: fuel.litresPer100Km.high * kgPerL,
    kgPerLitre: kgPerL,
  };
  return [{ code: 'cng-kilograms', facts }];
}

function ureaReport({ plan, course, trip, passings, points }: FuelUseSources): UreaReport | null {
  const { rig, lengthM } = plan.facts;
  const { urea } = rig.fuel.model;
  if (urea === null || urea === undefined) return null;
  const onwardM = trip.onward?.m ?? 0;
  const fuelL = { along: course.litres.out, off: course.off.litres };
  return ureaOf({
    urea,
    fuelL,
    lengthM,
    wayM: course.wayM,
    offWay: course.off.wayM,
    passings,
    points,
    onwardM,
  });
}

/** How far a full load goes at the rig's own rate and at that of the route, and what the route takes. */
function rangesOf(sources: FuelUseSources): Pick<FuelUse, 'range' | 'onRoute' | 'routeL'> {
  const { rig, lengthM } = sources.plan.facts;
  const baseReserveL = reserveOf(sources.course, 0, null).litres;
  const routeL = {
    low: routeTotal(sources, 'low'),
    typical: routeTotal(sources, 'typical'),
    high: routeTotal(sources, 'high'),
  };
  const rangesAt = (rateOf: (rate: Rate) => number) => ({
    low: rangeAt(rig, rateOf('low'), baseReserveL),
    typical: rangeAt(rig, rateOf('typical'), baseReserveL),
    high: rangeAt(rig, rateOf('high'), baseReserveL),
  });
  return {
    range: rangesAt((rate) => rig.fuel.litresPer100Km[rate]),
    onRoute: rangesAt((rate) => litresPer100Km(routeL[rate] / lengthM)),
    routeL,
  };
}

function routeTotal({ plan, course }: FuelUseSources, rate: Rate): number {
  if (plan.full) return routeLitres(plan.facts, rate).litres;
  const { lengthM, rig } = plan.facts;
  const highL = amountBetween(course.litres.out, 0, lengthM);
  return rate === 'high' ? highL : (highL * rig.fuel.litresPer100Km[rate]) / rig.fuel.litresPer100Km.high;
}

/** The base of the reserve goes at the rate the verdict uses; its share of the need goes with the need. */
function rangeAt(rig: Rig, rate: number, baseReserveL: number): FuelRange {
  const { drawableL, reserve } = rig.fuel;
  const usableL = Math.max(0, (drawableL - baseReserveL) / (1 + reserve.shareOfNeed));
  const perM = litresPerM(rate);
  return { litresPer100Km: rate, beforeM: drawableL / perM, afterM: usableL / perM };
}

function loadRow({ rig, massKg }: FuelFacts): LoadRow | null {
  const { observed, loadPercentPer100Kg } = rig.fuel.model;
  if (massKg === null || observed.massKg === null || loadPercentPer100Kg === null) return null;
  return {
    massKg,
    observedKg: observed.massKg,
    percentPer100Kg: loadPercentPer100Kg,
    factor: loadFactorOf(rig, massKg),
  };
}

function climbRow({ facts, measured, full }: FuelPlan): ClimbRow | null {
  if (facts.heights === null || measured === null) return null;
  return {
    ...climbOf(facts.heights.eleM),
    rawUpM: climbOf(measured.eleM).upM,
    ...facts.rig.fuel.model.climb,
    litres: full ? routeLitres(facts, 'high').climbL : null,
  };
}

function fillingRows(rig: Rig, { tanks, cans }: RigFile['fuel']): FillingRow[] {
  const { expansionPerK, initialBoilingC } = FUEL_KINDS[rig.fuel.kind];
  if (initialBoilingC === null) return [];
  const row = (name: Phrase, { litres, fillPercent }: { litres: number; fillPercent?: number }) => ({
    name,
    litres,
    fillPercent: fillPercent ?? FILL_PERCENT,
    safePercent: fillPercentAt(expansionPerK, COOL_C),
    boilingPercent: fillPercentByBoilingPoint(initialBoilingC),
    growsL: growthL(litres, expansionPerK, WARMING_K),
  });
  return [
    ...tanks.map((tank) => row({ phrase: 'own-name', facts: { name: tank.name } }, tank)),
    ...(cans === undefined || cans.owned === 0 ? [] : [row({ phrase: 'can', facts: {} }, cans)]),
  ];
}
