import { InputProblem, type Outcome } from '../../core/input/problem.ts';

/** The value, or the problem thrown: the error handler turns it into a reply. */
export function valueOrThrow<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new InputProblem(outcome.problem);
}
