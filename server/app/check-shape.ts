import type { Static, TSchema } from 'typebox';
import { Compile } from 'typebox/compile';
import type { Outcome, ProblemCode } from '../core/input/problem.ts';
import { explainShape } from './explain-shape.ts';

type Validator = ReturnType<typeof Compile>;
const compiled = new WeakMap<TSchema, Validator>();

function validatorOf(schema: TSchema): Validator {
  const known = compiled.get(schema);
  if (known !== undefined) return known;
  const fresh = Compile(schema);
  compiled.set(schema, fresh);
  return fresh;
}

/**
 * Holds a value against a schema of the contract. The compiled schema decides; the explanation is for people and
 * names the first thing wrong: path of the key, what came, what was expected, what to do.
 */
export function checkShape<S extends TSchema>(
  schema: S,
  value: unknown,
  code: ProblemCode,
  source: string,
): Outcome<Static<S>> {
  if (validatorOf(schema).Check(value)) return { ok: true, value: value as Static<S> };
  const finding = explainShape(schema, value);
  return {
    ok: false,
    problem: {
      code,
      source,
      place: finding === null || finding.path === '' ? null : finding.path,
      came: finding?.came ?? 'a value that does not fit',
      expected: finding?.expected ?? 'a value as in the documentation',
      remedy: finding?.remedy ?? 'Compare the file with the example in the README',
    },
  };
}
