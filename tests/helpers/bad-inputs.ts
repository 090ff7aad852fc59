import { deflateSync, gzipSync } from 'node:zlib';
import type { ProblemCode } from '../../server/core/input/problem.ts';

/** An input that cannot be used, in the place of one of the demo's files, and the refusal that it must meet. */
export interface BadInput {
  name: string;
  role: 'route' | 'extract' | 'rig' | 'trip';
  content: string | Uint8Array;
  code: ProblemCode;
  /** Part of the place that the refusal must name; null where the whole file is the place. */
  place: RegExp | null;
}

const gpx = (points: string) =>
  `<?xml version="1.0"?>\n<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1"><trk><trkseg>\n${points}</trkseg></trk></gpx>`;
const point = (lat: string, lon: string) => `<trkpt lat="${lat}" lon="${lon}"/>\n`;

/** A protobuf varint. */
function varint(value: number): number[] {
  const bytes: number[] = [];
  let rest = value;
  while (rest >= 128) {
    bytes.push((rest % 128) + 128);
    rest = Math.floor(rest / 128);
  }
  return [...bytes, rest];
}

/** A pbf block: the header says `claimed` bytes, `blob` follows. */
function pbfBlock(type: string, blob: Uint8Array, claimed = blob.length): Buffer {
  const header = Buffer.from([0x0a, type.length, ...Buffer.from(type), 0x18, ...varint(claimed)]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(header.length);
  return Buffer.concat([length, header, blob]);
}

/** A blob of zlib data that says it holds `rawSize` bytes. */
function zlibBlob(raw: Uint8Array, rawSize = raw.length): Buffer {
  const packed = deflateSync(raw);
  return Buffer.concat([Buffer.from([0x10, ...varint(rawSize), 0x1a, ...varint(packed.length)]), packed]);
}

/** A header block that asks for the usual features: HeaderBlock.required_features is field 4. */
const feature = (name: string) => [0x22, name.length, ...Buffer.from(name)];
const pbfHeader = pbfBlock(
  'OSMHeader',
  zlibBlob(Buffer.from([...feature('OsmSchema-V0.6'), ...feature('DenseNodes')])),
);

const HTML = '<!DOCTYPE html>\n<html><head><title>503</title></head><body>Service unavailable</body></html>';
const ENTITY_BOMB = `<?xml version="1.0"?>\n<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>\n`;
const RIG = {
  fuel: { kind: 'diesel', litresPer100Km: 15, tanks: [{ name: 'main', litres: 130 }] },
  water: { litresPerDay: 14, tanks: [{ name: 'tank', litres: 70 }] },
  pace: { hoursPerDay: 7, kmPerHour: 45 },
};

/** The bad inputs that every way into the program must refuse in one clear line, and live. */
export const BAD_INPUTS: readonly BadInput[] = [
  {
    name: 'a route that is not XML',
    role: 'route',
    content: 'km,lat,lon\n1,2,3\n',
    code: 'not-xml',
    place: null,
  },
  {
    name: 'a truncated route',
    role: 'route',
    content: gpx(point('-35', '85') + point('-35.1', '85.1')).slice(0, -30),
    code: 'xml-broken',
    place: /line \d+/,
  },
  { name: 'a route without points', role: 'route', content: gpx(''), code: 'gpx-no-points', place: null },
  {
    name: 'a route of one point',
    role: 'route',
    content: gpx(point('-35', '85')),
    code: 'gpx-one-point',
    place: null,
  },
  {
    name: 'a latitude out of range',
    role: 'route',
    content: gpx(point('-35', '85') + point('-95', '85')),
    code: 'coordinate-out-of-range',
    place: /line 4/,
  },
  {
    name: 'a latitude that is no number',
    role: 'route',
    content: gpx(point('-35', '85') + point('NaN', '85')),
    code: 'coordinate-out-of-range',
    place: /line 4/,
  },
  {
    name: 'a route with entities',
    role: 'route',
    content: `${ENTITY_BOMB}<gpx>&b;</gpx>`,
    code: 'xml-entity',
    place: /line/,
  },
  { name: 'a web page as the route', role: 'route', content: HTML, code: 'html-page', place: null },
  { name: 'an empty route', role: 'route', content: '', code: 'empty-file', place: null },
  { name: 'an empty extract', role: 'extract', content: '', code: 'empty-file', place: null },
  { name: 'a web page as the extract', role: 'extract', content: HTML, code: 'html-page', place: null },
  {
    name: 'text as the extract',
    role: 'extract',
    content: 'wells and stations',
    code: 'unknown-format',
    place: null,
  },
  {
    name: 'an extract with entities',
    role: 'extract',
    content: `${ENTITY_BOMB}<osm version="0.6"><node id="1" lat="&b;" lon="1"/></osm>`,
    code: 'xml-entity',
    place: null,
  },
  {
    name: 'a truncated extract',
    role: 'extract',
    content: '<?xml version="1.0"?>\n<osm version="0.6">\n<node id="1" lat="-35" lon="85">\n',
    code: 'xml-broken',
    place: /line/,
  },
  {
    name: 'a pbf block that claims 2 GB',
    role: 'extract',
    content: Buffer.concat([pbfHeader, pbfBlock('OSMData', new Uint8Array(100), 2_000_000_000)]),
    code: 'pbf-oversized',
    place: /byte/,
  },
  {
    name: 'a pbf block that unpacks to far more than it says',
    role: 'extract',
    content: Buffer.concat([pbfHeader, pbfBlock('OSMData', zlibBlob(new Uint8Array(80_000_000), 1_000))]),
    code: 'pbf-broken',
    place: /byte/,
  },
  {
    name: 'a truncated pbf',
    role: 'extract',
    content: Buffer.concat([pbfHeader, pbfBlock('OSMData', zlibBlob(new Uint8Array(1_000)))]).subarray(0, -5),
    code: 'pbf-truncated',
    place: /byte/,
  },
  {
    name: 'a gzip bomb',
    role: 'extract',
    content: gzipSync(Buffer.from(`<osm version="0.6">${' '.repeat(100_000_000)}</osm>`)),
    code: 'expands-too-far',
    place: null,
  },
  { name: 'JSON of another kind', role: 'extract', content: '{"a": 1}', code: 'json-shape', place: null },
  { name: 'broken JSON', role: 'extract', content: '{"elements": [', code: 'json-broken', place: null },
  {
    name: 'a rig with negative litres',
    role: 'rig',
    content: JSON.stringify({ ...RIG, water: { litresPerDay: 14, tanks: [{ name: 'tank', litres: -70 }] } }),
    code: 'rig-invalid',
    place: /^\/water\/tanks\/0\/litres/,
  },
  {
    name: 'a rig with an unknown key',
    role: 'rig',
    content: JSON.stringify({ ...RIG, colour: 'sand' }),
    code: 'rig-invalid',
    place: /^\/colour/,
  },
  { name: 'an empty rig', role: 'rig', content: '', code: 'empty-file', place: null },
  { name: 'a rig that is no YAML', role: 'rig', content: 'fuel: [', code: 'yaml-broken', place: /line 1/ },
  {
    name: 'a trip with negative litres',
    role: 'trip',
    content: 'aboard: { fuelLitres: -1 }',
    code: 'trip-invalid',
    place: /^\/aboard\/fuelLitres/,
  },
  {
    name: 'a trip with an unknown key',
    role: 'trip',
    content: 'coridorKm: 5',
    code: 'trip-invalid',
    place: /^\/coridorKm/,
  },
];

/** An extract that lies on the other side of the world: a caution, no refusal. */
export const EXTRACT_ELSEWHERE = `<?xml version="1.0"?>
<osm version="0.6"><bounds minlat="60" minlon="-50" maxlat="61" maxlon="-49"/>
<node id="1" version="1" lat="60.5" lon="-49.5"><tag k="amenity" v="fuel"/></node>
<node id="2" version="1" lat="60.5" lon="-49.4"><tag k="place" v="town"/></node></osm>`;
