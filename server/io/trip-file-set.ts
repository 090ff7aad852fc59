import type { Camp, ExtractExtent } from '../app/loaded-trip.ts';
import { boxOf } from '../app/near-route.ts';
import type { NamedFile, TripFileSet, Watch } from '../app/ports.ts';
import type { Bbox } from '../contract/common.ts';
import { InputProblem, type Outcome } from '../core/input/problem.ts';
import type { Supplies, Waypoint } from '../core/input/sources.ts';
import { readGpx } from './gpx/read-gpx.ts';
import { farCount, joinedBoxes } from './osm/extract/far-objects.ts';
import type { RawElement } from './osm/extract/raw-element.ts';
import type { RawExtract, ReadOptions } from './osm/extract/raw-extract.ts';
import { groundFeatures } from './osm/keep/ground-features.ts';
import { readExtract } from './osm/read-extract.ts';
import { unite } from './osm/unite/unite.ts';
import { isCamp, waypointFeatures } from './osm/waypoints/waypoints.ts';

/** A trip's files on this machine's disk. */
export const tripFileSet: TripFileSet = {
  readRoute: (file, watch) => caught(() => readGpx(file.path, file.source, watch.signal)),

  async readSupplies(files, waypoints, area, watch) {
    const read = await readExtracts(files, area, watch);
    if (!read.ok) return read;
    const extracts = read.value;
    return {
      ok: true,
      value: {
        supplies: suppliesOf(extracts, waypoints),
        extents: extracts.map(extentOf),
        ground: extracts.flatMap((extract) => groundFeatures(extract.ground)),
      },
    };
  },

  campsOf,
};

/** A night's places among a route's waypoints. */
export function campsOf(waypoints: readonly Waypoint[]): Camp[] {
  return waypoints.filter(isCamp).map(({ lon, lat, name }) => ({ lon, lat, name }));
}

/** Reads extracts one after the other, as TripFileSet has it. */
export async function readExtracts(
  files: readonly NamedFile[],
  { ground, near }: Parameters<TripFileSet['readSupplies']>[2],
  { signal, onProgress }: Watch,
): Promise<Outcome<RawExtract[]>> {
  const extracts: RawExtract[] = [];
  for (const file of files) {
    const options: ReadOptions = { source: file.source, ground, near };
    if (signal !== undefined) options.signal = signal;
    if (onProgress !== undefined) options.onProgress = (done, total) => onProgress(file.source, done, total);
    const read = await readExtract(file.path, options);
    if (!read.ok) return read;
    extracts.push(read.value);
  }
  return { ok: true, value: extracts };
}

/** What extracts and the route's own waypoints together hold. */
export function suppliesOf(extracts: readonly RawExtract[], waypoints: readonly Waypoint[]): Supplies {
  const own = waypointFeatures(waypoints, 'route');
  const united = unite(extracts, own.features, []);
  return { ...united, skipped: [...united.skipped, ...own.skipped] };
}

/** Turns a reader's InputProblem into an outcome; anything else is a fault of ours and goes up. */
export async function caught<T>(read: () => Promise<T>): Promise<Outcome<T>> {
  try {
    return { ok: true, value: await read() };
  } catch (error) {
    if (error instanceof InputProblem) return { ok: false, problem: error.problem };
    throw error;
  }
}

/** What an extract reaches over and holds. */
export function extentOf(extract: RawExtract): ExtractExtent {
  const objects = extract.wanted.size + extract.features.length + farCount(extract.far);
  const { source, bounds, moreBounds = [], hull } = extract;
  if (bounds !== null) return { source, bbox: boxAround([bounds, ...moreBounds]) ?? bounds, objects };
  if (hull !== null) return { source, bbox: boxOf({ type: 'LineString', coordinates: hull }), objects };
  const boxes = [
    ...extract.features.map((feature) => boxOf(feature.geometry)),
    boxOf({ type: 'MultiPoint', coordinates: extract.elements.flatMap(positionsOf) }),
  ];
  return { source, bbox: boxes.reduce(joinedBoxes, extract.far.bbox), objects };
}

/** The box around several; null where one crosses the 180th meridian, and west and east say nothing of the others. */
const boxAround = (boxes: readonly Bbox[]): Bbox | null =>
  boxes.some(([west, , east]) => west > east) ? null : boxes.reduce<Bbox | null>(joinedBoxes, null);

function positionsOf(element: RawElement): [number, number][] {
  const places = [element.center, ...(element.geometry ?? []), { lat: element.lat, lon: element.lon }];
  return places.flatMap((place): [number, number][] =>
    place?.lat === undefined || place.lon === undefined ? [] : [[place.lon, place.lat]],
  );
}
