/** A value that fits the schema but not the rest: path, what came, what was expected, what to do. */
export interface Misfit {
  path: string;
  came: string;
  expected: string;
  remedy: string;
}
