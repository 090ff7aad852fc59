import { analyseTrip } from '../app/analyse-trip.ts';
import { compareRigs, type NamedRig } from '../app/compare/compare.ts';
import type { RigAndTrip } from '../app/input/plan-input.ts';
import { keptResults } from '../app/kept/kept-results.ts';
import { learnLog } from '../app/learn-log.ts';
import { loadTrip } from '../app/load-trip.ts';
import type { LoadedTrip } from '../app/loaded-trip.ts';
import { kmOffRoute } from '../app/near-route.ts';
import type { NamedFile } from '../app/ports.ts';
import { routeProblem } from '../app/route-problem.ts';
import type { Bbox } from '../contract/common.ts';
import type { KeptResults } from '../contract/kept.ts';
import type { RigFile } from '../contract/rig.ts';
import type { TripFile } from '../contract/trip.ts';
import { PART, SPARSE_STEP_KM } from '../core/defaults/trip-defaults.ts';
import type { Outcome } from '../core/input/problem.ts';
import type { LearnOptions } from '../core/log/learn.ts';
import { metresOf } from '../core/quantity/rates.ts';
import { routeOf } from '../core/route/build/route-of.ts';
import { boxesAlong } from '../core/route/cover/boxes-along.ts';
import { logText } from '../io/log-file.ts';
import { openingHours } from '../io/opening-hours.ts';
import type { FetchedBox } from '../io/overpass/fetch-corridor.ts';
import { mergeChunks } from '../io/overpass/merge-chunks.ts';
import { parseRig } from '../io/rig-file.ts';
import { parseTrip } from '../io/trip-file.ts';
import { tripFileSet } from '../io/trip-file-set.ts';
import { type Ingested, ingest } from '../store/extracts/ingest.ts';
import { KeepingFileSet } from '../store/maps/keeping-file-set.ts';
import { NO_MAPS, packMaps, unpackMaps, withoutExtract } from '../store/maps/trip-maps.ts';
import type { TripFromFile } from '../store/trip-file/read-trip-file.ts';
import { type TripToWrite, tripFileText } from '../store/trip-file/write-trip-file.ts';
import { openTripFile } from './open-trip-file.ts';
import { packTrip, unpackTrip } from './pack.ts';
import { replyText } from './reply-text.ts';

export { speaking } from './speaking.ts';

export interface LoadAsk {
  route: NamedFile;
  extracts: NamedFile[];
  notice: string | null;
}

/** A trip of the store to be loaded again. */
export interface LoadKeptAsk {
  route: Uint8Array;
  /** The route's file as the user named it. */
  source: string;
  maps: Uint8Array;
  notice: string | null;
}

/** Files to read so that they can be kept. */
export interface KeepAsk {
  /** Its bytes where it is kept already, else its file. */
  route: NamedFile | { bytes: Uint8Array; source: string };
  /** What is kept of extracts, to be united with the others; null for nothing. */
  maps: Uint8Array | null;
  extracts: NamedFile[];
  /** Of what is kept, an extract that is to be left out. */
  without?: string;
  notice: string | null;
}

/** An extract to be taken in. */
export interface IngestAsk extends NamedFile {
  /** Two numbers, seen by both threads: bytes read, and in all (0 when unknown). */
  progress: SharedArrayBuffer;
}

/** Answers of an Overpass server to be made one file. */
export interface MergeAsk {
  fetched: FetchedBox[];
  to: string;
}

/** A kept trip's route, and boxes of which it is asked how far off they lie. */
export interface AlongAsk extends Pick<LoadKeptAsk, 'route' | 'source'> {
  marginKm: number;
  extents: readonly (Bbox | null)[];
}

export interface AlongGive {
  /** In them lies all within the margin. */
  boxes: Bbox[];
  offKm: (number | null)[];
}

/** What is to be kept of extracts, and the trip loaded. */
export interface KeepGive {
  maps: Uint8Array;
  packed: SharedArrayBuffer;
}

export interface AnalyseAsk {
  /** Goes into the reply. */
  id: string;
  /** Names the packed trip where the id does not: one key, one content. */
  key?: string;
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

/** Rig and trip as they came, YAML or JSON. */
export interface PlanTexts {
  rig: string;
  trip: string | null;
}

/** A reply as JSON text in UTF-8, and what is kept of it. */
export interface AnalysedKept {
  reply: Uint8Array<ArrayBuffer>;
  results: KeptResults;
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

  /** Loads a trip of the store; gives it packed. */
  async loadKept({ route, source, maps, notice }: LoadKeptAsk): Promise<Outcome<SharedArrayBuffer>> {
    const files = new KeepingFileSet({ route, maps: unpackMaps(maps) });
    const loaded = await loadTrip(keptRequest({ source, notice, extracts: [] }), files);
    return loaded.ok ? { ok: true, value: packTrip(loaded.value) } : loaded;
  },

  /** Reads a route and extracts to be kept, beside what is kept of them. */
  async keep(ask: KeepAsk, signal: AbortSignal): Promise<Outcome<KeepGive>> {
    const { route, maps, extracts, without, notice } = ask;
    const before = maps === null ? NO_MAPS : unpackMaps(maps);
    const files = new KeepingFileSet({
      ...('bytes' in route && { route: route.bytes }),
      maps: without === undefined ? before : withoutExtract(before, without),
    });
    const named = 'bytes' in route ? { path: '', source: route.source } : route;
    const request = { ...keptRequest({ source: named.source, notice, extracts }), route: named };
    const loaded = await loadTrip(request, files, { signal });
    if (!loaded.ok) return loaded;
    const bytes = packMaps(files.maps(loaded.value));
    return { ok: true, value: { maps: bytes, packed: packTrip(loaded.value) } };
  },

  /** Reads an extract whole, to be kept. */
  async ingest({ path, source, progress }: IngestAsk, signal: AbortSignal): Promise<Outcome<Ingested>> {
    const bytes = new Float64Array(progress);
    const onProgress = (_source: string, done: number, total: number | null) => {
      bytes.set([done, total ?? 0]);
    };
    return ingest(path, source, { signal, onProgress });
  },

  /** Makes one file of the answers of an Overpass server. */
  async mergeChunks({ fetched, to }: MergeAsk): Promise<Outcome<void>> {
    return mergeChunks(fetched, to);
  },

  /** Where supplies of a kept trip's route are looked for, and how far off it some boxes lie. */
  async alongRoute({ route, source, marginKm, extents }: AlongAsk): Promise<Outcome<AlongGive>> {
    const document = await new KeepingFileSet({ route }).readRoute({ path: '', source }, {});
    if (!document.ok) return document;
    const line = routeOf(document.value, { part: PART, sparseStepM: metresOf(SPARSE_STEP_KM) });
    if (!line.ok) return { ok: false, problem: routeProblem(line.refusal, source) };
    const offKm = extents.map((bbox) => (bbox === null ? null : kmOffRoute(line.value, bbox)));
    return { ok: true, value: { boxes: boxesAlong(line.value, marginKm), offKm } };
  },

  /** Writes a kept trip as a file; gives its text in UTF-8. */
  async writeTrip(ask: TripToWrite): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
    return { ok: true, value: new TextEncoder().encode(tripFileText(ask)) };
  },

  /** Reads a trip's file. */
  async readTrip({ path, source }: NamedFile): Promise<Outcome<TripFromFile>> {
    return openTripFile({ path, source });
  },

  /** Reads rig and trip: YAML of 64 kB takes most of a second. */
  async readPlan({ rig: rigText, trip: tripText }: PlanTexts): Promise<Outcome<RigAndTrip>> {
    const rig = parseRig(rigText, 'rig');
    if (!rig.ok || tripText === null) return rig.ok ? { ok: true, value: { rig: rig.value, trip: {} } } : rig;
    const trip = parseTrip(tripText, 'trip', rig.value);
    return trip.ok ? { ok: true, value: { rig: rig.value, trip: trip.value } } : trip;
  },

  /** Analyses a packed trip; gives the whole AnalysisReply as JSON text in UTF-8. */
  async analyse(ask: AnalyseAsk): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
    const outcome = await tasks.analyseKept(ask);
    return outcome.ok ? { ok: true, value: outcome.value.reply } : outcome;
  },

  /** As analyse, with what is kept of the answer. */
  async analyseKept({ id, key = id, packed, rig, trip, today }: AnalyseAsk): Promise<Outcome<AnalysedKept>> {
    const loaded = unpackedTrip(key, packed);
    const outcome = analyseTrip(loaded, { rig, trip }, { today, openingHours });
    if (!outcome.ok) return outcome;
    const { analysis, map } = outcome.value;
    const reply = new TextEncoder().encode(replyText(id, { rig, trip }, loaded, outcome.value));
    const results = keptResults(analysis, map, new Date().toISOString());
    return { ok: true, value: { reply, results } };
  },

  /** Learns from a log's bytes; gives the LogResult as JSON text in UTF-8. */
  async learn({ bytes, source, ...options }: LearnAsk): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
    const text = logText(bytes, source);
    const lesson = text.ok ? learnLog(text.value, source, options) : text;
    if (!lesson.ok) return lesson;
    return { ok: true, value: new TextEncoder().encode(JSON.stringify(lesson.value)) };
  },

  /** Compares rigs on a packed trip; gives the Comparison as JSON text in UTF-8. */
  async compare({
    id,
    key = id,
    packed,
    rigs,
    trip,
    today,
  }: CompareAsk): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
    const outcome = compareRigs(unpackedTrip(key, packed), { rigs, trip }, { today, openingHours });
    if (!outcome.ok) return outcome;
    return { ok: true, value: new TextEncoder().encode(JSON.stringify(outcome.value)) };
  },
};

/** A trip of which the route is kept: its file lies nowhere. */
const keptRequest = ({
  source,
  notice,
  extracts,
}: Pick<LoadAsk, 'notice' | 'extracts'> & { source: string }) => ({
  route: { path: '', source },
  extracts,
  withGround: true,
  notice,
});

function unpackedTrip(key: string, packed: SharedArrayBuffer): LoadedTrip {
  const loaded = unpacked.get(key) ?? unpackTrip(packed);
  // Last used goes last; the first is let go.
  unpacked.delete(key);
  unpacked.set(key, loaded);
  const [oldest] = unpacked.keys();
  if (unpacked.size > KEPT_UNPACKED && oldest !== undefined) unpacked.delete(oldest);
  return loaded;
}
