import { useCallback, useEffect, useReducer } from 'react';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import {
  detailsOf,
  getDemo,
  type OwnFiles,
  type ProblemDetails,
  reanalyse,
  sendFiles,
  wasCalledOff,
} from '../api/api.ts';
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
    case 'reckoned':
      return { ...state, reply: step.reply, phase: 'settled', problem: null };
    case 'refused':
      return { ...state, problem: step.problem, phase: 'refused' };
  }
}

export const startState = NOTHING;

/** Opens the demo, and keeps the answer in step with the rig and trip as they are edited. */
export function useTrip() {
  const [state, dispatch] = useReducer(nextState, NOTHING);

  useEffect(() => {
    const control = new AbortController();
    getDemo(control.signal).then(
      (reply) => dispatch({ kind: 'opened', reply, files: null }),
      (error: unknown) => {
        if (!wasCalledOff(error)) dispatch({ kind: 'refused', problem: detailsOf(error) });
      },
    );
    return () => control.abort();
  }, []);

  // One run for each edit: a further edit calls off the one before it.
  const { pending } = state;
  useEffect(() => {
    if (pending === null) return;
    const { said, id, files } = pending;
    const control = new AbortController();
    const again = async (): Promise<AnalysisReply> => {
      try {
        return await reanalyse(id, said.rig, said.trip, control.signal);
      } catch (error) {
        // The server keeps only the last few loaded routes; the files are still here, so send them again.
        if (detailsOf(error).code !== 'not-found' || files === null) throw error;
        return sendFiles({ ...files, rig: said.rig, trip: said.trip }, () => {}, control.signal);
      }
    };
    const timer = setTimeout(() => {
      again().then(
        (answer) => {
          if (!control.signal.aborted) dispatch({ kind: 'reckoned', reply: answer });
        },
        (error: unknown) => {
          if (!control.signal.aborted) dispatch({ kind: 'refused', problem: detailsOf(error) });
        },
      );
    }, QUIET_MS);
    return () => {
      clearTimeout(timer);
      control.abort();
    };
  }, [pending]);

  const edit = useCallback((said: Said) => dispatch({ kind: 'edited', said }), []);
  const open = useCallback(
    (reply: AnalysisReply, files: OwnFiles) => dispatch({ kind: 'opened', reply, files }),
    [],
  );
  return { state, edit, open };
}
