import { useEffect, useState } from 'react';
import type { Comparison } from '../../server/contract/answers/compare.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import { compareRigs, detailsOf, type ProblemDetails } from '../api/api.ts';

/** Wait after the last change before comparing again, ms (ours). */
const QUIET_MS = 150;

interface Compared {
  comparison: Comparison | null;
  problem: ProblemDetails | null;
}

/** How the rigs fare on the route that is open; a further change calls off the one before it. */
export function useComparison(id: string, rigs: readonly RigFile[], trip: TripFile): Compared {
  const [state, setState] = useState<Compared>({ comparison: null, problem: null });
  useEffect(() => {
    const control = new AbortController();
    const timer = setTimeout(() => {
      compareRigs(id, rigs, trip, control.signal).then(
        (comparison) => {
          if (!control.signal.aborted) setState({ comparison, problem: null });
        },
        (error: unknown) => {
          if (!control.signal.aborted) setState((last) => ({ ...last, problem: detailsOf(error) }));
        },
      );
    }, QUIET_MS);
    return () => {
      clearTimeout(timer);
      control.abort();
    };
  }, [id, rigs, trip]);
  return state;
}
