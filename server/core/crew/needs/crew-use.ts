import type { Crew } from '../../../contract/crew.ts';
import { LOSS_PERCENT } from '../../defaults/rig-defaults.ts';
import type { Term } from '../../quantity/term.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import { type HeatEffect, heatOf } from './heat.ts';
import { MOST_CARRIED_L } from './heat-table.ts';
import { ownOrOfLevel, type People, peopleOf } from './person-uses.ts';
import { atEnds, NOTHING, plus, sumOf, times } from './range.ts';
import { litresOf, partRows, splitOver, type UseRow, withLosses } from './use-rows.ts';

/** What a crew uses, litres a day. */
export interface CrewUse {
  from: 'crew' | 'observed';
  uses: readonly UseRow[];
  /** Washing water taken where it is used; not in `uses`. */
  notCarried: UseRange;
  total: UseRange;
  drinking: UseRange;
  washing: UseRange;
  heat: HeatEffect | null;
  /** What the heat makes of everybody's drinking at the high end, where it is told and nothing was observed. */
  heatTerms: readonly Term[];
  /** Drinking grade by the parts, whatever was observed. */
  expectedDrinking: UseRange;
  /** What people drink in the heat expected by the reckoning, whatever was observed: litres a day of the thirstiest. */
  drinkingOfOne: UseRange;
}

/**
 * What the crew takes from the tanks in a day: each person's uses by level or own figures, drinking raised by heat and
 * work, pets by body mass, the vehicle, losses. An observed figure of the user's (litres a day of all aboard) wins:
 * drinking grade keeps what the heat asks for, washing takes what is left; what was observed above the sum raises all
 * alike. The parts add up to the total at each end.
 */
export function crewUse(crew: Crew, observed: UseRange | null): CrewUse {
  const heat = heatOf(crew.heat);
  const people = peopleOf(crew, heat);
  const parts = partRows(crew, people, heat);
  const atSource = crew.washingAtSource ?? false;
  const rows = [...parts.drinking, ...(atSource ? [] : parts.washing), ...parts.vehicle].filter(
    ({ litresPerDay }) => litresPerDay.high > 0,
  );
  const uses =
    observed === null ? withLosses(rows, crew.lossPercent ?? LOSS_PERCENT) : splitOver(rows, observed);
  const drinking = litresOf(uses, 'drinking');
  const washing = litresOf(uses, 'washing');
  return {
    from: observed === null ? 'crew' : 'observed',
    uses,
    notCarried: atSource ? sumOf(parts.washing.map((row) => row.litresPerDay)) : NOTHING,
    total: observed ?? plus(drinking, washing),
    drinking,
    washing,
    heat,
    heatTerms: heat === null || observed !== null ? [] : heatTermsOf(crew, heat, people),
    expectedDrinking: litresOf(rows, 'drinking'),
    drinkingOfOne: atEnds((end) => Math.max(...people.map(({ thirst }) => thirst[end]))),
  };
}

/**
 * What the tank gives where drinking water goes through reverse osmosis at the tap, so many litres for each: need over
 * recovery. What was observed to leave the tanks has it in it already.
 */
export function withWaste(use: CrewUse, feed: number): CrewUse {
  if (use.from === 'observed') return use;
  const waste = times(use.drinking, feed - 1);
  const row: UseRow = {
    use: 'osmosis-waste',
    grade: 'drinking',
    litresPerDay: waste,
    source: { phrase: 'need-over-recovery', facts: { feed } },
  };
  return {
    ...use,
    uses: [...use.uses, row],
    drinking: plus(use.drinking, waste),
    total: plus(use.total, waste),
  };
}

/** The high end of all people's drinking in three terms: mild weather, heat at rest, work. */
function heatTermsOf(crew: Crew, heat: HeatEffect, drinkers: readonly People[]): Term[] {
  const beyondL = drinkers.reduce(
    (sum, { count, uses, thirst }) => sum + count * (thirst.high - uses.drinking.high),
    0,
  );
  const people = crew.people.reduce((sum, person) => sum + (person.count ?? 1), 0);
  const mildL = crew.people.reduce(
    (sum, person) => sum + ownOrOfLevel(person, 'drinking').high * (person.count ?? 1),
    0,
  );
  const { restFactor, wbgtC, work, workHoursPerDay: hours } = heat;
  const litresPerHour = heat.litresPerWorkHour.high;
  const unit = 'l a day';
  return [
    { label: { phrase: 'drinking-at-rest-mild', facts: {} }, value: mildL, unit },
    {
      label: { phrase: 'drinking-at-rest-in-heat', facts: { factor: restFactor, wbgtC } },
      value: mildL * (restFactor - 1),
      unit,
    },
    {
      label: { phrase: 'drinking-at-work', facts: { hours, work, litresPerHour, people } },
      value: hours * litresPerHour * people,
      unit,
    },
    ...(beyondL > 0
      ? [
          {
            label: { phrase: 'beyond-a-body', facts: { mostL: MOST_CARRIED_L } } as const,
            value: -beyondL,
            unit,
          },
        ]
      : []),
  ];
}
