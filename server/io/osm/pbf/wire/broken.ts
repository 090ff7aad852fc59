import { InputProblem, type Problem } from '../../../../core/input/problem.ts';

/** Found inside a blob that cannot be understood; the reader adds file and byte. */
export class BrokenBlock extends Error {
  override readonly name = 'BrokenBlock';
}

const EXPECTED = 'an OpenStreetMap extract in .osm.pbf form';
const AGAIN = 'Download or make the extract again';

/** A refusal of the file, at a byte counted from its start where there is one. */
export function pbfProblem({
  byte,
  expected = EXPECTED,
  remedy = AGAIN,
  ...parts
}: Pick<Problem, 'code' | 'came'> & {
  source: string;
  byte?: number;
  expected?: string;
  remedy?: string;
}): InputProblem {
  return new InputProblem({
    ...parts,
    place: byte === undefined ? null : `byte ${byte}`,
    expected,
    remedy,
  });
}
