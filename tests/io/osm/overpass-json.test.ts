import { describe, expect, it } from 'vitest';
import { unite } from '../../../server/io/osm/unite/unite.ts';
import { extractAt, scratchFolder } from './scratch.ts';

const put = scratchFolder();
const read = (elements: unknown[], more: object = {}) =>
  extractAt(put('reply.osm', JSON.stringify({ version: 0.6, elements, ...more })), 'reply.osm');
const FUEL = { amenity: 'fuel' };

describe('Overpass JSON', () => {
  it('is told by its content, in a file called .osm, behind a byte order mark', async () => {
    const text = `\ufeff\n${JSON.stringify({ elements: [{ type: 'node', id: 1, lat: 2, lon: 3, tags: FUEL }] })}`;
    expect((await extractAt(put('named.osm', text))).format).toBe('overpass-json');
  });

  it('reads `out body`, `out center` and `out geom` of one station as one object', async () => {
    const nodes = [1, 2, 3].map((id) => ({ type: 'node', id, lat: id / 1e4, lon: (id % 2) / 1e4 }));
    const way = { type: 'way', id: 9, nodes: [1, 2, 3, 1], tags: FUEL };
    const geometry = [1, 2, 3, 1].map((id) => ({ lat: id / 1e4, lon: (id % 2) / 1e4 }));
    const bodies = await read([...nodes, way]);
    const centre = await read([{ ...way, center: { lat: 2e-4, lon: 1e-4 } }]);
    const geom = await read([{ ...way, geometry, bounds: { minlat: 0, minlon: 0, maxlat: 1, maxlon: 1 } }]);
    const typeOf = (extract: typeof bodies) =>
      unite([extract], [], []).features.map(({ geometry: { type } }) => type);
    expect([typeOf(bodies), typeOf(centre), typeOf(geom)]).toEqual([['Polygon'], ['Point'], ['Polygon']]);
    const [mapped] = unite([bodies], [], []).features;
    const [written] = unite([geom], [], []).features;
    expect(written?.geometry).toEqual(mapped?.geometry);
    expect(centre.elements).toHaveLength(1);
  });

  it('uses a bounding box for a place only, never as a shape', async () => {
    const bounds = { minlat: 1, minlon: 2, maxlat: 3, maxlon: 4 };
    const { features } = unite([await read([{ type: 'way', id: 1, bounds, tags: FUEL }])], [], []);
    expect(features[0]?.geometry).toEqual({ type: 'Point', coordinates: [3, 2] });
  });

  it('takes members’ geometry that the reply writes out', async () => {
    const ring = [
      [0, 0],
      [0, 1e-3],
      [1e-3, 0],
      [0, 0],
    ].map(([lat, lon]) => ({ lat, lon }));
    const members = [{ type: 'way', ref: 5, role: 'outer', geometry: ring }];
    const relation = { type: 'relation', id: 7, members, tags: { ...FUEL, type: 'multipolygon' } };
    const extract = await read([relation]);
    const before = structuredClone(extract.elements);
    expect(unite([extract], [], []).features[0]?.geometry.type).toBe('Polygon');
    expect(extract.elements).toEqual(before);
  });

  it('takes the newest of two versions of an object', async () => {
    const extract = await read([
      { type: 'node', id: 1, lat: 2, lon: 2, version: 4, timestamp: '2024-01-01T00:00:00Z', tags: FUEL },
      { type: 'node', id: 1, lat: 1, lon: 1, version: 3, timestamp: '2023-01-01T00:00:00Z', tags: FUEL },
    ]);
    expect(extract.elements).toMatchObject([{ version: 4, lat: 2 }]);
  });

  it('keeps the tags of an object that the reply gives again without them', async () => {
    const way = { type: 'way', id: 1, nodes: [2, 3], tags: FUEL };
    const skeletons = [
      { type: 'node', id: 2, lat: 0, lon: 0, tags: { amenity: 'drinking_water' } },
      { type: 'node', id: 2, lat: 0, lon: 0 },
      { type: 'node', id: 3, lat: 0, lon: 1e-4 },
    ];
    const extract = await read([way, ...skeletons]);
    expect([...extract.wanted].sort()).toEqual(['node/2', 'way/1']);
  });

  it('takes a reply that stopped early to cover nothing', async () => {
    const corners = [0, 1, 2].map((id) => ({ type: 'node', id, lat: id % 2, lon: id, tags: FUEL }));
    const whole = await read(corners);
    const cut = await read(corners, {
      remark: 'runtime error: Query run out of memory using about 2048 MB of RAM.',
    });
    expect(unite([whole], [], []).cover.map(({ commodity, guessed }) => [commodity, guessed])).toEqual([
      ['fuel', true],
    ]);
    const supplies = unite([cut], [], []);
    expect([supplies.features.length, supplies.cover]).toEqual([3, []]);
    const bounds = { minlat: 0, minlon: 0, maxlat: 1, maxlon: 2 };
    const bounded = await read(corners, { bounds, remark: 'runtime error: Query timed out' });
    expect([bounded.bounds, unite([bounded], [], []).cover]).toEqual([null, []]);
    expect(supplies.cautions.map(({ code }) => code)).toEqual(['extract-incomplete', 'cover-none']);
  });

  it('takes bounds that the reply declares', async () => {
    const bounds = { minlat: -36, minlon: 84, maxlat: -34, maxlon: 87 };
    expect((await read([], { bounds })).bounds).toEqual([84, -36, 87, -34]);
  });

  it('passes over areas, counts and derived elements', async () => {
    const extract = await read([
      { type: 'area', id: 3600000001, tags: FUEL },
      { type: 'count', id: 0, tags: { nodes: '1' } },
      { type: 'node', id: 1, lat: 1, lon: 1, tags: FUEL },
    ]);
    expect([...extract.wanted]).toEqual(['node/1']);
  });

  it('reads numbers written as text, and skips what is no number', async () => {
    const extract = await read([
      { type: 'node', id: '1', lat: '1.5', lon: '2.5', tags: FUEL },
      { type: 'node', id: 2, lat: 'x', lon: 2, tags: FUEL },
    ]);
    expect(extract.elements).toMatchObject([{ id: 1, lat: 1.5, lon: 2.5 }]);
    expect(extract.skipped.map(({ id }) => id)).toEqual(['node/2']);
  });
});
