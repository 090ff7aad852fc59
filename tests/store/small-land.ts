import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { analyseTrip } from '../../server/app/analyse-trip.ts';
import { loadTrip } from '../../server/app/load-trip.ts';
import type { LoadedTrip } from '../../server/app/loaded-trip.ts';
import type { NamedFile } from '../../server/app/ports.ts';
import type { Analysis } from '../../server/contract/analysis.ts';
import type { Outcome } from '../../server/core/input/problem.ts';
import { openingHours } from '../../server/io/opening-hours.ts';
import { tripFileSet } from '../../server/io/trip-file-set.ts';
import { KeepingFileSet } from '../../server/store/maps/keeping-file-set.ts';
import { packMaps, type TripMaps, unpackMaps } from '../../server/store/maps/trip-maps.ts';
import { scratchFolder } from './drivers.ts';
import { RIG } from './new-trip.ts';

/** A route along a parallel with a waypoint, in a land of a few roads. */
export const GPX = `<?xml version="1.0"?>
<gpx version="1.1" creator="test"><wpt lat="-35.01" lon="88.3"><name>Dépôt</name><sym>Water</sym></wpt>
<trk><name>Along</name><trkseg>${Array.from({ length: 61 }, (_, at) => `<trkpt lat="-35" lon="${88 + at / 100}"/>`).join('')}</trkseg></trk></gpx>
`;

const node = (id: number, lon: number, lat: number, tags: Record<string, string> = {}) =>
  `<node id="${id}" lon="${lon}" lat="${lat}" version="2" timestamp="2026-01-0${(id % 8) + 1}T00:00:00Z">${tagsOf(tags)}</node>`;
const tagsOf = (tags: Record<string, string>) =>
  Object.entries(tags)
    .map(([k, v]) => `<tag k="${k}" v="${v}"/>`)
    .join('');
const way = (id: number, nodes: readonly number[], tags: Record<string, string>) =>
  `<way id="${id}" version="1" timestamp="2026-01-01T00:00:00Z">${nodes.map((ref) => `<nd ref="${ref}"/>`).join('')}${tagsOf(tags)}</way>`;

/** Roads, places and supplies, a river between the route and a tap, a station mapped as an area, one far away. */
export const OSM = `<osm version="0.6"><bounds minlat="-36" minlon="87.5" maxlat="-34" maxlon="89"/>
${Array.from({ length: 61 }, (_, at) => node(100 + at, 88 + at / 100, -35)).join('\n')}
${node(1, 88.2, -35.001, { amenity: 'fuel', 'fuel:diesel': 'yes', name: 'Ollin', opening_hours: 'Mo-Fr 08:00-18:00' })}
${node(2, 88.4, -34.985, { amenity: 'drinking_water' })}
${node(3, 88.35, -34.99)}${node(4, 88.45, -34.99)}
${node(5, 88.5, -35.002)}${node(6, 88.501, -35.002)}${node(7, 88.501, -35.003)}${node(8, 88.5, -35.003)}
${node(9, 88.1, -35.01, { place: 'town', name: 'Port' })}${node(10, 88.15, -35.01, { place: 'hamlet' })}
${node(11, 87.6, -34.1, { amenity: 'fuel' })}
${[12, 13, 14, 15, 16].map((id) => node(id, 88 + id / 100, -35.02, { shop: 'yes' })).join('\n')}
${way(
  20,
  Array.from({ length: 61 }, (_, at) => 100 + at),
  { highway: 'primary', name: 'Long road' },
)}
${[21, 22, 23, 24].map((id) => way(id, [100 + id, 101 + id], { highway: 'track' })).join('\n')}
${way(30, [3, 4], { waterway: 'river', name: 'Wide' })}
${way(31, [5, 6, 7, 8, 5], { amenity: 'fuel', 'fuel:diesel': 'yes' })}</osm>
`;

/** The land's route and extract in a folder. */
export function landFiles(
  osm = OSM,
  name = 'land.osm',
): { route: NamedFile; extract: NamedFile; folder: string } {
  const folder = scratchFolder();
  const route = { path: join(folder, 'along.gpx'), source: 'along.gpx' };
  const extract = { path: join(folder, name), source: name };
  writeFileSync(route.path, GPX);
  writeFileSync(extract.path, osm);
  return { route, extract, folder };
}

export function usable<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem));
  return outcome.value;
}

/** Reads files as an upload is read. */
export const loadedFrom = async (route: NamedFile, extracts: NamedFile[]): Promise<LoadedTrip> =>
  usable(await loadTrip({ route, extracts, withGround: true, notice: null }, tripFileSet));

/** Reads files so that they can be kept. */
export async function keptFrom(
  route: NamedFile,
  extracts: NamedFile[],
  before?: TripMaps,
): Promise<TripMaps> {
  const files = new KeepingFileSet(before === undefined ? {} : { maps: before });
  const loaded = usable(await loadTrip({ route, extracts, withGround: true, notice: null }, files));
  return files.maps(loaded);
}

/** Loads what was kept, by way of its bytes. */
export async function loadedAgain(route: Uint8Array, source: string, maps: TripMaps): Promise<LoadedTrip> {
  const files = new KeepingFileSet({ route, maps: unpackMaps(packMaps(maps)) });
  const request = { route: { path: '', source }, extracts: [], withGround: true, notice: null };
  return usable(await loadTrip(request, files));
}

export const analysed = (loaded: LoadedTrip, rig = RIG, trip = {}): Analysis =>
  usable(analyseTrip(loaded, { rig, trip }, { today: '2026-05-01', openingHours })).analysis;
