import osmtogeojson from 'osmtogeojson';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodePbfElements, type PbfElement } from '../../fixtures/pbf-writer.ts';
import type { Analysis } from '../../server/contract/analysis.ts';
import {
  FRESH,
  FUEL,
  type MapObject,
  MIDDLE,
  osmXml,
  overpassJson,
  placeBeside,
  STRAIGHT_BOX,
  StraightRoute,
  straightMap,
  WATER,
} from '../traps/straight-route.ts';

let straight: StraightRoute;
beforeAll(async () => {
  straight = await StraightRoute.open();
});
afterAll(() => straight.close());

const UNNAMED: MapObject = { ...WATER, tags: { amenity: 'drinking_water' } };
const HAMLET: MapObject = {
  type: 'node',
  id: 50_001,
  ...placeBeside(600, 0, -1200),
  tags: { place: 'hamlet', name: 'Ollin' },
  version: 1,
  timestamp: FRESH,
};
const inOrder = { node: 0, way: 1, relation: 2 };
const OBJECTS = straightMap({ water: UNNAMED, more: [HAMLET] }).sort(
  (a, b) => inOrder[a.type] - inOrder[b.type] || a.id - b.id,
);

const FORMATS: Record<string, Record<string, string | Uint8Array>> = {
  xml: { 'map.osm': osmXml({ objects: OBJECTS }) },
  overpass: { 'map.json': overpassJson({ objects: OBJECTS }) },
  pbf: { 'map.osm.pbf': encodePbfElements(STRAIGHT_BOX, OBJECTS as PbfElement[], { asOf: FRESH }) },
  geojson: {
    'map.geojson': JSON.stringify({
      ...osmtogeojson({ elements: structuredClone(OBJECTS) as object[] }, { flatProperties: true }),
      bbox: STRAIGHT_BOX,
      timestamp: FRESH,
    }),
  },
};

describe('the list to check before leaving', () => {
  it.each(Object.entries(FORMATS))(
    'says of a tap without a name where it is, from a map of %s',
    async (_, files) => {
      const { callFirst = [] } = await straight.analysis(files);
      const tap = callFirst.find(({ name }) => name === null);
      expect(tap?.where).toMatch(/^drinking-water tap, km 600, 1\.2 km N of Ollin$/);
      const text = await straight.run(files);
      expect(text).toMatch(
        /- \[ \] drinking-water tap, km 600, 1\.2 km N of Ollin: stated; without its water (short|unknown)/,
      );
      expect(text).not.toMatch(/- \[ \] drinking water/);
    },
  );

  it('marks what was confirmed long before the departure', async () => {
    const confirmations = [{ id: 'node/1', on: '2027-01-01', works: true, by: 'Ann', words: 'till six' }];
    const trip = { departure: '2027-06-01', confirmations };
    const text = await straight.run({ 'map.osm': osmXml({ objects: OBJECTS }) }, trip);
    expect(text).toContain(
      'Middle fuel (km 599.5): confirmed on 2027-01-01 by Ann ("till six"); confirm again before leaving, from 2027-04-02 on; without its fuel short',
    );
    expect(text).toContain('Middle fuel was confirmed on 2027-01-01, long before the departure');
  });
});

describe('notes and another extract', () => {
  const was = { ...MIDDLE, tags: FUEL.tags, near: [] };
  const confirmations = [{ id: 'node/1', on: '2026-11-01', works: true, was }];
  const codesWith = async (fuel: MapObject | null, more: readonly MapObject[] = []): Promise<string[]> => {
    const objects = straightMap({ fuel, more });
    const analysis: Analysis = await straight.analysis({ 'map.osm': osmXml({ objects }) }, { confirmations });
    return analysis.cautions.map(({ code }) => code).filter((code) => code.startsWith('note-'));
  };

  it('say what became of the object', async () => {
    expect(await codesWith(FUEL)).toEqual([]);
    expect(await codesWith({ ...FUEL, ...placeBeside(600, 100) })).toEqual(['note-object-moved']);
    expect(await codesWith({ ...FUEL, tags: { ...FUEL.tags, access: 'private' } })).toEqual([
      'note-object-changed',
    ]);
    expect(await codesWith(null)).toEqual(['note-object-gone']);
    expect(await codesWith(FUEL, [{ ...FUEL, id: 77, ...placeBeside(600, 60) }])).toEqual([
      'note-new-nearby',
    ]);
  });
});
