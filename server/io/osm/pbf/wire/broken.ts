import type { ProblemCode } from '../../../../core/input/problem.ts';
import { InputProblem } from '../../../../core/input/problem.ts';

/** Found inside a blob that cannot be understood; the reader adds file and byte. */
export class BrokenBlock extends Error {
  override readonly name = 'BrokenBlock';
}

const EXPECTED = 'an OpenStreetMap extract in .osm.pbf form';
const AGAIN = 'Download or make the extract again';

/** A refusal of the file at a byte counted from its start (null: the file as a whole). */
export function pbfProblem(
  code: ProblemCode,
  source: string,
  byte: number | null,
  came: string,
  expected = EXPECTED,
  remedy = AGAIN,
): InputProblem {
  return new InputProblem({
    code,
    source,
    place: byte === null ? null : `byte ${byte}`,
    came,
    expected,
    remedy,
  });
}
