import { useCallback, useEffect, useMemo, useRef } from 'react';
import type { OwnFiles } from '../api/api.ts';
import type { OpenedTrip } from '../api/kept.ts';
import type { Address } from '../state/address.ts';
import type { Opening } from '../state/load-trip.ts';
import type { Said } from '../state/said.ts';
import type { Go } from '../state/use-address.ts';
import type { Look } from '../state/use-look.ts';
import { useTrip } from '../state/use-trip.ts';
import { useKept } from './use-kept.ts';

/** Where a trip begins: its first panel, with nothing chosen. */
export const AT_FIRST: Omit<Address, 'trip'> = { tab: 'gaps', view: 'strip', gap: null, supply: null };

/** The trip that the address names, with what keeps it: each edit is reckoned and saved. */
export function useOpenTrip(address: Address, go: Go, look: Look) {
  const begin = useRef<(opening: Opening) => void>(() => {});
  const onOpened = useCallback((opening: Opening) => begin.current(opening), []);
  const { state, edit: reckon, open, keepAs } = useTrip(address.trip, onOpened);
  // The first change of the demo makes a trip of the reader's own: that is what the address names from then on.
  const onOwn = useCallback(
    (id: string) => {
      keepAs(id);
      go({ trip: id });
    },
    [keepAs, go],
  );
  const { keeper, kept } = useKept({ analysis: state.reply?.analysis ?? null, onSaid: reckon, onOwn });
  begin.current = ({ kept, reply, refused }) => keeper.begin(kept, refused ?? reply.said);

  // What no server answered is asked for once more when one does again.
  const unanswered = state.problem?.status === 0 && kept.saving.state === 'saved' ? state.said : null;
  useEffect(() => {
    if (unanswered !== null) reckon(unanswered);
  }, [unanswered, reckon]);
  useEffect(() => {
    window.addEventListener('online', keeper.again);
    return () => window.removeEventListener('online', keeper.again);
  }, [keeper]);

  const edit = useCallback(
    (said: Said) => {
      reckon(said);
      keeper.change(said);
    },
    [reckon, keeper],
  );

  const { startAfresh } = look;
  const show = useCallback(
    (own: OpenedTrip, files: OwnFiles) => {
      startAfresh();
      open({ ...own, refused: null }, files);
      go({ ...AT_FIRST, trip: own.kept.id });
    },
    [startAfresh, open, go],
  );
  return useMemo(() => ({ state, edit, show, keeper, kept }), [state, edit, show, keeper, kept]);
}
