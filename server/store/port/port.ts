import type { Bbox } from '../../contract/common.ts';
import type { KeptExtract, KeptRig, KeptTripReply, TripChangeEntry } from '../../contract/kept.ts';
import type { Problem } from '../../core/input/problem.ts';

/** A trip as it lies in the store. */
export interface StoredTrip extends KeptTripReply {
  /** Grows with each change of the maps beside it: one id and one of these is one content. */
  mapsRevision: number;
}

/** An extract as it lies in the store, whole. */
export type StoredExtract = KeptExtract;

/** Something with a place, as JSON, and the box that it lies in. */
export interface BoxedRow {
  box: Bbox;
  json: string;
}

export interface TripTable {
  /** Deleted ones too, in no order. */
  all(): StoredTrip[];
  get(id: string): StoredTrip | null;
  put(trip: StoredTrip): void;
  /** Takes a trip away for good, with all that belongs to it. */
  remove(id: string): void;
  /** The route's file as it came; null where there is no such trip. */
  route(id: string): Uint8Array | null;
  putRoute(id: string, bytes: Uint8Array): void;
  /** What the extracts show near the route (maps-codec.ts); null where the trip goes by the demo's own. */
  maps(id: string): Uint8Array | null;
  putMaps(id: string, bytes: Uint8Array | null): void;
  /** The newest first. */
  changes(id: string): TripChangeEntry[];
  changeAt(id: string, seq: number): TripChangeEntry | null;
  /** The last number given; -1 where there is none. */
  lastChange(id: string): number;
  addChange(id: string, entry: TripChangeEntry): void;
  /** Takes away all but the newest. */
  keepChanges(id: string, newest: number): void;
  clearChanges(id: string): void;
}

export interface RigTable {
  all(): KeptRig[];
  put(rig: KeptRig): void;
  /** Whether there was one. */
  remove(name: string): boolean;
}

/** Extracts are hidden until they are whole, and again before they go: a process may end at any moment between. */
export interface ExtractTable {
  /** Whole ones alone. */
  all(): StoredExtract[];
  /** Of whole ones, those that cannot be read among them; the ids of all where it is left out. */
  ids?(): string[];
  hidden(): string[];
  /** Begins one, hidden and empty. */
  begin(id: string): void;
  addPoints(id: string, rows: readonly BoxedRow[]): void;
  addGround(id: string, rows: readonly BoxedRow[]): void;
  /** From now on it counts. */
  show(extract: StoredExtract): void;
  hide(id: string): void;
  /** Takes away up to so many rows of a hidden one; whether any is left. With the last row it is gone itself. */
  dropSome(id: string, most: number): boolean;
  /** The JSON of points whose box touches one of the boxes, each once; boxes do not cross the 180th meridian. */
  pointsIn(id: string, boxes: readonly Bbox[]): string[];
  groundIn(id: string, box: Bbox, most: number): string[];
}

/** Work that one process does at a time: taking extracts in and away. */
export type JobName = 'extracts';

/** A job that is ours until we release it, or our process ends. */
export interface Claim {
  release(): void;
}

/** The files of extracts, in parts numbered from 0, where servers with a folder each share them. */
export interface FileTable {
  putPart(extract: string, part: number, bytes: Uint8Array): void;
  /** Null behind the last. */
  part(extract: string, part: number): Uint8Array | null;
}

/** Where things are kept. All methods are whole or nothing by themselves, and all inside one `transaction` together. */
export interface StoreDriver {
  readonly trips: TripTable;
  readonly rigs: RigTable;
  readonly extracts: ExtractTable;
  /** Absent where a folder has the files for all who use the store. */
  readonly files?: FileTable;
  transaction<T>(work: () => T): T;
  /** Null while another process has the job. */
  claim(job: JobName): Claim | null;
  /** Why what is written does not last, of a driver that lost its disk; null or absent while all is well. */
  readonly trouble?: Problem | null;
  /** Of such a driver: tries whether the disk takes all again. */
  tryDisk?(): void;
  /** What lies there and cannot be read, as another program changed it: "trip ID". It is left as it is, and in no list. */
  damaged?(): string[];
  close(): void;
}
