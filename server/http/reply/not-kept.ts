import { InputProblem } from '../../core/input/problem.ts';

/** What is not there to be found; `what` as in "trip". */
export const notKept = (what: string): InputProblem =>
  new InputProblem({
    code: 'not-found',
    came: `a ${what} that is not kept`,
    expected: `the id of a ${what} in the list`,
    remedy: 'Get the list again',
  });

/** The thing that was looked for. Throws InputProblem where it is not kept. */
export function foundOrThrow<T>(found: T | null, what: string): T {
  if (found === null) throw notKept(what);
  return found;
}
