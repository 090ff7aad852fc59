import { SURFACES } from '../../contract/surface.ts';
import { type Outcome, type ProblemCode, refused } from '../../core/input/problem.ts';
import type { LearnOptions } from '../../core/log/learn.ts';
import { came } from './shape-words.ts';

const MOST_PEOPLE = 200;

/** The options of learning as they came, as text; `dash` is what stands before their names in a refusal. */
export function readLearnOptions(
  given: { surface?: string | undefined; people?: string | undefined },
  code: ProblemCode,
  dash: string,
): Outcome<LearnOptions> {
  const refuse = (name: string, text: string, expected: string): Outcome<never> =>
    refused({
      code,
      place: `${dash}${name}`,
      came: came(text),
      expected,
      remedy: `Correct ${name}, or leave it out`,
    });
  const surfaces = SURFACES.filter((surface) => surface !== 'unknown');
  const surface = surfaces.find((one) => one === given.surface) ?? null;
  if (given.surface !== undefined && surface === null) {
    return refuse('surface', given.surface, `one of ${surfaces.join(', ')}`);
  }
  if (given.people === undefined) return { ok: true, value: { surface, people: null } };
  const people = /^[1-9]\d*$/.test(given.people) ? Number(given.people) : Number.NaN;
  if (!(people <= MOST_PEOPLE)) {
    return refuse('people', given.people, `a whole number from 1 to ${MOST_PEOPLE}`);
  }
  return { ok: true, value: { surface, people } };
}
