import { analyseTrip } from '../app/analyse-trip.ts';
import { compareRigs, type NamedRig } from '../app/compare.ts';
import { learnLog } from '../app/learn-log.ts';
import { loadTrip } from '../app/load-trip.ts';
import type { LoadedTrip } from '../app/loaded-trip.ts';
import type { NamedFile } from '../app/ports.ts';
import type { RigFile } from '../contract/rig.ts';
import type { TripFile } from '../contract/trip.ts';
import type { Outcome } from '../core/input/problem.ts';
import type { LearnOptions } from '../core/log/learn.ts';
import { logText } from '../io/log-file.ts';
import { openingHours } from '../io/opening-hours.ts';
import { tripFileSet } from '../io/trip-file-set.ts';
import { packTrip, unpackTrip } from './pack.ts';
import { replyText } from './reply-text.ts';

export interface LoadAsk {
  route: NamedFile;
  extracts: NamedFile[];
  notice: string | null;
}

export interface AnalyseAsk {
  /** Names the packed trip: one id, one content. */
  id: string;
  packed: SharedArrayBuffer;
  rig: RigFile;
  trip: TripFile;
  today: string;
}

export interface CompareAsk extends Omit<AnalyseAsk, 'rig'> {
  rigs: readonly NamedRig[];
}

export interface LearnAsk extends LearnOptions {
  bytes: Uint8Array;
  source: string;
}

/** Trips that this worker keeps unpacked: the one a person works on, and another. */
const KEPT_UNPACKED = 2;
const unpacked = new Map<string, LoadedTrip>();

/** What the server's workers do. */
export const tasks = {
  /** Reads a route and extracts; gives the loaded trip packed. */
  async load({ route, extracts, notice }: LoadAsk, signal: AbortSignal): Promise<Outcome<SharedArrayBuffer>> {
    const request = { route, extracts, withGround: true, notice };
    const loaded = await loadTrip(request, tripFileSet, { signal });
    return loaded.ok ? { ok: true, value: packTrip(loaded.value) } : loaded;
  },

  /** Analyses a packed trip; gives the whole AnalysisReply as JSON text in UTF-8. */
  async analyse({ id, packed, rig, trip, today }: AnalyseAsk): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
    const loaded = unpackedTrip(id, packed);
    const outcome = analyseTrip(loaded, { rig, trip }, { today, openingHours });
    if (!outcome.ok) return outcome;
    return { ok: true, value: new TextEncoder().encode(replyText(id, { rig, trip }, loaded, outcome.value)) };
  },

  /** Learns from a log's bytes; gives the LogResult as JSON text in UTF-8. */
  async learn({ bytes, source, ...options }: LearnAsk): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
    const text = logText(bytes, source);
    const lesson = text.ok ? learnLog(text.value, source, options) : text;
    if (!lesson.ok) return lesson;
    return { ok: true, value: new TextEncoder().encode(JSON.stringify(lesson.value)) };
  },

  /** Compares rigs on a packed trip; gives the Comparison as JSON text in UTF-8. */
  async compare({ id, packed, rigs, trip, today }: CompareAsk): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
    const outcome = compareRigs(unpackedTrip(id, packed), { rigs, trip }, { today, openingHours });
    if (!outcome.ok) return outcome;
    return { ok: true, value: new TextEncoder().encode(JSON.stringify(outcome.value)) };
  },
};

function unpackedTrip(id: string, packed: SharedArrayBuffer): LoadedTrip {
  const loaded = unpacked.get(id) ?? unpackTrip(packed);
  // Last used goes last; the first is let go.
  unpacked.delete(id);
  unpacked.set(id, loaded);
  const [oldest] = unpacked.keys();
  if (unpacked.size > KEPT_UNPACKED && oldest !== undefined) unpacked.delete(oldest);
  return loaded;
}
