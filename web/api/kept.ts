import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { KeptTripReply, TripChanges, TripList } from '../../server/contract/kept.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import {
  ApiProblem,
  detailsOf,
  inLanguage,
  type OwnFiles,
  problemFrom,
  reanalyse,
  request,
  sendForm,
  type UploadStage,
} from './api.ts';

/** A write that goes out from a revision: what is kept after it, or what is kept instead. */
export type Written =
  /** `isLasting`: for good, and not until the server stops. */
  | { readonly outcome: 'saved'; readonly kept: KeptTripReply; readonly isLasting: boolean }
  | { readonly outcome: 'elsewhere'; readonly kept: KeptTripReply };

/** Where a kept trip is. */
export const pathOf = (id: string, rest = ''): string => `/api/trips/${encodeURIComponent(id)}${rest}`;

/** A request with a body. */
export const json = (method: string, body: unknown): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

/** Sends a write that goes out from a revision. Throws ApiProblem. */
export async function write(path: string, init: RequestInit): Promise<Written> {
  let response: Response;
  try {
    response = await fetch(path, inLanguage(init));
  } catch (error) {
    throw new ApiProblem(detailsOf(error));
  }
  const text = await response.text();
  if (response.ok) {
    const isLasting = response.headers.get('drystage-keeps') !== 'memory';
    return { outcome: 'saved', kept: JSON.parse(text) as KeptTripReply, isLasting };
  }
  const problem = problemFrom(response.status, text);
  if (problem.code !== 'changed-elsewhere') throw new ApiProblem(problem);
  return { outcome: 'elsewhere', kept: (JSON.parse(text) as { kept: KeptTripReply }).kept };
}

/** The trips that are kept, those last changed first. Throws ApiProblem, as all of these do. */
export const getTrips = (signal: AbortSignal): Promise<TripList> => request('/api/trips', { signal });

/** Ends the session, in which the browser's own copies go too. */
export const signOut = (): Promise<unknown> => request('/api/session', { method: 'DELETE' });

export const getTrip = (id: string): Promise<KeptTripReply> => request(pathOf(id), {});

export const getChanges = (id: string): Promise<TripChanges> => request(pathOf(id, '/changes'), {});

/** Puts rig and trip in place of what is kept at that revision. */
export const putTrip = (
  id: string,
  body: { revision: number; rig: RigFile; trip: TripFile; change: string },
): Promise<Written> => write(pathOf(id), json('PUT', body));

/** Goes to the state after one of the changes. */
export const standTrip = (id: string, body: { revision: number; seq: number }): Promise<Written> =>
  write(pathOf(id, '/stand'), json('POST', body));

export const nameTrip = (id: string, body: { revision: number; name: string }): Promise<Written> =>
  write(pathOf(id), json('PATCH', body));

export const duplicateTrip = (id: string, name?: string): Promise<KeptTripReply> =>
  request(pathOf(id, '/duplicate'), json('POST', name === undefined ? {} : { name }));

export const deleteTrip = (id: string): Promise<KeptTripReply> => request(pathOf(id), { method: 'DELETE' });

export const restoreTrip = (id: string): Promise<KeptTripReply> =>
  request(pathOf(id, '/restore'), { method: 'POST' });

export const resetDemo = (): Promise<KeptTripReply> => request('/api/trips/demo/reset', { method: 'POST' });

/** Where the whole trip is to be had as one file. */
export const exportPath = (id: string): string => pathOf(id, '/export');

/** Keeps the trip of a file that another Drystage wrote. */
export function importTrip(
  file: File,
  onStage: (stage: UploadStage) => void,
  signal: AbortSignal,
): Promise<KeptTripReply> {
  const form = new FormData();
  form.append('trip', file, file.name);
  return sendForm('/api/trips/import', form, onStage, signal);
}

/** A kept trip with its answer. */
export interface OpenedTrip {
  readonly kept: KeptTripReply;
  readonly reply: AnalysisReply;
}

/**
 * Keeps the reader's files as a trip and gives its answer. What cannot be analysed is not left behind: the reader still has
 * the files chosen.
 */
export async function keepFiles(
  files: OwnFiles,
  onStage: (stage: UploadStage) => void,
  signal: AbortSignal,
): Promise<OpenedTrip> {
  const asText = (value: RigFile | TripFile | string) =>
    typeof value === 'string' ? value : JSON.stringify(value);
  const form = new FormData();
  form.append('rig', asText(files.rig));
  if (files.trip !== null) form.append('trip', asText(files.trip));
  form.append('route', files.route, files.route.name);
  for (const extract of files.extracts) form.append('extract', extract, extract.name);
  const kept = await sendForm<KeptTripReply>('/api/trips', form, onStage, signal);
  try {
    return { kept, reply: await reanalyse(kept.id, kept.rig, kept.trip, signal) };
  } catch (error) {
    await deleteTrip(kept.id).catch(() => {});
    throw error;
  }
}
