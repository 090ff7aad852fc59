import { type AnalyseInput, type Reckoned, reckonTrip } from '../../server/core/analyse/analyse.ts';

/** A trip reckoned; throws where it cannot be. */
export function reckoned(input: AnalyseInput): Reckoned {
  const outcome = reckonTrip(input);
  if (!outcome.ok) throw new Error(outcome.refusal.code);
  return outcome.value;
}
