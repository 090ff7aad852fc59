import type { Course } from '../../gaps/course/course.ts';
import { amountBetween, type Profile } from '../../gaps/course/profile.ts';
import type { Load } from '../../mass/load.ts';
import type { Phrase } from '../../phrases/phrases.ts';
import { type FuelSources, fuelCourse, fuelPlan } from './fuel-course.ts';
import { type MassSpan, savedAlong, savedOffL } from './saved-by-mass.ts';
import { summedProfiles } from './summed-profiles.ts';

const LIGHTER: Phrase = { phrase: 'less-where-lighter', facts: {} };

/**
 * The course of fuel with a load on board. The way out goes by what is aboard at each place; the way home and the way
 * to supplies by the heaviest of it, as tanks may be filled again on the way back. Use is nowhere above that of
 * `mostKg` all the way.
 */
export function loadedCourse(
  even: Course,
  sources: FuelSources,
  fullKg: number,
  { mostKg, along }: Load,
): Course {
  const plan = fuelPlan({ ...sources, massKg: fullKg + mostKg });
  const heaviest = fuelCourse(even, plan);
  if (along.length === 0) return heaviest;
  const masses = along.map(({ fromM, toM, moreKg }): MassSpan => ({ fromM, toM, massKg: fullKg + moreKg }));
  const most: MassSpan = {
    fromM: 0,
    toM: heaviest.lengthM,
    massKg: Math.max(...masses.map(({ massKg }) => massKg)),
  };
  const saved = {
    out: savedAlong(plan.facts, masses, 'out'),
    home: savedAlong(plan.facts, [most], 'home'),
  };
  const offL = heaviest.off.litres - heaviest.off.wayM * savedOffL(plan.facts, most.massKg);
  return {
    ...heaviest,
    litres: {
      out: less(heaviest.litres.out, saved.out),
      home: less(heaviest.litres.home, saved.home),
    },
    off: { ...heaviest.off, litres: offL, homeLitres: offL },
    explain: (fromM, toM) => {
      const value = -amountBetween(saved.out, fromM, toM);
      const terms = heaviest.explain(fromM, toM);
      return value === 0 ? terms : [...terms, { label: LIGHTER, value, unit: 'l' }];
    },
  };
}

/** A profile less what is saved; as it was where that is nothing. */
const less = (profile: Profile, saved: Profile): Profile =>
  saved.sum.at(-1) === 0
    ? profile
    : summedProfiles([profile, { atM: saved.atM, sum: saved.sum.map((litres) => -litres) }]);
