import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Analysis } from '../../server/contract/analysis.ts';
import { runCli } from '../cli/run-cli.ts';

/**
 * The standard case: a straight road of 1,200 km with one fuel and one water object in its middle. With both the
 * vehicle gets through with its reserve; without the fuel its tank is dry at km 667.
 */
export const STRAIGHT_KM = 1200;
const MIDDLE_KM = STRAIGHT_KM / 2;
const LON = 15;
const SOUTH_LAT = 18;
const KM_PER_DEGREE = 110.8;
const NORTH_LAT = SOUTH_LAT + STRAIGHT_KM / KM_PER_DEGREE;

/** Where the route is at so many km; good to some hundred metres, which is within any corridor. */
export const placeAt = (km: number): { lat: number; lon: number } => ({
  lat: Number((SOUTH_LAT + km / KM_PER_DEGREE).toFixed(6)),
  lon: LON,
});
/** A place so many metres to the east and north of where the route is at so many km. */
export function placeBeside(km: number, eastM: number, northM = 0): { lat: number; lon: number } {
  const lat = placeAt(km).lat + northM / (KM_PER_DEGREE * 1000);
  const lon = LON + eastM / (111_320 * Math.cos((lat * Math.PI) / 180));
  return { lat: Number(lat.toFixed(7)), lon: Number(lon.toFixed(7)) };
}
export const MIDDLE = placeAt(MIDDLE_KM);

/** The declared bounds of an extract over all of the route: [west, south, east, north]. */
export const STRAIGHT_BOX = [LON - 1, SOUTH_LAT - 1, LON + 1, NORTH_LAT + 1] as const;

const isoDay = (msAgo: number): string => `${new Date(Date.now() - msAgo).toISOString().slice(0, 19)}Z`;
const DAY_MS = 86_400_000;
/** An hour of a fresh map, and of one that no tags of which are believed without more. */
export const FRESH = isoDay(30 * DAY_MS);
export const STALE = isoDay(6 * 365.25 * DAY_MS);

export interface MapObject {
  type: 'node' | 'way' | 'relation';
  id: number;
  lat?: number;
  lon?: number;
  nodes?: number[];
  members?: readonly { type: MapObject['type']; ref: number; role: string }[];
  tags?: Readonly<Record<string, string>>;
  version?: number;
  timestamp?: string;
  /** False: the file says that it is deleted. */
  visible?: boolean;
}

/** The one fuel station and the one tap, in the middle of the route. */
export const FUEL: MapObject = {
  type: 'node',
  id: 1,
  ...MIDDLE,
  tags: { amenity: 'fuel', 'fuel:diesel': 'yes', name: 'Middle fuel' },
  version: 2,
  timestamp: FRESH,
};
export const WATER: MapObject = {
  type: 'node',
  id: 2,
  ...MIDDLE,
  tags: { amenity: 'drinking_water', name: 'Middle tap' },
  version: 2,
  timestamp: FRESH,
};

/** A station and a tap 80 km off the road, out of all reach: by them a map is seen to show both. */
export const FAR_SUPPLIES: MapObject[] = [
  { ...FUEL, id: 8, lat: MIDDLE.lat, lon: LON + 0.8 },
  { ...WATER, id: 9, lat: MIDDLE.lat, lon: LON + 0.8 },
];

/** The same object with other tags; undefined takes a tag away. */
export function withTags(object: MapObject, tags: Readonly<Record<string, string | undefined>>): MapObject {
  const entries = Object.entries({ ...object.tags, ...tags });
  return {
    ...object,
    tags: Object.fromEntries(entries.filter((entry): entry is [string, string] => entry[1] !== undefined)),
  };
}

/** What it takes for a file to be a general map of the route: its road, places beside it, and houses. */
export function generalLand(fromKm = 0, toKm = STRAIGHT_KM): MapObject[] {
  const land: MapObject[] = [];
  const step = 2;
  const wayKm = 40;
  for (let km = fromKm; km <= toKm; km += step)
    land.push({ type: 'node', id: 100_000 + km, ...placeAt(km), version: 1, timestamp: FRESH });
  for (let km = fromKm; km < toKm; km += wayKm) {
    const nodes: number[] = [];
    for (let at = km; at <= Math.min(km + wayKm, toKm); at += step) nodes.push(100_000 + at);
    const tags = { highway: 'primary' };
    land.push({ type: 'way', id: 200_000 + km, nodes, tags, version: 1, timestamp: FRESH });
  }
  for (let km = fromKm; km <= toKm; km += 20) {
    const beside = { lat: placeAt(km).lat, lon: LON + 0.005 };
    const dated = { version: 1, timestamp: FRESH };
    land.push({ type: 'node', id: 300_000 + km, ...beside, tags: { place: 'hamlet' }, ...dated });
    land.push({ type: 'node', id: 400_000 + km, ...beside, tags: { building: 'house' }, ...dated });
    land.push({ type: 'node', id: 500_000 + km, ...beside, tags: { amenity: 'school' }, ...dated });
  }
  return land;
}

export interface MapFile {
  objects: readonly MapObject[];
  /** The date of the whole file; null: the file does not tell. */
  date?: string | null;
  /** Declared bounds [west, south, east, north]; null: none. */
  bounds?: readonly [number, number, number, number] | null;
}

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

function elementXml({ type, tags, nodes, members, ...attributes }: MapObject): string {
  const told = Object.entries(attributes).map(([key, value]) => ` ${key}="${escaped(String(value))}"`);
  const refs = (nodes ?? []).map((ref) => `<nd ref="${ref}"/>`);
  for (const member of members ?? [])
    refs.push(`<member type="${member.type}" ref="${member.ref}" role="${member.role}"/>`);
  const pairs = Object.entries(tags ?? {}).map(([k, v]) => `<tag k="${escaped(k)}" v="${escaped(v)}"/>`);
  return `  <${type}${told.join('')}>${refs.join('')}${pairs.join('')}</${type}>`;
}

/** An extract as OSM XML. */
export function osmXml({ objects, date = FRESH, bounds = STRAIGHT_BOX }: MapFile): string {
  const [west, south, east, north] = bounds ?? [];
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<osm version="0.6" generator="straight route">',
    ...(date === null ? [] : [`  <meta osm_base="${date}"/>`]),
    ...(bounds === null
      ? []
      : [`  <bounds minlat="${south}" minlon="${west}" maxlat="${north}" maxlon="${east}"/>`]),
    ...objects.map(elementXml),
    '</osm>',
    '',
  ].join('\n');
}

/** An answer of Overpass; deleted objects cannot be in one. */
export function overpassJson({ objects, date = FRESH }: MapFile): string {
  const osm3s = date === null ? {} : { osm3s: { timestamp_osm_base: date } };
  return JSON.stringify({ version: 0.6, generator: 'Overpass API', ...osm3s, elements: objects });
}

/** A general map of the route with the two objects; each can be another one or left out (null). */
export const straightMap = (
  objects: { fuel?: MapObject | null; water?: MapObject | null; more?: readonly MapObject[] } = {},
): MapObject[] => {
  const { fuel = FUEL, water = WATER, more = [] } = objects;
  return [fuel, water].flatMap((object) => object ?? []).concat(more, generalLand());
};

const RIG = `
name: straight route
fuel:
  kind: diesel
  litresPer100Km: { low: 12, typical: 13, high: 15 }
  tanks: [{ name: main, litres: 100 }]
  cans: { litres: 20, owned: 0 }
  reserve: { litres: 5 }
water:
  litresPerDay: { low: 10, typical: 12, high: 14 }
  tanks: [{ name: main, litres: 50 }]
  cans: { litres: 20, owned: 0 }
  reserve: { days: 1 }
pace: { hoursPerDay: 7, kmPerHour: { slow: 40, typical: 50, fast: 60 } }
`;

const TRIP = {
  aboard: { fuelKmSinceFill: 0, waterDaysSinceFill: 0 },
  onward: { km: 0, hours: 0 },
  allowancePercent: 0,
};

function routeGpx(): string {
  const points: string[] = [];
  for (let km = 0; km <= STRAIGHT_KM; km += 1) {
    const { lat, lon } = placeAt(km);
    points.push(`<trkpt lat="${lat}" lon="${lon}"/>`);
  }
  return `<?xml version="1.0"?><gpx version="1.1" creator="straight" xmlns="http://www.topografix.com/GPX/1/1"><trk><name>Straight</name><trkseg>${points.join('')}</trkseg></trk></gpx>`;
}

/** The files of the straight route in a folder of their own. */
export class StraightRoute {
  readonly folder: string;

  private constructor(folder: string) {
    this.folder = folder;
  }

  static async open(): Promise<StraightRoute> {
    const route = new StraightRoute(await mkdtemp(join(tmpdir(), 'straight-')));
    await writeFile(route.path('route.gpx'), routeGpx());
    await writeFile(route.path('rig.yaml'), RIG);
    return route;
  }

  close(): Promise<void> {
    return rm(this.folder, { recursive: true });
  }

  path(name: string): string {
    return join(this.folder, name);
  }

  /** Runs `gaps` (or another command) with extracts by their name and content, and further keys of the trip. */
  async run(
    extracts: Readonly<Record<string, string | Uint8Array>>,
    trip: object = {},
    { command = 'gaps', more = [] }: { command?: string; more?: readonly string[] } = {},
  ): Promise<string> {
    const supplies: string[] = [];
    for (const [name, content] of Object.entries(extracts)) {
      await writeFile(this.path(name), content);
      supplies.push('--supply', this.path(name));
    }
    await writeFile(this.path('trip.json'), JSON.stringify({ ...TRIP, ...trip }));
    const files = ['--rig', this.path('rig.yaml'), '--trip', this.path('trip.json')];
    const { status, out, err } = await runCli(
      command,
      this.path('route.gpx'),
      ...supplies,
      ...files,
      ...more,
    );
    if (status !== 0) throw new Error(`${command} ended with ${status}: ${err}`);
    return out;
  }

  async analysis(
    extracts: Readonly<Record<string, string | Uint8Array>>,
    trip: object = {},
  ): Promise<Analysis> {
    return JSON.parse(await this.run(extracts, trip, { more: ['--json'] })) as Analysis;
  }
}

/** True where every stretch of the commodity is said to hold with the reserve. */
export const isCalm = (analysis: Analysis, commodity: 'fuel' | 'water'): boolean =>
  analysis[commodity].gaps.every(({ verdict, acrossNoData }) => verdict === 'enough' && !acrossNoData);
