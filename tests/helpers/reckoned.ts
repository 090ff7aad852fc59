import { type AnalyseInput, type Reckoned, reckonTrip } from '../../server/core/analyse/analyse.ts';
import { problemLine } from '../../server/core/input/problem.ts';

/** A trip reckoned; throws where it cannot be. */
export function reckoned(input: AnalyseInput): Reckoned {
  const outcome = reckonTrip(input);
  if (!outcome.ok) throw new Error(problemLine(outcome.problem));
  return outcome.value;
}
