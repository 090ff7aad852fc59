import type { Caution } from '../../../contract/common.ts';
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
    if (places.length === 0) {
      const text = `The washing source ${id} is no water in the corridor of the route and is left out.`;
      cautions.push({ code: 'washing-source-not-passed', text });
    }
    for (const place of places) {
      const atKm = place.atM / 1000;
      if (place.waterClass === 'none' || place.waterClass === undefined) {
        const text = `The washing source ${id} is fit for nothing by its tags and is left out.`;
        cautions.push({ code: 'washing-source-unfit', text, fromKm: atKm, toKm: atKm });
      } else stopsM.push(place.atM);
    }
  }
  return { stopsM: stopsM.sort((a, b) => a - b), cautions };
}
