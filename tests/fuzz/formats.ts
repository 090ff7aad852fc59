import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { learnLog } from '../../server/app/learn-log.ts';
import { nearGrid } from '../../server/app/near-route.ts';
import { InputProblem, type Outcome, type Problem } from '../../server/core/input/problem.ts';
import { readGpx } from '../../server/io/gpx/read-gpx.ts';
import { logText } from '../../server/io/log-file.ts';
import { readNotes } from '../../server/io/notes/read-notes.ts';
import { readExtract } from '../../server/io/osm/read-extract.ts';
import { unite } from '../../server/io/osm/unite/unite.ts';
import { parseRig } from '../../server/io/rig-file.ts';
import { parseTrip } from '../../server/io/trip-file.ts';
import { openTripFile } from '../../server/work/open-trip-file.ts';
import { REAL_FOLDER } from '../helpers/real.ts';
import { changeBytes, changeJson, changePbf, changeText, type Random } from './mutate.ts';

/** What became of an input: `codes` are those of the problem or of the cautions. */
export interface Read {
  problem: Problem | null;
  codes: readonly string[];
}

export interface Format {
  seeds: readonly Uint8Array[];
  change: (bytes: Uint8Array, random: Random) => Uint8Array;
  /** The file at `path` has the bytes. */
  read: (bytes: Uint8Array, path: string) => Promise<Read>;
  /** Whether a file of this kind tells where it ends, so that the beginning of one is never whole. */
  hasEnd: boolean;
}

/** Longer seeds make each try slow and find nothing more. */
const SEED_BYTES = 200_000;
const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const file = (name: string): Uint8Array => readFileSync(join(ROOT, name));
const text = (...lines: string[]): Uint8Array => Buffer.from(lines.join('\n'));

/** Real files with this ending, where they are there: the smaller ones. */
function peers(ending: string): Uint8Array[] {
  const folder = join(REAL_FOLDER, 'peers');
  if (!existsSync(folder)) return [];
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
  return names
    .filter((name) => name.endsWith(ending))
    .map((name) => readFileSync(join(folder, name)))
    .filter(({ length }) => length > 0 && length < SEED_BYTES);
}

const outcomeOf = (outcome: Outcome<unknown>): Read =>
  outcome.ok ? { problem: null, codes: [] } : { problem: outcome.problem, codes: [outcome.problem.code] };

const route = { lon: Float64Array.of(7.4, 9.5), lat: Float64Array.of(43.7, 47.2) };
const NEAR = nearGrid(route, 5);

async function readMap(_bytes: Uint8Array, path: string): Promise<Read> {
  const extract = await readExtract(path, { source: 'map', ground: [-180, -90, 180, 90], near: NEAR });
  if (!extract.ok) return outcomeOf(extract);
  const { cautions } = unite([extract.value], [], []);
  return { problem: null, codes: cautions.map(({ code }) => code) };
}

async function readRoute(_bytes: Uint8Array, path: string): Promise<Read> {
  try {
    const { cautions } = await readGpx(path, 'route.gpx');
    return { problem: null, codes: cautions.map(({ code }) => code) };
  } catch (error) {
    if (!(error instanceof InputProblem)) throw error;
    return { problem: error.problem, codes: [error.problem.code] };
  }
}

async function readLog(bytes: Uint8Array): Promise<Read> {
  const log = logText(bytes, 'log.csv');
  return outcomeOf(log.ok ? learnLog(log.value, 'log.csv', { surface: null, people: null }) : log);
}

const utf8 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('utf8');

const FUEL_LOG = text(
  'odometer_km,litres,full,surface,note,price',
  '10000,80,full,track,start,1',
  '10500,50,full,track,,1',
  '10800,20,part,track,at the mine,1',
  '11000,40,full,track,,1',
  '11400,44,full,track,,1',
  '12000,65,full,track,,1',
);
const WATER_LOG = text(
  'date,litres,people,days',
  '2026-04-01,10,2,1',
  '2026-04-02,12,2,1',
  '2026-04-03,8,2,1',
  '2026-04-04,14,2,1',
  '2026-04-05,24,2,1',
);
const NOTES = text('noteOf,id,on,state,says', 'confirmations,node/1,2026-04-01,ok,"a note, ""quoted"""');

/** All that is read from files of strangers. */
export const FORMATS: Readonly<Record<string, Format>> = {
  pbf: {
    seeds: [
      file('fixtures/orrimar/orrimar.osm.pbf'),
      ...['default', 'located', 'plain-nodes', 'raw'].map((name) =>
        file(`tests/fixtures/osmium/${name}.osm.pbf`),
      ),
    ],
    change: changePbf,
    read: readMap,
    hasEnd: true,
  },
  'osm-xml': {
    seeds: [...peers('.osm'), gzipSync(peers('map.osm')[0] ?? text('<osm version="0.6"/>'))],
    change: changeText,
    read: readMap,
    hasEnd: true,
  },
  'osm-json': {
    seeds: [
      text('{"version":0.6,"elements":[{"type":"node","id":1,"lat":46,"lon":8,"tags":{"amenity":"fuel"}}]}'),
      ...peers('.json'),
    ],
    change: changeJson,
    read: readMap,
    hasEnd: true,
  },
  geojson: {
    seeds: [text('{"type":"FeatureCollection","features":[]}'), ...peers('.geojson')],
    change: changeJson,
    read: readMap,
    hasEnd: true,
  },
  'gpx-route': {
    seeds: [file('fixtures/orrimar/route.gpx'), ...peers('.gpx')],
    change: changeText,
    read: readRoute,
    hasEnd: true,
  },
  'gpx-waypoints': {
    seeds: peers('.gpx').concat(file('fixtures/orrimar/route.gpx')),
    change: changeText,
    read: readMap,
    hasEnd: true,
  },
  rig: {
    seeds: [file('fixtures/orrimar/rig.yaml'), file('fixtures/orrimar/rig-simple.yaml')],
    change: changeText,
    read: async (bytes) => outcomeOf(parseRig(utf8(bytes), 'rig')),
    hasEnd: false,
  },
  trip: {
    seeds: [file('fixtures/orrimar/trip.yaml'), file('fixtures/orrimar/trip-simple.yaml')],
    change: changeText,
    read: async (bytes) => outcomeOf(parseTrip(utf8(bytes), 'trip', null)),
    hasEnd: false,
  },
  'trip-file': {
    seeds: [file('tests/fixtures/store/version-1.drystage.json')],
    change: changeJson,
    read: async (_bytes, path) => outcomeOf(await openTripFile({ path, source: 'trip.drystage.json' })),
    hasEnd: true,
  },
  log: { seeds: [FUEL_LOG, WATER_LOG], change: changeText, read: readLog, hasEnd: false },
  notes: {
    seeds: [NOTES, ...peers('wpt.gpx'), text('{"type":"FeatureCollection","features":[]}')],
    change: changeText,
    read: async (bytes) => outcomeOf(readNotes(bytes, 'notes', '2026-05-01')),
    hasEnd: false,
  },
};

export const anyChange = (format: Format, bytes: Uint8Array, random: Random): Uint8Array =>
  (random() < 0.75 ? format.change : changeBytes)(bytes, random);
