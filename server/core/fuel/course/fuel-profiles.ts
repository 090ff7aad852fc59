import type { Surface } from '../../../contract/surface.ts';
import type { Stay } from '../../gaps/course.ts';
import { SKETCHY_FACTOR } from '../../gaps/even-course.ts';
import { amountBetween, type Profile, profileOf } from '../../gaps/profile.ts';
import type { SpanM } from '../../quantity/span.ts';
import type { Term } from '../../quantity/term.ts';
import type { Rig } from '../../rig/rig.ts';
import type { Heights } from '../../route/elevation.ts';
import type { SurfaceSpan } from '../../surface/surface.ts';
import { FUEL_KINDS } from '../engine/kinds.ts';
import { liftL } from '../engine/lift.ts';
import { loadFactor } from '../engine/load.ts';
import { relativeFactor } from '../engine/surface-factors.ts';
import { type ClimbFacts, climbProfiles, climbTotalL } from './climb-profile.ts';
import { summedProfiles } from './summed-profiles.ts';

/** Nights spent at a place of the route. */
export interface NightsAt {
  atM: number;
  nights: number;
}

/** What fuel use along a route is made of, beside the rig itself. */
export interface FuelFacts {
  lengthM: number;
  rig: Rig;
  /** Tile the route. */
  spans: readonly SurfaceSpan[];
  sketchy: readonly SpanM[];
  /** In route order. */
  stays: readonly Stay[];
  nights: readonly NightsAt[];
  /** Smoothed; null where the route has no elevations. */
  heights: Heights | null;
  /** Mass now, kg; null where neither it nor the observed mass is told: then no climb is reckoned. */
  massKg: number | null;
  /** For the way off the route, percent. */
  allowancePercent: number;
  kmPerHour: (surface: Surface, pace: Pace) => number;
  hoursPerDay: (surface: Surface) => number;
}

export type Rate = 'low' | 'typical' | 'high';
export type Pace = 'slow' | 'typical' | 'fast';

/** The pace that goes with each rate: who uses most is on the road longest. */
const PACE_OF: Record<Rate, Pace> = { low: 'fast', typical: 'typical', high: 'slow' };

export interface FuelProfiles {
  /** Metres of way, allowance and straight lines included. */
  wayM: Profile;
  out: Profile;
  home: Profile;
  /** Litres for a metre of way off the route, where the surface is unknown. */
  offLPerWayM: number;
  /** The terms that the litres of a stretch, driven forwards, were summed from. */
  explain: (fromM: number, toM: number) => Term[];
}

/**
 * Litres along the route at one end of the rig's range: way × rate × surface × load (or by the hour where that is
 * more, on slow stretches), climbs, and what goes by the hour. With one surface, no load, no climb and no hours this
 * is the even course, to the last bit.
 */
export function fuelProfiles(given: FuelFacts, rate: Rate): FuelProfiles {
  const { rig } = given;
  const facts = withNightsThatCount(given);
  const perSurface = (surface: Surface) => rateOn(facts, surface, rate);
  const litresPer100Km = rig.fuel.litresPer100Km[rate];

  const wayM = profileOf(
    stepsOf(
      facts,
      () => 1,
      (atM) => (stayDaysAt(facts, atM) === 0 ? null : 0),
    ),
  );
  const running = runningOf(facts, rate);

  const hours = hoursAlong(facts, rate);

  const climbFacts = climbFactsOf(facts, running);
  const climb = climbFacts === null ? null : climbProfiles(climbFacts);

  const outParts = [running, ...(hours === null ? [] : [hours.out]), ...(climb === null ? [] : [climb.out])];
  const homeParts = [
    running,
    ...(hours === null ? [] : [hours.home]),
    ...(climb === null ? [] : [climb.home]),
  ];
  return {
    wayM,
    out: summedProfiles(outParts),
    home: summedProfiles(homeParts),
    offLPerWayM: perSurface('unknown').litresPerWayM + (hours?.perWayM('unknown') ?? 0),
    explain: (fromM, toM) => {
      const terms = runningTerms(facts, wayM, running, fromM, toM, (surface) =>
        perSurface(surface).label(litresPer100Km),
      );
      if (climb !== null) {
        const label = `climbs less what descents spare, ${Math.round(liftedMassKg(rig, facts.massKg) ?? 0)} kg`;
        terms.push({ label, value: amountBetween(climb.out, fromM, toM), unit: 'l' });
      }
      if (hours !== null) {
        const label = 'by the hour: idling, cooling, heating';
        terms.push({ label, value: amountBetween(hours.out, fromM, toM), unit: 'l' });
      }
      return terms;
    },
  };
}

/**
 * The mass that climbs lift: that of now, at least the observed one, as load never lowers a need; null where neither
 * is told. Descents spare by the observed mass only, so that more mass never makes less fuel.
 */
export function liftedMassKg(rig: Rig, massKg: number | null): number | null {
  const observedKg = rig.fuel.model.observed.massKg;
  return massKg === null ? observedKg : Math.max(massKg, observedKg ?? 0);
}

/** Litres that a metre of climb takes. */
const litresPerClimbM = (rig: Rig, massKg: number): number =>
  liftL(massKg, 1, rig.fuel.model.climb.efficiency, FUEL_KINDS[rig.fuel.kind].energyMJPerL.typical);

/** What climbs are reckoned with, beside the litres of the level; null where there is nothing to reckon them from. */
export function climbFactsOf(facts: FuelFacts, level: Profile): ClimbFacts | null {
  const { rig, heights } = facts;
  const liftedKg = liftedMassKg(rig, facts.massKg);
  if (heights === null || liftedKg === null) return null;
  const { climb, observed } = rig.fuel.model;
  return {
    heights,
    litresPerClimbM: litresPerClimbM(rig, liftedKg),
    sparedPerDescentM: climb.giveBack * litresPerClimbM(rig, observed.massKg ?? 0),
    level,
  };
}

/** Litres of the whole route: what `fuelProfiles(facts, rate).out` comes to, and what of that climbs take. */
export function routeLitres(given: FuelFacts, rate: Rate): { litres: number; climbL: number | null } {
  const facts = withNightsThatCount(given);
  const running = runningOf(facts, rate);
  const hours = hoursAlong(facts, rate);
  const climbFacts = climbFactsOf(facts, running);
  const climbL = climbFacts === null ? null : climbTotalL(climbFacts);
  const hoursL = hours === null ? 0 : amountBetween(hours.out, 0, facts.lengthM);
  return { litres: amountBetween(running, 0, facts.lengthM) + hoursL + (climbL ?? 0), climbL };
}

/** Nights are places of the profiles only where they take fuel. */
const withNightsThatCount = (facts: FuelFacts): FuelFacts => {
  const { perHour, hours } = facts.rig.fuel.model;
  return perHour.heater * hours.heaterPerNight > 0 ? facts : { ...facts, nights: [] };
};

/** What goes by the hour: idling and cooling as days pass, cooling on days of halt, heating at night; null for nothing. */
function hoursAlong(facts: FuelFacts, rate: Rate) {
  const { perHour, hours } = facts.rig.fuel.model;
  const stayL = perHour.airConditioning * hours.airConditioningPerDay;
  const dayL = perHour.idling * hours.idlingPerDay + stayL;
  const nightL = perHour.heater * hours.heaterPerNight;
  if (dayL === 0 && nightL === 0) return null;
  const perWayM = (surface: Surface) =>
    dayL / (facts.hoursPerDay(surface) * facts.kmPerHour(surface, PACE_OF[rate]) * 1000);
  const nightsAt = (atM: number) =>
    facts.nights.filter((night) => night.atM === atM).reduce((sum, night) => sum + night.nights, 0);
  const standingL = (atM: number) => stayDaysAt(facts, atM) * stayL + nightsAt(atM) * nightL;
  return {
    perWayM,
    out: profileOf(stepsOf(facts, perWayM, (atM) => standingL(atM) || null)),
    home: profileOf(stepsOf(facts, perWayM, () => null)),
  };
}

/** Litres that the way takes on the level, along the route. */
export const levelOf = (facts: FuelFacts, rate: Rate): Profile => runningOf(withNightsThatCount(facts), rate);

const runningOf = (facts: FuelFacts, rate: Rate): Profile =>
  profileOf(
    stepsOf(
      facts,
      (surface) => rateOn(facts, surface, rate).litresPerWayM,
      (atM) => (stayDaysAt(facts, atM) === 0 ? null : 0),
    ),
  );

const stayDaysAt = ({ stays }: FuelFacts, atM: number): number =>
  stays.filter((stay) => stay.atM === atM).reduce((sum, stay) => sum + stay.days, 0);

/** The multiple for load; 1 where the mass now or the observed mass is not told. */
export function loadFactorOf(rig: Rig, massKg: number | null): number {
  const { observed, loadPercentPer100Kg } = rig.fuel.model;
  if (massKg === null || observed.massKg === null || loadPercentPer100Kg === null) return 1;
  return loadFactor(massKg, observed.massKg, loadPercentPer100Kg);
}

/** Litres for a metre of way on a surface: by distance, or by the hour where that is more. */
export function rateOn(facts: FuelFacts, surface: Surface, rate: Rate) {
  const { fuel } = facts.rig;
  const factor = relativeFactor(fuel.model.factors, surface, fuel.model.observed.surface);
  const load = loadFactorOf(facts.rig, facts.massKg);
  const byDistance = (fuel.litresPer100Km[rate] / 100_000) * factor * load;
  const kmPerHour = facts.kmPerHour(surface, PACE_OF[rate]);
  const byHour = fuel.model.perHour.crawling / (kmPerHour * 1000);
  const label = (litresPer100Km: number) => {
    if (byHour > byDistance) {
      return `at ${fuel.model.perHour.crawling} l an hour and ${shown(kmPerHour)} km/h`;
    }
    const raised = factor === 1 ? '' : ` × ${shown(factor)} for the surface`;
    return `at ${litresPer100Km} l/100 km${raised}${load === 1 ? '' : ` × ${shown(load)} for load`}`;
  };
  return { litresPerWayM: Math.max(byDistance, byHour), label };
}

function runningTerms(
  facts: FuelFacts,
  wayM: Profile,
  running: Profile,
  fromM: number,
  toM: number,
  rateLabel: (surface: Surface) => string,
): Term[] {
  const sums = new Map<Surface, { wayKm: number; litres: number }>();
  for (const span of facts.spans) {
    const [first, last] = [Math.max(fromM, span.fromM), Math.min(toM, span.toM)];
    if (first >= last) continue;
    const sum = sums.get(span.surface) ?? { wayKm: 0, litres: 0 };
    sum.wayKm += amountBetween(wayM, first, last) / 1000;
    sum.litres += amountBetween(running, first, last);
    sums.set(span.surface, sum);
  }
  return [...sums].map(([surface, { wayKm, litres }]) => ({
    label: `${Math.round(wayKm * 10) / 10} km ${surface === 'unknown' ? 'along the route' : `of ${surface}`} ${rateLabel(surface)}`,
    value: litres,
    unit: 'l',
  }));
}

/** The route in steps between all places where anything changes; a jump comes before the step that follows it. */
function stepsOf(
  { lengthM, spans, sketchy, stays, nights }: FuelFacts,
  perWayM: (surface: Surface) => number,
  jumpAt: (atM: number) => number | null,
): { lengthM: number; amount: number }[] {
  const places = [
    ...new Set([
      0,
      lengthM,
      ...spans.flatMap((span) => [span.fromM, span.toM]),
      ...sketchy.flatMap((span) => [span.fromM, span.toM]),
      ...stays.map((stay) => stay.atM),
      ...nights.map((night) => night.atM),
    ]),
  ].sort((a, b) => a - b);
  let spanIndex = 0;
  return places.slice(0, -1).flatMap((fromM, index) => {
    const toM = places[index + 1]!;
    while (spanIndex < spans.length - 1 && spans[spanIndex]!.toM <= fromM) spanIndex += 1;
    const span = spans[spanIndex]!;
    const straight = sketchy.some((one) => one.fromM <= fromM && toM <= one.toM);
    const drivenM = (toM - fromM) * (straight ? SKETCHY_FACTOR : 1);
    const amount = drivenM * (1 + span.allowancePercent / 100) * perWayM(span.surface);
    const step = { lengthM: toM - fromM, amount };
    const jump = jumpAt(fromM);
    return jump === null ? [step] : [{ lengthM: 0, amount: jump }, step];
  });
}

/** For labels only. */
const shown = (value: number): string => String(Math.round(value * 100) / 100);
