import type { Static, TSchema } from 'typebox';
import { Compile } from 'typebox/compile';
import { type Outcome, type ProblemCode, refused } from '../../core/input/problem.ts';
import { explainShape, type ShapeFinding } from './explain-shape.ts';

type Validator = ReturnType<typeof Compile>;
const compiled = new WeakMap<TSchema, Validator>();

function validatorOf(schema: TSchema): Validator {
  const known = compiled.get(schema);
  if (known !== undefined) return known;
  const fresh = Compile(schema);
  compiled.set(schema, fresh);
  return fresh;
}

/** For what the compiled schema refuses and the explanation does not see. */
const UNEXPLAINED: ShapeFinding = {
  path: '',
  came: 'a value that does not fit',
  expected: 'a value as in the documentation',
  remedy: 'Compare the file with the example in the README',
  file: null,
};

/**
 * Holds a value against a schema of the contract; null when it fits. The compiled schema decides; the explanation is for
 * people and names the first thing wrong: path of the key, what came, what was expected, what to do.
 */
export function misfitOf(schema: TSchema, value: unknown): ShapeFinding | null {
  return validatorOf(schema).Check(value) ? null : (explainShape(schema, value) ?? UNEXPLAINED);
}

/** A value as the schema has it, or the problem of that code in that source. */
export function checkShape<S extends TSchema>(
  schema: S,
  value: unknown,
  code: ProblemCode,
  source: string,
): Outcome<Static<S>> {
  const finding = misfitOf(schema, value);
  if (finding === null) return { ok: true, value: value as Static<S> };
  const { path, came, expected, remedy } = finding;
  return refused({ code, source, place: path === '' ? null : path, came, expected, remedy });
}
