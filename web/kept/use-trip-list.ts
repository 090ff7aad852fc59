import { useCallback, useEffect, useState } from 'react';
import type { KeptTripReply, TripList } from '../../server/contract/kept.ts';
import { detailsOf, type ProblemDetails, wasCalledOff } from '../api/api.ts';
import { getTrips } from '../api/kept.ts';

/** The trips that are kept, fetched anew after each thing done to one of them. */
export function useTripList() {
  const [list, setList] = useState<TripList | null>(null);
  const [problem, setProblem] = useState<ProblemDetails | null>(null);
  const [round, setRound] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each round asks once more
  useEffect(() => {
    const control = new AbortController();
    getTrips(control.signal).then(setList, (error: unknown) => {
      if (!wasCalledOff(error)) setProblem(detailsOf(error));
    });
    return () => control.abort();
  }, [round]);
  /** Does something to a trip and shows the list after it; null where it was refused, which is shown. */
  const run = useCallback(async <T = KeptTripReply>(work: () => Promise<T>): Promise<T | null> => {
    setProblem(null);
    try {
      const done = await work();
      setRound((last) => last + 1);
      return done;
    } catch (error) {
      if (!wasCalledOff(error)) setProblem(detailsOf(error));
      return null;
    }
  }, []);
  return { list, problem, run };
}
