import { createReadStream, existsSync, readdirSync, readFileSync } from 'node:fs';
import type { Position } from 'geojson';
import { expect, it } from 'vitest';
import type { MappedFeature } from '../../../server/core/input/sources.ts';
import { keyOf } from '../../../server/io/osm/extract/element-key.ts';
import type { RawElement } from '../../../server/io/osm/extract/raw-element.ts';
import { convert } from '../../../server/io/osm/unite/convert.ts';
import { parseOsmXml } from '../../../server/io/osm/xml/osm-xml-parser.ts';
import { describeReal, realFolderThere, realPath } from '../../helpers/real.ts';

/** osmcode/osm-testdata, grid: syntactically valid files whose geometries are given as WKT, sound or not. */
const GRID = realPath('peers/osm-testdata/grid/data/');

const cases = realFolderThere
  ? ['1', '3', '7', '9'].flatMap((category) =>
      readdirSync(`${GRID}${category}`).map((number) => ({
        number,
        folder: `${GRID}${category}/${number}/`,
      })),
    )
  : [];

/** Ways whose geometry is not what the peer expects, with what ours is. */
const WAYS_EXPLAINED: Readonly<Record<string, string>> = {
  // No line can be drawn, yet the object is somewhere: a supply must not vanish for its geometry.
  'way/121800': 'Point 1.12 1.22',
  'way/122800': 'LineString 1.22 1.22,1.22 1.22',
  'way/123800': 'LineString 1.32 1.22,1.32 1.22',
};

type Outcome = 'same' | 'placed by a point' | 'skipped' | 'rings as drawn';

/** Areas whose outcome is not the default expected by the peer, and why. */
const AREAS_EXPLAINED: Readonly<Record<string, [Outcome, why: string]>> = {
  '710': [
    'rings as drawn',
    'overlapping outer rings: both are kept, and a point on either stands for the object',
  ],
  '711': ['placed by a point', 'a segment is in two ways, so no ring closes'],
  '714': ['placed by a point', 'an open ring is not closed by guess'],
  '715': ['skipped', 'open rings whose members lie some kilometres apart: no one place'],
  '740': ['rings as drawn', 'a ring that crosses itself is kept as drawn'],
  '741': ['placed by a point', 'a line back and forth encloses nothing'],
  '742': ['rings as drawn', 'a spike is kept: it encloses nothing'],
  '743': ['rings as drawn', 'a spike is kept: it encloses nothing'],
  '744': ['placed by a point', 'an open ring is not closed by guess'],
  '745': ['placed by a point', 'an open ring is not closed by guess'],
  '746': ['skipped', 'ways that make no ring, some kilometres apart: no one place'],
  '747': ['rings as drawn', 'two nodes at one place do no harm to a ring'],
  '748': ['rings as drawn', 'two nodes at one place do no harm to a ring'],
  '752': ['rings as drawn', 'holes that touch without a common node are still holes'],
  '753': ['rings as drawn', 'holes that touch without a common node are still holes'],
  '754': ['rings as drawn', 'a hole that touches the outline is still a hole'],
  '756': ['rings as drawn', 'a hole that touches the outline is still a hole'],
  '757': ['rings as drawn', 'a hole that touches the outline is still a hole'],
  '768': ['rings as drawn', 'rings that overlap along a line are kept'],
  '771': ['rings as drawn', 'rings that touch without a common node are kept'],
  '773': ['rings as drawn', 'holes that touch without a common node are kept'],
  '775': ['rings as drawn', 'where two rings meet in two nodes, the way round may be joined either way'],
  '776': ['rings as drawn', 'where two rings meet in two nodes, the way round may be joined either way'],
  '777': ['rings as drawn', 'a ring without a role is an outline, also inside another'],
  '778': ['rings as drawn', 'a ring without a role is an outline, also inside another'],
  '779': ['rings as drawn', 'a ring without a role is an outline, also inside another'],
  '780': ['placed by a point', 'a way is closed by a node, not by a place: it stays a line'],
  '781': ['rings as drawn', 'rings are compared by place, so this one is closed'],
  '782': ['rings as drawn', 'rings are compared by place, so these are closed'],
  '790': ['rings as drawn', 'a way listed twice gives its ring twice'],
  '791': ['rings as drawn', 'two ways along the same nodes give the ring twice'],
  '792': ['rings as drawn', 'two ways along the same nodes give the ring twice'],
  '793': ['placed by a point', 'nearly the same ring twice does not join up'],
  '794': ['rings as drawn', 'three ways along the same nodes give the ring three times'],
  '795': [
    'rings as drawn',
    'a hole listed twice is a hole once by the rule of the first ring that holds a point',
  ],
  '900': ['placed by a point', 'roles are believed: an inner ring without an outer is no area'],
  '901': ['placed by a point', 'roles are believed: an inner ring without an outer is no area'],
  '902': ['placed by a point', 'roles are believed, so the outer ring stays open'],
  '904': ['rings as drawn', 'roles are believed: a hole with the role "outer" is land'],
  '905': ['rings as drawn', 'roles are believed: a hole with the role "outer" or none is land'],
};

async function elementsOf(folder: string): Promise<RawElement[]> {
  const elements: RawElement[] = [];
  await parseOsmXml(createReadStream(`${folder}data.osm`), 'data.osm', {
    element: ({ element }) => elements.push(element),
  });
  return elements;
}

/** Lines of "id WKT". */
function wktLines(path: string): [id: string, wkt: string][] {
  if (!existsSync(path)) return [];
  const lines = readFileSync(path, 'utf8')
    .split('\n')
    .filter((line) => line.trim() !== '');
  return lines.map((line) => [line.slice(0, line.indexOf(' ')), line.slice(line.indexOf(' ') + 1)]);
}

/** Coordinate text of WKT or of a feature, ring start and direction made alike, so that equal shapes are equal text. */
const flat = (positions: readonly Position[]): string =>
  positions.map((position) => position.join(' ')).join(',');
function lineText(mapped: readonly Position[]): string {
  // A point repeated in a line is kept as mapped; the peer drops it.
  const positions = mapped.filter((at, i) => i === 0 || flat([at]) !== flat([mapped[i - 1]!]));
  const ring = positions.length > 3 && flat([positions[0]!]) === flat([positions.at(-1)!]);
  if (!ring) return flat(positions);
  const open = positions.slice(0, -1);
  const turns = [open, [...open].reverse()].flatMap((way) =>
    way.map((_, i) => flat([...way.slice(i), ...way.slice(0, i)])),
  );
  return turns.sort()[0]!;
}

const ringsIn = (wkt: string): Position[][] =>
  [...wkt.matchAll(/\(([^()]+)\)/g)].map((match) =>
    match[1]!.split(',').map((pair) => pair.trim().split(' ').map(Number)),
  );

function polygonsIn(wkt: string): Position[][][] {
  return [...wkt.matchAll(/\((\([^()]+\)(?:,\([^()]+\))*)\)/g)].map((match) => ringsIn(match[1]!));
}

const insideRing = ([x, y]: Position, ring: readonly Position[]): boolean => {
  let inside = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i, i += 1) {
    const [x1, y1] = ring[i]! as [number, number];
    const [x2, y2] = ring[j]! as [number, number];
    if (y1 > y! !== y2 > y! && x! < ((x2 - x1) * (y! - y1)) / (y2 - y1) + x1) inside = !inside;
  }
  return inside;
};

const insideAny = (at: Position, polygons: readonly Position[][][]): boolean =>
  polygons.some(([outer, ...holes]) => insideRing(at, outer!) && !holes.some((hole) => insideRing(at, hole)));

/** Whether two areas hold the same of a net of points over both; off the grid's own lines. */
function sameArea(a: readonly Position[][][], b: readonly Position[][][]): boolean {
  const positions = [...a, ...b].flat(2);
  const lons = positions.map((position) => position[0]!);
  const lats = positions.map((position) => position[1]!);
  const [west, east] = [Math.min(...lons), Math.max(...lons)];
  const [south, north] = [Math.min(...lats), Math.max(...lats)];
  for (let lon = west + 0.00037; lon < east; lon += 0.00153) {
    for (let lat = south + 0.00041; lat < north; lat += 0.00161) {
      if (insideAny([lon, lat], a) !== insideAny([lon, lat], b)) return false;
    }
  }
  return true;
}

function polygonsOf(feature: MappedFeature): Position[][][] | null {
  if (feature.geometry.type === 'Polygon') return [feature.geometry.coordinates];
  return feature.geometry.type === 'MultiPolygon' ? feature.geometry.coordinates : null;
}

interface Area {
  from_id: number;
  from_type: string;
  wkt: string;
  tags?: Record<string, string>;
}

describeReal('osm-testdata grid', () => {
  it('has the cases that were looked at', () => {
    expect(cases).toHaveLength(130);
  });

  it.each(cases)('$number: nodes and ways lie where the peer says', async ({ folder }) => {
    const elements = (await elementsOf(folder)).filter((element) => element.type !== 'relation');
    const keys = new Set(elements.map(keyOf));
    const { features, skipped } = convert(elements, keys);
    expect(features.length + skipped.length).toBe(keys.size);
    const byId = new Map(features.map((feature) => [feature.id, feature.geometry]));
    for (const [id, wkt] of wktLines(`${folder}nodes.wkt`)) {
      const geometry = byId.get(`node/${id}`);
      expect(geometry?.type === 'Point' && `POINT(${geometry.coordinates.join(' ')})`).toBe(wkt);
    }
    for (const [id, wkt] of wktLines(`${folder}ways.wkt`)) {
      const geometry = byId.get(`way/${id}`);
      const explained = WAYS_EXPLAINED[`way/${id}`];
      if (explained !== undefined && geometry !== undefined && 'coordinates' in geometry) {
        const positions = geometry.type === 'Point' ? [geometry.coordinates] : geometry.coordinates;
        expect(`${geometry.type} ${flat(positions as Position[])}`).toBe(explained);
        continue;
      }
      const line =
        geometry?.type === 'Polygon'
          ? geometry.coordinates[0]
          : geometry?.type === 'LineString' && geometry.coordinates;
      expect(line && lineText(line)).toBe(lineText(ringsIn(wkt)[0]!));
    }
  });

  const withAreas = cases.filter(
    ({ folder }) => 'areas' in JSON.parse(readFileSync(`${folder}test.json`, 'utf8')),
  );
  it.each(withAreas)(
    '$number: areas are the peer’s, or differ for a stated reason',
    async ({ number, folder }) => {
      const { areas } = JSON.parse(readFileSync(`${folder}test.json`, 'utf8')) as {
        areas: Record<string, Area[]>;
      };
      const expected = areas.default ?? [];
      const idOf = (area: Area) => `${area.from_type}/${area.from_id}`;
      const wanted = new Set(expected.map(idOf));
      const { features, skipped } = convert(await elementsOf(folder), wanted);
      expect(features.length + skipped.length).toBe(wanted.size);
      const outcomes = expected.map((area): Outcome => {
        const feature = features.find(({ id }) => id === idOf(area));
        if (feature === undefined) return 'skipped';
        const polygons = polygonsOf(feature);
        if (polygons === null) return 'placed by a point';
        return area.wkt !== 'INVALID' && sameArea(polygons, polygonsIn(area.wkt)) ? 'same' : 'rings as drawn';
      });
      const explained = AREAS_EXPLAINED[number]?.[0] ?? 'same';
      expect(outcomes).toEqual(outcomes.map(() => explained));
    },
  );

  it('explains no case that needs no explaining', () => {
    const numbers = new Set(withAreas.map(({ number }) => number));
    expect(Object.keys(AREAS_EXPLAINED).filter((number) => !numbers.has(number))).toEqual([]);
  });
});
