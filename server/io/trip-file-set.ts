import type { ExtractExtent } from '../app/loaded-trip.ts';
import { boxOf } from '../app/near-route.ts';
import type { TripFileSet } from '../app/ports.ts';
import { InputProblem, type Outcome } from '../core/input/problem.ts';
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

  async readSupplies(files, waypoints, { ground, near }, watch) {
    const extracts: RawExtract[] = [];
    for (const file of files) {
      const options: ReadOptions = { source: file.source, ground, near };
      if (watch.signal !== undefined) options.signal = watch.signal;
      const { onProgress } = watch;
      if (onProgress !== undefined)
        options.onProgress = (done, total) => onProgress(file.source, done, total);
      const read = await readExtract(file.path, options);
      if (!read.ok) return read;
      extracts.push(read.value);
    }
    const own = waypointFeatures(waypoints, 'route');
    const united = unite(extracts, own.features, []);
    return {
      ok: true,
      value: {
        supplies: { ...united, skipped: [...united.skipped, ...own.skipped] },
        extents: extracts.map(extentOf),
        ground: extracts.flatMap((extract) => groundFeatures(extract.ground)),
      },
    };
  },

  campsOf: (waypoints) => waypoints.filter(isCamp).map(({ lon, lat, name }) => ({ lon, lat, name })),
};

/** Turns a reader's InputProblem into an outcome; anything else is a fault of ours and goes up. */
async function caught<T>(read: () => Promise<T>): Promise<Outcome<T>> {
  try {
    return { ok: true, value: await read() };
  } catch (error) {
    if (error instanceof InputProblem) return { ok: false, problem: error.problem };
    throw error;
  }
}

function extentOf(extract: RawExtract): ExtractExtent {
  const objects = extract.wanted.size + extract.features.length + farCount(extract.far);
  const { source, bounds, hull } = extract;
  if (bounds !== null) return { source, bbox: bounds, objects };
  if (hull !== null) return { source, bbox: boxOf({ type: 'LineString', coordinates: hull }), objects };
  const boxes = [
    ...extract.features.map((feature) => boxOf(feature.geometry)),
    boxOf({ type: 'MultiPoint', coordinates: extract.elements.flatMap(positionsOf) }),
  ];
  return { source, bbox: boxes.reduce(joinedBoxes, extract.far.bbox), objects };
}

function positionsOf(element: RawElement): [number, number][] {
  const places = [element.center, ...(element.geometry ?? []), { lat: element.lat, lon: element.lon }];
  return places.flatMap((place): [number, number][] =>
    place?.lat === undefined || place.lon === undefined ? [] : [[place.lon, place.lat]],
  );
}
