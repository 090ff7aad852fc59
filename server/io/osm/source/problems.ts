import { InputProblem, type ProblemCode } from '../../../core/input/problem.ts';

/** Makes an InputProblem of its parts; `place` null where the whole file is meant. */
export function refusal(
  code: ProblemCode,
  source: string,
  place: string | null,
  came: string,
  expected: string,
  remedy: string,
): InputProblem {
  return new InputProblem({ code, source, place, came, expected, remedy });
}

/** What all the readers of this folder take together, for messages. */
export const SUPPLY_FORMATS =
  'OpenStreetMap data (.osm.pbf, .osm XML, Overpass JSON, GeoJSON) or GPX waypoints';
