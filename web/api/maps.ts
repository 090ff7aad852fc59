import type { OverpassAsk, OverpassQuestion } from '../../server/contract/answers/overpass.ts';
import type { ExtractList, ExtractsForTrip, KeptExtract } from '../../server/contract/kept.ts';
import type { ExtractReading, ExtractReadings } from '../../server/contract/supplies/readings.ts';
import { request, sendForm, type UploadStage } from './api.ts';
import { json, pathOf, type Written, write } from './kept.ts';

/** The extracts that are kept, and those on their way. Throws ApiProblem, as all of these do. */
const getExtracts = (signal: AbortSignal): Promise<ExtractList> => request('/api/extracts', { signal });

/** What each kept extract has for the route of a trip. */
export const getExtractsFor = (id: string, signal: AbortSignal): Promise<ExtractsForTrip> =>
  request(pathOf(id, '/extracts'), { signal });

/** Keeps a map file for any number of trips; one that is kept already comes back as it is. */
export function keepExtract(
  file: File,
  onStage: (stage: UploadStage) => void,
  signal: AbortSignal,
): Promise<KeptExtract> {
  const form = new FormData();
  form.append('extract', file, file.name);
  return sendForm('/api/extracts', form, onStage, signal);
}

/** Adds a kept extract to a trip. */
export const addExtract = (id: string, body: { revision: number; extract: string }): Promise<Written> =>
  write(pathOf(id, '/extracts'), json('POST', body));

/** Takes an extract off a trip, by the name that answers give it. */
export const takeOffExtract = (id: string, body: { revision: number; name: string }): Promise<Written> =>
  write(pathOf(id, '/extracts/remove'), json('POST', body));

/** What an Overpass server would be asked for the corridor of a trip; nothing is sent. */
export const getOverpassQuestion = (
  id: string,
  corridorKm: number | null,
  signal: AbortSignal,
): Promise<OverpassQuestion> =>
  request(pathOf(id, corridorKm === null ? '/overpass' : `/overpass?corridorKm=${corridorKm}`), { signal });

/** Has the server asked what was shown; gives the extract that came of it. */
export const askOverpass = (id: string, ask: OverpassAsk, signal: AbortSignal): Promise<KeptExtract> =>
  request(pathOf(id, '/overpass'), { ...json('POST', ask), signal });

/** Between two questions where events do not come through, ms. */
const POLL_MS = 1_000;

/** Tells how extracts on their way go on, by the server's events, or by asking again and again where none come through. */
export function watchReadings(onReadings: (readings: readonly ExtractReading[]) => void): () => void {
  const control = new AbortController();
  const poll = async (): Promise<void> => {
    if (control.signal.aborted) return;
    const list = await getExtracts(control.signal).catch(() => null);
    if (control.signal.aborted) return;
    if (list !== null) onReadings(list.reading);
    setTimeout(() => void poll(), POLL_MS);
  };
  if (typeof EventSource === 'undefined') {
    void poll();
    return () => control.abort();
  }
  const source = new EventSource('/api/extracts/readings');
  let hasCome = false;
  source.addEventListener('readings', ({ data }: MessageEvent<string>) => {
    hasCome = true;
    onReadings((JSON.parse(data) as ExtractReadings).reading);
  });
  // A stream that ended comes again by itself; where none ever came something between does not let it through.
  source.addEventListener('error', () => {
    if (hasCome) return;
    source.close();
    void poll();
  });
  return () => {
    source.close();
    control.abort();
  };
}
