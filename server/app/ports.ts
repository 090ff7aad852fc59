import type { TDocumentDefinitions } from 'pdfmake/interfaces';
import type { Bbox } from '../contract/common.ts';
import type { OpeningHoursReader } from '../core/input/opening-hours.ts';
import type { Outcome } from '../core/input/problem.ts';
import type { RouteDocument, Supplies, Waypoint } from '../core/input/sources.ts';
import type { Camp, ExtractExtent, GroundFeature } from './loaded-trip.ts';
import type { NearGrid } from './near-route.ts';

/** A file on disk and what to call it in messages. */
export interface NamedFile {
  path: string;
  source: string;
}

/** How long reading goes on, for whoever watches. */
export interface Watch {
  signal?: AbortSignal;
  /** Bytes read and in all (null when unknown) of the file at hand. */
  onProgress?: (source: string, doneBytes: number, totalBytes: number | null) => void;
}

/** Reads opening hours; server/io/opening-hours.ts implements it, tests hand in their own. */
export type OpeningHours = OpeningHoursReader;

/** What extracts hold, for one route. */
export interface SuppliesRead {
  supplies: Supplies;
  extents: ExtractExtent[];
  ground: GroundFeature[];
  /** Where the ground is thinned for the map already: how many lines were left out. */
  groundLeftOut?: number;
}

/** What the readers of a trip's files give; server/io/trip-file-set.ts implements it, tests hand in their own. */
export interface TripFileSet {
  readRoute(file: NamedFile, watch: Watch): Promise<Outcome<RouteDocument>>;
  /**
   * Reads and unites extracts and the route's own supply waypoints. `area.ground` asks for roads, places and coast in
   * the box, null for none; objects that do not touch `area.near` may be left out, null keeps all.
   */
  readSupplies(
    files: readonly NamedFile[],
    waypoints: readonly Waypoint[],
    area: { ground: Bbox | null; near: NearGrid | null },
    watch: Watch,
  ): Promise<Outcome<SuppliesRead>>;
  campsOf(waypoints: readonly Waypoint[]): Camp[];
}

/** What runs in a file to take along. */
export interface CabProgram {
  /** JavaScript that holds no end of a script element, and its hash for a content security policy. */
  readonly script: string;
  readonly scriptHash: string;
  readonly style: string;
}

/** What makes a PDF file of a description; server/io/pdf/pdf-printer.ts implements it. */
export interface PdfPrinter {
  /** Whether there is a letter for a sign. */
  readonly hasSign: (sign: string) => boolean;
  readonly print: (definition: TDocumentDefinitions) => Promise<Uint8Array>;
}
