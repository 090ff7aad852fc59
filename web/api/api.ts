import type { Comparison } from '../../server/contract/answers/compare.ts';
import type { NotesFormat } from '../../server/contract/answers/field-notes.ts';
import type { LogResult } from '../../server/contract/answers/log.ts';
import type { AnalysisReply } from '../../server/contract/answers/map.ts';
import type { Paper } from '../../server/contract/answers/sheet.ts';
import type { RigFile } from '../../server/contract/rig.ts';
import type { TripFile } from '../../server/contract/trip.ts';
import type { PlanReply } from '../../server/contract/whatif.ts';
import { unitsText } from '../../server/words/parts/reader-units.ts';
import { language } from '../language/language.ts';
import { t } from '../language/t.ts';
import { type UnitSystem, unitsOf } from '../units/conversions.ts';
import { noteReach } from './reach.ts';
import { signedOut } from './signed-out.ts';

/** An error as the server words it (RFC 9457), with the place in the input and what to do. */
export interface ProblemDetails {
  code: string;
  title: string;
  status: number;
  detail: string;
  source: string | null;
  place: string | null;
  remedy: string | null;
  /** An unusual figure at `place`, taken once the reader says that it is meant so. */
  vouchable: boolean;
}

/** A refusal or failure of a request; `details` are fit for the reader. */
export class ApiProblem extends Error {
  readonly details: ProblemDetails;
  constructor(details: ProblemDetails) {
    super(details.detail);
    this.name = 'ApiProblem';
    this.details = details;
    if (details.code === 'not-signed-in') signedOut();
  }
}

/** What the reader sends: their own files, and the rig and trip as values or as the text of a file. */
export interface OwnFiles {
  route: File;
  extracts: readonly File[];
  rig: RigFile | string;
  trip: TripFile | string | null;
}

/** How an upload stands; `share` is 0 to 1. */
export type UploadStage = { stage: 'sending'; share: number } | { stage: 'reading' };

const NO_ANSWER: ProblemDetails = {
  code: 'no-answer',
  title: t('The server does not answer'),
  status: 0,
  detail: t('The request did not reach Drystage, or its answer did not come back.'),
  source: null,
  place: null,
  remedy: t('See that Drystage is still running, then try again'),
  vouchable: false,
};

const textOf = (value: unknown): string | null => (typeof value === 'string' && value !== '' ? value : null);

/** Reads a problem document; anything else that came instead is named with its status. */
export function problemFrom(status: number, body: string): ProblemDetails {
  let parsed: unknown = null;
  try {
    parsed = JSON.parse(body);
  } catch {
    // Not a problem document: a proxy's page, or nothing at all.
  }
  const fields: Record<string, unknown> = typeof parsed === 'object' && parsed !== null ? { ...parsed } : {};
  return {
    code: textOf(fields.code) ?? 'internal',
    title: textOf(fields.title) ?? t('The server could not do this'),
    status,
    detail: textOf(fields.detail) ?? t`It answered with status ${status} and no reason.`,
    source: textOf(fields.source),
    place: textOf(fields.place),
    remedy: textOf(fields.remedy),
    vouchable: fields.vouchable === true,
  };
}

/** True when a request ended because it was called off, which is no failure. */
export const wasCalledOff = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';

/** What to show for any thrown value. */
export const detailsOf = (error: unknown): ProblemDetails =>
  error instanceof ApiProblem ? error.details : NO_ANSWER;

/** A request that is answered in the language of the page. */
export const inLanguage = (init: RequestInit): RequestInit => ({
  ...init,
  headers: { ...Object.fromEntries(new Headers(init.headers)), 'accept-language': language },
});

export const request = async <T = AnalysisReply>(path: string, init: RequestInit): Promise<T> =>
  (await (await answerTo(path, init)).json()) as T;

/** The answer to a request, where it is no problem. Throws ApiProblem. */
export async function answerTo(path: string, init: RequestInit): Promise<Response> {
  let response: Response;
  try {
    response = await fetch(path, inLanguage(init));
  } catch (error) {
    if (wasCalledOff(error)) throw error;
    throw new ApiProblem(NO_ANSWER);
  }
  if (!response.ok) throw new ApiProblem(problemFrom(response.status, await response.text()));
  noteReach(response);
  return response;
}

/** The demo's answer. Throws ApiProblem. */
export const getDemo = (signal: AbortSignal): Promise<AnalysisReply> => request('/api/demo', { signal });

/** Reckons again what was loaded under `id`, with another rig or trip. Throws ApiProblem. */
export const reanalyse = (
  id: string,
  rig: RigFile,
  trip: TripFile,
  signal: AbortSignal,
): Promise<AnalysisReply> =>
  request(`/api/analyses/${encodeURIComponent(id)}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ rig, trip }),
    signal,
  });

/** The rig that a file's text holds, as it was written. Throws ApiProblem with the line of what is wrong. */
export const readRig = async (text: string): Promise<RigFile> =>
  (await request<{ rig: RigFile }>('/api/rig-files', plainText(text))).rig;

/** The trip that a file's text holds, as it was written. Throws ApiProblem with the line of what is wrong. */
export const readTrip = async (text: string): Promise<TripFile> =>
  (await request<{ trip: TripFile }>('/api/trip-files', plainText(text))).trip;

/** What a log of fill-ups or of water teaches; `asked`: one surface only, or the crew to plan for. Throws ApiProblem. */
export function readLog(log: File, asked: { surface?: string; people?: string }): Promise<LogResult> {
  const form = new FormData();
  form.append('log', log, log.name);
  const query = new URLSearchParams(asked).toString();
  return request(`/api/logs${query === '' ? '' : `?${query}`}`, { method: 'POST', body: form });
}

/** How several rigs fare on what was loaded under `id`. Throws ApiProblem. */
export const compareRigs = (
  id: string,
  rigs: readonly RigFile[],
  trip: TripFile,
  signal: AbortSignal,
): Promise<Comparison> =>
  request(`/api/analyses/${encodeURIComponent(id)}/compare`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ rigs, trip }),
    signal,
  });

/**
 * The carry plan on what was loaded under `id`, with what-ifs and gauge. Without `extras` it is quicker and has
 * neither ways out nor the plan against one failure. Under its name a good one can be asked for meanwhile. Throws
 * ApiProblem.
 */
export const planTrip = (
  id: string,
  body: { rig: RigFile; trip: TripFile; extras: boolean; name?: string },
  signal: AbortSignal,
): Promise<PlanReply> =>
  request(`/api/analyses/${encodeURIComponent(id)}/plan`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
    signal,
  });

/** A good plan while the best is still searched for under that name; null while there is none. Throws ApiProblem. */
export async function planSoFar(name: string, signal: AbortSignal): Promise<PlanReply | null> {
  const answer = await answerTo(`/api/plans/${encodeURIComponent(name)}`, { signal });
  return answer.status === 204 ? null : ((await answer.json()) as PlanReply);
}

/** The sheet to print of what was loaded under `id`, as a page of HTML that needs nothing else. Throws ApiProblem. */
export async function sheetPage(
  id: string,
  { rig, trip }: { rig: RigFile; trip: TripFile },
  { paper, units, signal }: { paper: Paper; units: UnitSystem; signal: AbortSignal },
): Promise<string> {
  const path = `/api/analyses/${encodeURIComponent(id)}/sheet?${new URLSearchParams({ paper, units: unitsText(unitsOf(units)) }).toString()}`;
  return (await answerTo(path, { ...asJson({ rig, trip }), signal })).text();
}

const asJson = (value: object): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(value),
});

/** The notes of a trip as the text of a file. Throws ApiProblem. */
export const exportNotes = async (trip: TripFile, format: NotesFormat): Promise<string> =>
  (await answerTo('/api/notes/export', asJson({ trip, format }))).text();

/** A trip with the notes of a file, how many were new to it, and how many objects are none. */
export interface ImportedNotes {
  trip: TripFile;
  added: number;
  replaced: number;
  others: number;
}

/** Throws ApiProblem with the place in the file that is wrong. */
export const importNotes = async (trip: TripFile, file: File): Promise<ImportedNotes> =>
  request('/api/notes/import', asJson({ trip, text: await file.text(), source: file.name }));

const plainText = (text: string): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'text/plain' },
  body: text,
});

/**
 * Sends a form and gives what came back. XMLHttpRequest, because fetch does not tell how much of an upload has gone. Throws
 * ApiProblem, or AbortError when `signal` called it off.
 */
export function sendForm<T>(
  path: string,
  form: FormData,
  onStage: (stage: UploadStage) => void,
  signal: AbortSignal,
): Promise<T> {
  return new Promise((resolve, reject) => {
    const upload = new XMLHttpRequest();
    const calledOff = () => reject(new DOMException('called off', 'AbortError'));
    if (signal.aborted) {
      calledOff();
      return;
    }
    signal.addEventListener('abort', () => upload.abort(), { once: true });
    upload.upload.addEventListener('progress', (event) => {
      if (event.lengthComputable) onStage({ stage: 'sending', share: event.loaded / event.total });
    });
    upload.upload.addEventListener('load', () => onStage({ stage: 'reading' }));
    upload.addEventListener('abort', calledOff);
    upload.addEventListener('error', () => reject(new ApiProblem(NO_ANSWER)));
    upload.addEventListener('load', () => {
      if (upload.status < 200 || upload.status >= 300) {
        reject(new ApiProblem(problemFrom(upload.status, upload.responseText)));
        return;
      }
      try {
        resolve(JSON.parse(upload.responseText) as T);
      } catch {
        reject(new ApiProblem(NO_ANSWER));
      }
    });
    upload.open('POST', path);
    upload.setRequestHeader('accept-language', language);
    upload.send(form);
  });
}

/** The files to take along that the server makes, by their endings. */
export type TakeAlongFormat = 'html' | 'pdf' | 'gpx' | 'geojson' | 'csv' | 'ics';

/** The carry plan of what was loaded under `id` as a file to take along. Throws ApiProblem. */
export async function takeAlong(
  id: string,
  format: TakeAlongFormat,
  { rig, trip, units }: { rig: RigFile; trip: TripFile; units: UnitSystem },
): Promise<Blob> {
  const query = new URLSearchParams({ units: unitsText(unitsOf(units)) }).toString();
  const answer = await answerTo(`/api/analyses/${encodeURIComponent(id)}/files/${format}?${query}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ rig, trip }),
  });
  return answer.blob();
}
