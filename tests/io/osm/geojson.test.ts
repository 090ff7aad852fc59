import { describe, expect, it } from 'vitest';
import { toContract } from '../../../server/app/to-contract.ts';
import { unite } from '../../../server/io/osm/unite/unite.ts';
import { extractAt, scratchFolder } from './scratch.ts';

const put = scratchFolder();
const read = (features: unknown[], more: object = {}) =>
  extractAt(put('x.geojson', JSON.stringify({ type: 'FeatureCollection', features, ...more })), 'x.geojson');
const point = (properties: object, lon: unknown = 1, lat: unknown = 2, more: object = {}) => ({
  type: 'Feature',
  properties,
  geometry: { type: 'Point', coordinates: [lon, lat] },
  ...more,
});
const WATER = { amenity: 'drinking_water' };

describe('GeoJSON', () => {
  it.each([
    ['@id', point({ ...WATER, '@id': 'node/7' }), 'node/7'],
    ['the id of the feature', point(WATER, 1, 2, { id: 'way/7' }), 'way/7'],
    ['id', point({ ...WATER, id: 'relation/7' }), 'relation/7'],
    ['type and id', point({ type: 'node', id: 7, tags: WATER }), 'node/7'],
    ['type and @id', point({ '@type': 'way', '@id': 7, ...WATER }), 'way/7'],
    ['osm_type and osm_id', point({ osm_type: 'node', osm_id: '7', ...WATER }), 'node/7'],
    ['a letter and a number', point(WATER, 1, 2, { id: 'n7' }), 'node/7'],
    ['an area of a way', point(WATER, 1, 2, { id: 'a14' }), 'way/7'],
    ['an area of a relation', point(WATER, 1, 2, { id: 'a15' }), 'relation/7'],
    ['a name', point({ ...WATER, name: 'Old  Wéll!' }), 'own/old-well'],
    ['nothing', point(WATER), 'own/1'],
  ])('takes the object’s id from %s, and no tag of it', async (_from, feature, id) => {
    const { features } = await read([feature]);
    expect(features.map((each) => each.id)).toEqual([id]);
    const { name: _name, ...tags } = features[0]?.tags ?? {};
    expect(tags).toEqual(WATER);
  });

  it('takes tags from the properties or from a tags member, as object or as text', async () => {
    const { features } = await read([
      point({ ...WATER, '@id': 'node/1', '@version': 3, bottle: 'yes', level: 0, empty: null }),
      point({ '@id': 'node/2', tags: { ...WATER, fee: 'no' }, other: 'x' }),
      point({ '@id': 'node/3', tags: JSON.stringify(WATER) }),
    ]);
    expect(features.map(({ tags }) => tags)).toEqual([
      { ...WATER, bottle: 'yes', level: '0' },
      { ...WATER, fee: 'no' },
      WATER,
    ]);
  });

  it('takes the time of the last edit from where exporters put it', async () => {
    const at = '2024-05-06T07:08:09Z';
    const { features } = await read([
      point({ ...WATER, '@timestamp': at }),
      point({ tags: WATER, meta: { timestamp: at } }),
      point(WATER),
    ]);
    expect(features.map(({ editedAt }) => editedAt)).toEqual([at, at, null]);
  });

  it('gives every feature that supplies something as a feature or as skipped, with the reason', async () => {
    const extract = await read([
      point({ ...WATER, '@id': 'node/1' }),
      { type: 'Feature', properties: { ...WATER, '@id': 'node/2' }, geometry: null },
      point({ ...WATER, '@id': 'node/3' }, 181, 0),
      point({ ...WATER, '@id': 'node/4' }, null, 0),
      { type: 'Feature', properties: WATER, geometry: { type: 'GeometryCollection', geometries: [] } },
      { type: 'Feature', properties: WATER, geometry: { type: 'Polygon', coordinates: [1, 2] } },
      { type: 'Feature', properties: WATER, geometry: { type: 'MultiPoint', coordinates: [] } },
      point({}),
      'rubbish',
    ]);
    expect(extract.features.map(({ id }) => id)).toEqual(['node/1']);
    expect(toContract(extract.skipped)).toEqual([
      { id: 'node/2', reason: 'it has no geometry' },
      { id: 'node/3', reason: 'its position is not on earth: longitude 181, latitude 0' },
      { id: 'node/4', reason: 'its position is not on earth: longitude null, latitude 0' },
      { id: 'x.geojson feature 5', reason: 'a geometry of type GeometryCollection stands for no one place' },
      { id: 'x.geojson feature 6', reason: 'its coordinates are not laid out as GeoJSON' },
      { id: 'x.geojson feature 7', reason: 'its geometry is empty' },
      { id: 'x.geojson feature 8', reason: 'it has no tags' },
      { id: 'x.geojson feature 9', reason: 'it is not a GeoJSON feature' },
    ]);
    expect(extract.cautions.map(({ code }) => code)).toEqual(['features-skipped']);
  });

  it('passes over features of other kinds, and tells by them what the file is', async () => {
    expect((await read([point({ shop: 'books' })])).shows).toEqual({
      fuel: false,
      water: false,
      general: false,
    });
    expect((await read([point({ place: 'town' }), point(WATER)])).shows).toEqual({
      fuel: false,
      water: true,
      general: false,
    });
    const road = {
      type: 'Feature',
      properties: { highway: 'track' },
      geometry: {
        type: 'LineString',
        coordinates: [
          [0, 0],
          [1, 1],
        ],
      },
    };
    const five = <T>(one: T): T[] => [one, one, one, one, one];
    const general = [...five(road), ...five(point({ place: 'town' })), ...five(point({ shop: 'books' }))];
    expect((await read([...general, point(WATER)])).shows).toEqual({
      fuel: false,
      water: true,
      general: true,
    });
  });

  it('keeps areas, without heights', async () => {
    const ring = [
      [0, 0, 5],
      [1, 0, 5],
      [1, 1, 5],
      [0, 0, 5],
    ];
    const { features } = await read([
      { type: 'Feature', properties: WATER, geometry: { type: 'Polygon', coordinates: [ring] } },
    ]);
    expect(features[0]?.geometry).toEqual({ type: 'Polygon', coordinates: [ring.map(([x, y]) => [x, y])] });
  });

  it('takes a bbox member for declared bounds, with or without heights', async () => {
    expect((await read([point(WATER)], { bbox: [84, -36, 87, -34] })).bounds).toEqual([84, -36, 87, -34]);
    expect((await read([point(WATER)], { bbox: [84, -36, 0, 87, -34, 900] })).bounds).toEqual([
      84, -36, 87, -34,
    ]);
    const broken = await read([point(WATER)], { bbox: [84, -36] });
    expect([broken.bounds, broken.cautions.map(({ code }) => code)]).toEqual([null, ['bounds-unusable']]);
  });

  it('reads a single feature', async () => {
    expect((await extractAt(put('one.json', JSON.stringify(point(WATER))))).features).toHaveLength(1);
  });

  it('two points of one name get two ids, and stay two when files unite', async () => {
    const first = await read([point({ ...WATER, name: 'Well' }), point({ ...WATER, name: 'Well' }, 3, 4)]);
    const second = await read([point({ ...WATER, name: 'Well' }, 5, 6), point({ ...WATER, name: 'Well' })]);
    expect(first.features.map(({ id }) => id)).toEqual(['own/well', 'own/well-2']);
    const united = unite([first, second], [], []).features;
    expect(united.map(({ geometry }) => 'coordinates' in geometry && geometry.coordinates)).toEqual([
      [1, 2],
      [3, 4],
      [5, 6],
      [1, 2],
    ]);
    expect(new Set(united.map(({ id }) => id)).size).toBe(4);
  });
});
