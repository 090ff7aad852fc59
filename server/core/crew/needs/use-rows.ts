import type { Crew, WaterGrade, WaterUseName } from '../../../contract/crew.ts';
import { USE_LEVEL, VEHICLE_LITRES_PER_DAY, WATER_HIGH } from '../../defaults/rig-defaults.ts';
import type { PartSource, PetSource, UseSource } from '../../phrases/rig/crew.ts';
import type { UseRange } from '../../quantity/use-range.ts';
import type { HeatEffect } from './heat.ts';
import { PERSON_USES, TEETH_AND_HANDS_L } from './levels.ts';
import { everybody, type People } from './person-uses.ts';
import { petLitresPerDay } from './pets.ts';
import { atEnds, rangeOf, sumOf, times } from './range.ts';

/** What all aboard take for one use in a day, litres. */
export interface UseRow {
  readonly use: WaterUseName;
  readonly grade: WaterGrade;
  readonly litresPerDay: UseRange;
  readonly source: UseSource;
}

/** A use that is reckoned from the crew, before any observed figure is laid over it. */
type PartRow = UseRow & { readonly source: PartSource };

const OWN_FIGURE: PartSource = { phrase: 'own-figure', facts: {} };

/** Litres of a grade in several rows. */
export const litresOf = (rows: readonly UseRow[], grade: WaterGrade): UseRange =>
  sumOf(rows.filter((row) => row.grade === grade).map((row) => row.litresPerDay));

/** Every use of a crew that takes anything, but for washing and showers. */
export function partRows(
  crew: Crew,
  people: readonly People[],
  heat: HeatEffect | null,
): { drinking: PartRow[]; washing: PartRow[]; vehicle: PartRow[] } {
  const source = peopleSource(crew);
  const row = (use: WaterUseName, grade: WaterGrade, litresPerDay: UseRange, from = source): PartRow => ({
    use,
    grade,
    litresPerDay,
    source: from,
  });
  const hands: PartSource = { phrase: 'first-of-washing', facts: { litres: TEETH_AND_HANDS_L } };
  const vehicleL = crew.vehicleLitresPerDay ?? VEHICLE_LITRES_PER_DAY;
  const vehicle = { low: vehicleL, typical: vehicleL, high: vehicleL };
  return {
    drinking: [
      row('drinking', 'drinking', everybody(people, 'drinking')),
      row('cooking', 'drinking', everybody(people, 'cooking')),
      row('washing-up', 'drinking', everybody(people, 'washingUp')),
      row('teeth-and-hands', 'drinking', everybody(people, 'hands'), hands),
      row('pets', 'drinking', petsLitres(crew, heat), petsSource(crew)),
    ],
    washing: [
      row('washing', 'washing', everybody(people, 'washing')),
      row('shower', 'washing', everybody(people, 'shower')),
    ],
    vehicle: [row('vehicle', 'washing', vehicle, OWN_FIGURE)],
  };
}

const petsLitres = (crew: Crew, heat: HeatEffect | null): UseRange =>
  sumOf(
    (crew.pets ?? []).map(({ kg, litresPerDay }) =>
      times(litresPerDay === undefined ? petLitresPerDay(kg) : rangeOf(litresPerDay), heat?.restFactor ?? 1),
    ),
  );

/** Losses are a share of what is drawn, in each grade. */
export function withLosses(rows: readonly PartRow[], lossPercent: number): UseRow[] {
  if (lossPercent === 0) return [...rows];
  const factor = lossPercent / (100 - lossPercent);
  const lost = (['drinking', 'washing'] as const).map((grade): UseRow => {
    return { use: 'losses', grade, litresPerDay: times(litresOf(rows, grade), factor), source: OWN_FIGURE };
  });
  return [...rows, ...lost.filter(({ litresPerDay }) => litresPerDay.high > 0)];
}

/** An observed total laid over the rows, end by end: drinking grade first. */
export function splitOver(rows: readonly PartRow[], observed: UseRange): UseRow[] {
  const shares = { low: shareOf('low'), typical: shareOf('typical'), high: shareOf('high') };
  function shareOf(end: keyof UseRange): Record<WaterGrade, number> {
    const [drinking, washing] = [litresOf(rows, 'drinking')[end], litresOf(rows, 'washing')[end]];
    const total = observed[end];
    if (total <= drinking || washing === 0) return { drinking: total / drinking, washing: 0 };
    if (total <= drinking + washing) return { drinking: 1, washing: (total - drinking) / washing };
    return { drinking: total / (drinking + washing), washing: total / (drinking + washing) };
  }
  return rows.map((row) => ({
    ...row,
    litresPerDay: atEnds((end) => row.litresPerDay[end] * shares[end][row.grade]),
    source: { phrase: 'split-of-own-figure', facts: { of: row.source } },
  }));
}

function peopleSource(crew: Crew): PartSource {
  const levels = [...new Set(crew.people.map((person) => person.level ?? USE_LEVEL))];
  const own = crew.people.some((person) => PERSON_USES.some((use) => person[use] !== undefined));
  return { phrase: 'level-sources', facts: { levels, own, highOfOne: WATER_HIGH } };
}

function petsSource({ pets = [], heat }: Crew): PartSource {
  const sources = pets.map(({ kind, litresPerDay }): PetSource => {
    if (litresPerDay !== undefined) return 'own';
    return kind === 'dog' ? 'dog' : 'as-dog';
  });
  return { phrase: 'pets-source', facts: { sources: [...new Set(sources)], heat: heat !== undefined } };
}
