import type { Crew, Person } from '../../../contract/crew.ts';
import { USE_LEVEL } from '../../defaults/rig-defaults.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import type { HeatEffect } from './heat.ts';
import { MOST_CARRIED_L } from './heat-table.ts';
import { LEVELS, type PersonUse, TEETH_AND_HANDS_L } from './levels.ts';
import { atEnds, NOTHING, plus, rangeOf, sumOf, times } from './range.ts';

/** Litres a day of one person; `washing` without what is for teeth, hands and wounds. */
export type PersonUses = Readonly<Record<PersonUse | 'hands', UseRange>>;

/** So many people who use alike. */
export interface People {
  readonly count: number;
  readonly uses: PersonUses;
  /** What each would drink, whatever a body can take in. */
  readonly thirst: UseRange;
}

/** The people of a crew in the heat expected. */
export const peopleOf = (crew: Crew, heat: HeatEffect | null): People[] =>
  crew.people.map((person) => ({
    count: person.count ?? 1,
    uses: personUses(person, heat),
    thirst: thirstOf(person, heat),
  }));

/** What all of them take for a use. */
export const everybody = (people: readonly People[], use: keyof PersonUses): UseRange =>
  sumOf(people.map(({ count, uses }) => times(uses[use], count)));

/** What a person takes for a use in mild weather at rest: the own figure, else that of the level. */
export function ownOrOfLevel(person: Person, use: PersonUse): UseRange {
  const own = person[use];
  return own === undefined ? LEVELS[person.level ?? USE_LEVEL][use] : rangeOf(own);
}

/** By the reckoning: at rest in the heat, and at work. */
function thirstOf(person: Person, heat: HeatEffect | null): UseRange {
  const atRest = times(ownOrOfLevel(person, 'drinking'), heat?.restFactor ?? 1);
  const working = times(heat?.litresPerWorkHour ?? NOTHING, heat?.workHoursPerDay ?? 0);
  return plus(atRest, working);
}

/** Never above what a body can take in; what is told of mild weather stands. */
const drinkable = (mild: UseRange, thirst: UseRange): UseRange =>
  atEnds((end) => Math.min(thirst[end], Math.max(MOST_CARRIED_L, mild[end])));

function personUses(person: Person, heat: HeatEffect | null): PersonUses {
  const washing = ownOrOfLevel(person, 'washing');
  const hands = atEnds((end) => Math.min(washing[end], TEETH_AND_HANDS_L));
  return {
    drinking: drinkable(ownOrOfLevel(person, 'drinking'), thirstOf(person, heat)),
    cooking: ownOrOfLevel(person, 'cooking'),
    washingUp: ownOrOfLevel(person, 'washingUp'),
    hands,
    washing: atEnds((end) => washing[end] - hands[end]),
    shower: ownOrOfLevel(person, 'shower'),
  };
}
