import { useCallback, useEffect, useReducer, useRef } from 'react';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import { detailsOf, type OwnFiles, type ProblemDetails, reanalyse } from '../api/api.ts';
import { keepFiles } from '../api/kept.ts';
import { loadTrip, type Opening } from './load-trip.ts';
import type { Said } from './said.ts';

/** Wait after the last keystroke before reckoning again, ms (ours). */
const QUIET_MS = 150;

export interface TripState {
  /** The last good answer; stays when a later request is refused. */
  reply: AnalysisReply | null;
  /** Rig and trip as the user said them, edits included. */
  said: Said | null;
  /** The same before any edit. */
  opened: Said | null;
  /** `opening`: nothing to show yet. `reckoning`: an edit is on its way, the answer shown is the one before it. */
  phase: 'opening' | 'settled' | 'reckoning' | 'refused';
  problem: ProblemDetails | null;
  /** The edit to be reckoned: a new value for each edit, none once another route is opened. */
  pending: { said: Said; id: string; files: OwnFiles | null } | null;
  /** Counts the times that a route was opened, so that the page can start afresh on it. */
  openings: number;
  /** The user's own files, kept so that they can be sent again. */
  files: OwnFiles | null;
}

type Step =
  | { kind: 'opened'; reply: AnalysisReply; files: OwnFiles | null }
  | { kind: 'edited'; said: Said }
  | { kind: 'kept as'; id: string }
  | { kind: 'reckoned'; reply: AnalysisReply }
  | { kind: 'refused'; problem: ProblemDetails };

const NOTHING: TripState = {
  reply: null,
  said: null,
  opened: null,
  phase: 'opening',
  problem: null,
  pending: null,
  openings: 0,
  files: null,
};

/** The page's state after one step; pure. */
export function nextState(state: TripState, step: Step): TripState {
  switch (step.kind) {
    case 'opened': {
      const { said } = step.reply;
      return {
        ...state,
        reply: step.reply,
        said,
        opened: said,
        files: step.files,
        phase: 'settled',
        problem: null,
        openings: state.openings + 1,
        pending: null,
      };
    }
    case 'edited':
      if (state.reply === null) return state;
      return {
        ...state,
        said: step.said,
        phase: 'reckoning',
        pending: { said: step.said, id: state.reply.id, files: state.files },
      };
    case 'kept as':
      if (state.reply === null || state.said === null) return state;
      return nextState(
        { ...state, reply: { ...state.reply, id: step.id } },
        { kind: 'edited', said: state.said },
      );
    case 'reckoned':
      return { ...state, reply: step.reply, phase: 'settled', problem: null };
    case 'refused':
      return { ...state, problem: step.problem, phase: 'refused' };
  }
}

export const startState = NOTHING;

/**
 * Opens the trip of an id (null: the demo), and keeps the answer in step with the rig and trip as they are edited.
 * `onOpened` and `open` keep their identity.
 */
export function useTrip(id: string | null, onOpened: (opening: Opening) => void) {
  const [state, dispatch] = useReducer(nextState, NOTHING);
  /** The trip on the page, or on its way there; undefined before the first. */
  const shown = useRef<string | null | undefined>(undefined);

  const open = useCallback(
    (opening: Opening, files: OwnFiles | null) => {
      shown.current = opening.kept?.id ?? null;
      dispatch({ kind: 'opened', reply: opening.reply, files });
      if (opening.refused !== null) dispatch({ kind: 'edited', said: opening.refused });
      onOpened(opening);
    },
    [onOpened],
  );
  /** What is on the page is kept under another id from now on, and reckoned under it. */
  const keepAs = useCallback((own: string) => {
    shown.current = own;
    dispatch({ kind: 'kept as', id: own });
  }, []);

  useEffect(() => {
    if (shown.current === id) return;
    const before = shown.current;
    shown.current = id;
    const control = new AbortController();
    let isThere = false;
    loadTrip(id, control.signal).then(
      (opening) => {
        if (control.signal.aborted) return;
        isThere = true;
        open(opening, null);
      },
      (error: unknown) => {
        if (!control.signal.aborted) dispatch({ kind: 'refused', problem: detailsOf(error) });
      },
    );
    return () => {
      control.abort();
      if (!isThere && shown.current === id) shown.current = before;
    };
  }, [id, open]);

  useReckoning(state.pending, dispatch, open);
  const edit = useCallback((said: Said) => dispatch({ kind: 'edited', said }), []);
  return { state, edit, open, keepAs };
}

/** Reckons each edit. */
function useReckoning(
  pending: TripState['pending'],
  dispatch: (step: Step) => void,
  open: (opening: Opening, files: OwnFiles | null) => void,
): void {
  // One run for each edit: a further edit calls off the one before it.
  useEffect(() => {
    if (pending === null) return;
    const { said, id, files } = pending;
    const control = new AbortController();
    const again = async (): Promise<void> => {
      try {
        const reply = await reanalyse(id, said.rig, said.trip, control.signal);
        if (!control.signal.aborted) dispatch({ kind: 'reckoned', reply });
      } catch (error) {
        // A server that keeps nothing for good was started anew; the files are still here, so send them again.
        if (detailsOf(error).code !== 'not-found' || files === null) throw error;
        const own = { ...files, rig: said.rig, trip: said.trip };
        const opened = await keepFiles(own, () => {}, control.signal);
        if (!control.signal.aborted) open({ ...opened, refused: null }, own);
      }
    };
    const timer = setTimeout(() => {
      again().then(
        () => {},
        (error: unknown) => {
          if (!control.signal.aborted) dispatch({ kind: 'refused', problem: detailsOf(error) });
        },
      );
    }, QUIET_MS);
    return () => {
      clearTimeout(timer);
      control.abort();
    };
  }, [pending, dispatch, open]);
}
