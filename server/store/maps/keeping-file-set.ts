import type { LoadedTrip } from '../../app/loaded-trip.ts';
import type { NamedFile, SuppliesRead, TripFileSet, Watch } from '../../app/ports.ts';
import type { Outcome } from '../../core/input/problem.ts';
import type { RouteDocument, Waypoint } from '../../core/input/sources.ts';
import { readGpx, readGpxBytes } from '../../io/gpx/read-gpx.ts';
import type { RawExtract } from '../../io/osm/extract/raw-extract.ts';
import { groundFeatures } from '../../io/osm/keep/ground-features.ts';
import { campsOf, caught, extentOf, readExtracts, suppliesOf } from '../../io/trip-file-set.ts';
import { NO_MAPS, type TripMaps } from './trip-maps.ts';

/** Where a trip comes from that is, or will be, kept. */
export interface KeptSources {
  /** The route's file, where it is kept already. */
  route?: Uint8Array;
  /** What was read of extracts before. */
  maps?: TripMaps;
}

/** Reads a trip's files so that they can be kept, beside what is kept of them already. */
export class KeepingFileSet implements TripFileSet {
  readonly campsOf = campsOf;
  readonly #route: Uint8Array | null;
  readonly #before: TripMaps;
  #fresh: readonly RawExtract[] = [];

  constructor({ route, maps }: KeptSources) {
    this.#route = route ?? null;
    this.#before = maps ?? NO_MAPS;
  }

  readRoute({ path, source }: NamedFile, { signal }: Watch): Promise<Outcome<RouteDocument>> {
    const bytes = this.#route;
    return caught(() => (bytes === null ? readGpx(path, source, signal) : readGpxBytes(bytes, source)));
  }

  async readSupplies(
    files: readonly NamedFile[],
    waypoints: readonly Waypoint[],
    area: Parameters<TripFileSet['readSupplies']>[2],
    watch: Watch,
  ): Promise<Outcome<SuppliesRead>> {
    const read = await readExtracts(files, area, watch);
    if (!read.ok) return read;
    const before = this.#before;
    this.#fresh = read.value;
    const ground = this.#fresh.flatMap((extract) => groundFeatures(extract.ground));
    return {
      ok: true,
      value: {
        supplies: suppliesOf([...before.extracts, ...this.#fresh], waypoints),
        extents: [...before.extents, ...this.#fresh.map(extentOf)],
        ground: [...before.ground, ...ground],
        ...(files.length === 0 && { groundLeftOut: before.groundLeftOut }),
      },
    };
  }

  /** What is to be kept of the trip that was loaded by this. */
  maps({ extents, ground, supplies }: LoadedTrip): TripMaps {
    const before = this.#before;
    const leftOut =
      this.#fresh.length === 0 ? before.groundLeftOut : before.groundLeftOut + thinnedBy(supplies);
    return {
      extracts: [...before.extracts, ...this.#fresh.map((extract) => ({ ...extract, ground: [] }))],
      extents,
      ground,
      groundLeftOut: leftOut,
    };
  }
}

/** How many lines were left out of the ground when the trip was loaded. */
function thinnedBy({ cautions }: LoadedTrip['supplies']): number {
  for (const caution of cautions)
    if (caution.code === 'ground-thinned' && 'leftOut' in caution.facts) return caution.facts.leftOut;
  return 0;
}
