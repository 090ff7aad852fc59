import type { Surface } from '../../../contract/surface.ts';
import { SKETCHY_FACTOR } from '../../gaps/course/even-course.ts';
import { type Profile, profileOf } from '../../gaps/course/profile.ts';
import { at } from '../../lists/at.ts';
import { metresOf } from '../../quantity/rates.ts';
import { type FuelFacts, PACE_OF, type Rate, stayDaysAt, withNightsThatCount } from './fuel-facts.ts';
import { rateOn } from './surface-rate.ts';

/** Metres of way along the route, allowance and straight lines included. */
export const wayAlong = (facts: FuelFacts): Profile => profileOf(stepsOf(facts, () => 1, emptyJump(facts)));

/** Litres that the way takes on the level, along the route. */
export function levelAlong(given: FuelFacts, rate: Rate): Profile {
  const facts = withNightsThatCount(given);
  const perWayM = (surface: Surface) => rateOn(facts, surface, rate).litresPerWayM;
  return profileOf(stepsOf(facts, perWayM, emptyJump(facts)));
}

/** What goes by the hour. */
export interface HoursAlong {
  /** Litres for a metre of way. */
  readonly perWayM: (surface: Surface) => number;
  readonly out: Profile;
  readonly home: Profile;
}

/** What goes by the hour: idling and cooling as days pass, cooling on days of halt, heating at night; null for nothing. */
export function hoursAlong(given: FuelFacts, rate: Rate): HoursAlong | null {
  const facts = withNightsThatCount(given);
  const { perHour, hours } = facts.rig.fuel.model;
  const stayL = perHour.airConditioning * hours.airConditioningPerDay;
  const dayL = perHour.idling * hours.idlingPerDay + stayL;
  const nightL = perHour.heater * hours.heaterPerNight;
  if (dayL === 0 && nightL === 0) return null;
  const perWayM = (surface: Surface) =>
    dayL / metresOf(facts.hoursPerDay(surface) * facts.kmPerHour(surface, PACE_OF[rate]));
  const nightsAt = (atM: number) =>
    facts.nights.filter((night) => night.atM === atM).reduce((sum, night) => sum + night.nights, 0);
  const standingL = (atM: number) => stayDaysAt(facts, atM) * stayL + nightsAt(atM) * nightL;
  return {
    perWayM,
    out: profileOf(stepsOf(facts, perWayM, (atM) => standingL(atM) || null)),
    home: profileOf(stepsOf(facts, perWayM, () => null)),
  };
}

/** A jump of nothing where the trip halts, so that the place is an entry of the profile. */
const emptyJump =
  (facts: FuelFacts) =>
  (atM: number): number | null =>
    stayDaysAt(facts, atM) === 0 ? null : 0;

interface Step {
  readonly lengthM: number;
  readonly amount: number;
}

/** The route in steps between all places where anything changes; a jump comes before the step that follows it. */
function stepsOf(
  facts: FuelFacts,
  perWayM: (surface: Surface) => number,
  jumpAt: (atM: number) => number | null,
): Step[] {
  const { spans, sketchy } = facts;
  const steps: Step[] = [];
  let spanIndex = 0;
  let fromM = 0;
  for (const toM of placesOf(facts).slice(1)) {
    while (spanIndex < spans.length - 1 && at(spans, spanIndex).toM <= fromM) spanIndex += 1;
    const span = at(spans, spanIndex);
    const begin = fromM;
    const straight = sketchy.some((one) => one.fromM <= begin && toM <= one.toM);
    const drivenM = (toM - fromM) * (straight ? SKETCHY_FACTOR : 1);
    const amount = drivenM * (1 + span.allowancePercent / 100) * perWayM(span.surface);
    const jump = jumpAt(fromM);
    if (jump !== null) steps.push({ lengthM: 0, amount: jump });
    steps.push({ lengthM: toM - fromM, amount });
    fromM = toM;
  }
  return steps;
}

/** Every place where anything changes, in order, each once; 0 is the first. */
function placesOf({ lengthM, spans, sketchy, stays, nights }: FuelFacts): number[] {
  const places = [
    0,
    lengthM,
    ...[...spans, ...sketchy].flatMap((span) => [span.fromM, span.toM]),
    ...[...stays, ...nights].map((halt) => halt.atM),
  ];
  return [...new Set(places)].sort((a, b) => a - b);
}
