import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { KeptTripReply } from '../../server/contract/kept.ts';
import { ApiProblem, detailsOf, getDemo, reanalyse } from '../api/api.ts';
import { getChanges, getTrip } from '../api/kept.ts';
import { t } from '../language/t.ts';
import type { Said } from './said.ts';

/** A trip as it is opened. */
export interface Opening {
  /** Null for the demo, which is kept as it is. */
  readonly kept: KeptTripReply | null;
  readonly reply: AnalysisReply;
  /** What is said, where the reply is of something else: it was refused when it was reckoned. */
  readonly refused: Said | null;
}

/** So many states before a refused one are tried for an answer to show meanwhile (ours). */
const MOST_BEFORE = 10;

/** The kept trip of an id with its answer, the demo where it is null. Throws ApiProblem. */
export async function loadTrip(id: string | null, signal: AbortSignal): Promise<Opening> {
  if (id === null || id === 'demo') return { kept: null, reply: await getDemo(signal), refused: null };
  const kept = await getTrip(id);
  if (kept.deletedAt !== null) throw new ApiProblem(deleted(kept.name));
  try {
    return { kept, reply: await reanalyse(id, kept.rig, kept.trip, signal), refused: null };
  } catch (error) {
    const { status, code } = detailsOf(error);
    if (status < 400 || status >= 500 || code === 'not-found') throw error;
    const reply = await lastAnswer(kept, signal);
    if (reply === null) throw error;
    return { kept, reply, refused: { rig: kept.rig, trip: kept.trip } };
  }
}

/** The answer to the last state before one that is refused; null where there is none. */
async function lastAnswer(
  { id, standsAt }: KeptTripReply,
  signal: AbortSignal,
): Promise<AnalysisReply | null> {
  const { changes } = await getChanges(id);
  const before = changes.filter(({ seq }) => seq < standsAt).slice(0, MOST_BEFORE);
  for (const { rig, trip } of before) {
    const reply = await reanalyse(id, rig, trip, signal).catch((error: unknown) => {
      if (detailsOf(error).status === 0) throw error;
      return null;
    });
    if (reply !== null) return reply;
  }
  return null;
}

const deleted = (name: string) => ({
  code: 'deleted',
  title: t('This trip was deleted'),
  status: 410,
  detail: t`"${name}" was deleted.`,
  source: null,
  place: null,
  remedy: t('Restore it from the list of trips'),
  vouchable: false,
});
