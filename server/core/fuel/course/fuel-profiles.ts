import type { Surface } from '../../../contract/surface.ts';
import { amountBetween, type Profile } from '../../gaps/course/profile.ts';
import type { Term } from '../../quantity/term.ts';
import { climbFactsOf, liftedMassKg } from './climb-facts.ts';
import { climbProfiles, climbTotalL } from './climb-profile.ts';
import { type FuelFacts, type Rate, withNightsThatCount } from './fuel-facts.ts';
import { hoursAlong, levelAlong, wayAlong } from './level-along.ts';
import { summedProfiles } from './summed-profiles.ts';
import { rateOn } from './surface-rate.ts';

export interface FuelProfiles {
  /** Metres of way, allowance and straight lines included. */
  readonly wayM: Profile;
  readonly out: Profile;
  readonly home: Profile;
  /** Litres for a metre of way off the route, where the surface is unknown. */
  readonly offLPerWayM: number;
  /** The terms that the litres of a stretch, driven forwards, were summed from. */
  readonly explain: (fromM: number, toM: number) => Term[];
}

/** Litres along the route driven forwards, by what takes them; null for nothing of it. */
interface Litres {
  readonly wayM: Profile;
  readonly running: Profile;
  readonly climb: Profile | null;
  readonly hours: Profile | null;
}

/**
 * Litres along the route at one end of the rig's range: way × rate × surface × load (or by the hour where that is
 * more, on slow stretches), climbs, and what goes by the hour. With one surface, no load, no climb and no hours this
 * is the even course, to the last bit.
 */
export function fuelProfiles(given: FuelFacts, rate: Rate): FuelProfiles {
  const facts = withNightsThatCount(given);
  const wayM = wayAlong(facts);
  const running = levelAlong(facts, rate);
  const hours = hoursAlong(facts, rate);
  const climbFacts = climbFactsOf(facts, running);
  const climb = climbFacts === null ? null : climbProfiles(climbFacts);
  const sumOf = (way: 'out' | 'home') =>
    summedProfiles([
      running,
      ...(hours === null ? [] : [hours[way]]),
      ...(climb === null ? [] : [climb[way]]),
    ]);
  const litres = { wayM, running, climb: climb?.out ?? null, hours: hours?.out ?? null };
  return {
    wayM,
    out: sumOf('out'),
    home: sumOf('home'),
    offLPerWayM: rateOn(facts, 'unknown', rate).litresPerWayM + (hours?.perWayM('unknown') ?? 0),
    explain: (fromM, toM) => [
      ...runningTerms({ facts, rate, litres, fromM, toM }),
      ...otherTerms(facts, litres, fromM, toM),
    ],
  };
}

/** Litres of the whole route: what `fuelProfiles(facts, rate).out` comes to, and what of that climbs take. */
export function routeLitres(facts: FuelFacts, rate: Rate): { litres: number; climbL: number | null } {
  const running = levelAlong(facts, rate);
  const hours = hoursAlong(facts, rate);
  const climbFacts = climbFactsOf(facts, running);
  const climbL = climbFacts === null ? null : climbTotalL(climbFacts);
  const hoursL = hours === null ? 0 : amountBetween(hours.out, 0, facts.lengthM);
  return { litres: amountBetween(running, 0, facts.lengthM) + hoursL + (climbL ?? 0), climbL };
}

/** One term for each surface of a stretch, in its order. */
function runningTerms(of: {
  facts: FuelFacts;
  rate: Rate;
  litres: Litres;
  fromM: number;
  toM: number;
}): Term[] {
  const sums = new Map<Surface, { wayM: number; litres: number }>();
  for (const span of of.facts.spans) {
    const [first, last] = [Math.max(of.fromM, span.fromM), Math.min(of.toM, span.toM)];
    if (first >= last) continue;
    const sum = sums.get(span.surface) ?? { wayM: 0, litres: 0 };
    sum.wayM += amountBetween(of.litres.wayM, first, last);
    sum.litres += amountBetween(of.litres.running, first, last);
    sums.set(span.surface, sum);
  }
  return [...sums].map(([surface, { wayM, litres }]) => {
    const { label: rate } = rateOn(of.facts, surface, of.rate);
    return { label: { phrase: 'way-at-rate', facts: { wayM, surface, rate } }, value: litres, unit: 'l' };
  });
}

/** Climbs and what goes by the hour, where there is any. */
function otherTerms(
  { rig, massKg }: FuelFacts,
  { climb, hours }: Litres,
  fromM: number,
  toM: number,
): Term[] {
  const terms: Term[] = [];
  if (climb !== null) {
    const kg = liftedMassKg(rig, massKg) ?? 0;
    const value = amountBetween(climb, fromM, toM);
    terms.push({ label: { phrase: 'climbs', facts: { kg } }, value, unit: 'l' });
  }
  if (hours !== null) {
    const value = amountBetween(hours, fromM, toM);
    terms.push({ label: { phrase: 'by-the-hour', facts: {} }, value, unit: 'l' });
  }
  return terms;
}
