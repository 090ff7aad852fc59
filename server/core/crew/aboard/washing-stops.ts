import type { Caution } from '../../phrases/cautions.ts';
import type { Passing } from '../../supply/points/passing.ts';

/**
 * Where the route comes by waters that the user marked safe for skin, metres along, in order; and what of the marks
 * comes to nothing.
 */
export function washingStops(
  sources: readonly string[],
  passings: readonly Passing[],
): { stopsM: number[]; cautions: Caution[] } {
  const cautions: Caution[] = [];
  const stopsM: number[] = [];
  for (const id of new Set(sources)) {
    const places = passings.filter(
      (passing) => passing.commodity === 'water' && (passing.id === id || passing.alsoIds.includes(id)),
    );
    if (places.length === 0) cautions.push({ code: 'washing-source-not-passed', facts: { id } });
    for (const { atM, waterClass } of places) {
      if (waterClass === 'none' || waterClass === undefined) {
        cautions.push({ code: 'washing-source-unfit', facts: { id }, fromM: atM, toM: atM });
      } else stopsM.push(atM);
    }
  }
  return { stopsM: stopsM.sort((a, b) => a - b), cautions };
}
