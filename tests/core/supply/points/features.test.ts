import { booleanPointInPolygon, point } from '@turf/turf';
import fc from 'fast-check';
import type { Polygon, Position } from 'geojson';
import { describe, expect, it } from 'vitest';
import type { MappedFeature, Tags } from '../../../../server/core/input/sources.ts';
import { classify } from '../../../../server/core/supply/judge/rules.ts';
import { toSupplyFeatures } from '../../../../server/core/supply/points/features.ts';
import { textOf } from '../../../../server/words/words-of.ts';
import { codesOf, nodeOf, PLAIN } from '../judged.ts';

const squareOf = (west: number, south: number, side: number): Polygon => ({
  type: 'Polygon',
  coordinates: [
    [
      [west, south],
      [west + side, south],
      [west + side, south + side],
      [west, south + side],
      [west, south],
    ],
  ],
});
const areaOf = (
  tags: Tags,
  { id = 'way/1', west = 0, side = 2, editedAt = null as string | null } = {},
): MappedFeature => ({ id, geometry: squareOf(west, 0, side), tags, editedAt });
const inside = (tags: Tags, id = 'node/1', editedAt: string | null = null): MappedFeature =>
  nodeOf(tags, { id, lon: 1.5, lat: 1.5, editedAt });
const idsOf = (mapped: MappedFeature[]) =>
  toSupplyFeatures(mapped).features.map(({ id, alsoIds }) => [id, alsoIds]);

const FUEL = { amenity: 'fuel' };

describe('mapped objects as supplies', () => {
  it('keeps, places or skips every one, with the reason', () => {
    const { features, skipped } = toSupplyFeatures([
      nodeOf(FUEL, { id: 'node/1' }),
      nodeOf({ amenity: 'bench' }, { id: 'node/2' }),
      { id: 'way/3', geometry: { type: 'LineString', coordinates: [] }, tags: FUEL, editedAt: null },
      nodeOf({ amenity: 'drinking_water' }, { id: 'own/4', lon: 10 }),
    ]);
    expect(features).toEqual([
      { id: 'node/1', alsoIds: [], lon: 88, lat: -35, tags: FUEL, editedAt: null, wanted: ['fuel'] },
      {
        id: 'own/4',
        alsoIds: [],
        lon: 10,
        lat: -35,
        tags: { amenity: 'drinking_water' },
        editedAt: null,
        wanted: ['water'],
      },
    ]);
    expect(skipped).toEqual([
      { id: 'node/2', reason: { phrase: 'skipped-no-supply', facts: {} } },
      { id: 'way/3', reason: { phrase: 'skipped-no-place', facts: {} } },
    ]);
  });

  it("takes a node into the area of its kind that holds it: the area's tags stand, the node's fill in", () => {
    const { features } = toSupplyFeatures([
      inside({ amenity: 'fuel', 'fuel:diesel': 'yes', name: 'Node' }, 'node/9', '2024-02-01T00:00:00Z'),
      areaOf({ amenity: 'fuel', name: 'Area' }, { editedAt: '2025-02-01T00:00:00Z' }),
    ]);
    expect(features).toEqual([
      {
        id: 'way/1',
        alsoIds: ['node/9'],
        lon: 1,
        lat: 1,
        tags: { amenity: 'fuel', 'fuel:diesel': 'yes', name: 'Area' },
        editedAt: '2024-02-01T00:00:00Z',
        wanted: ['fuel'],
      },
    ]);
  });

  it('merges nothing else', () => {
    const tap = { amenity: 'drinking_water' };
    expect(idsOf([areaOf(FUEL), inside(tap)])).toHaveLength(2);
    expect(idsOf([areaOf({ ...FUEL, drinking_water: 'yes' }), inside(tap)])).toHaveLength(2);
    expect(idsOf([areaOf(FUEL), nodeOf(FUEL, { lon: 2.001, lat: 1 })])).toHaveLength(2);
    expect(idsOf([areaOf(FUEL), areaOf(FUEL, { id: 'way/2', west: 0.5, side: 1 })])).toHaveLength(2);
    expect(idsOf([nodeOf(FUEL, { id: 'node/1' }), nodeOf(FUEL, { id: 'node/2' })])).toHaveLength(2);
    expect(idsOf([areaOf(FUEL), inside(FUEL, 'own/1')])).toHaveLength(2);
    expect(idsOf([areaOf(FUEL), inside(FUEL, 'way/8')])).toHaveLength(2);
    const camp = { tourism: 'camp_site', drinking_water: 'yes' };
    expect(idsOf([areaOf(camp), inside({ drinking_water: 'yes' })])).toHaveLength(2);
    expect(idsOf([areaOf(camp), inside(camp)])).toEqual([['way/1', ['node/1']]]);
  });

  it('merges on the outline, in a closed line, in one of several parts, but not in a hole', () => {
    const onEdge = nodeOf(FUEL, { id: 'node/1', lon: 2, lat: 1 });
    const onCorner = nodeOf(FUEL, { id: 'node/2', lon: 0, lat: 0 });
    expect(idsOf([areaOf(FUEL), onEdge, onCorner])).toEqual([['way/1', ['node/1', 'node/2']]]);
    const ring = squareOf(0, 0, 2).coordinates[0]!;
    const closed: MappedFeature = { ...areaOf(FUEL), geometry: { type: 'LineString', coordinates: ring } };
    expect(idsOf([closed, inside(FUEL)])).toEqual([['way/1', ['node/1']]]);
    const open: MappedFeature = {
      ...areaOf(FUEL),
      geometry: { type: 'LineString', coordinates: ring.slice(0, 4) },
    };
    expect(idsOf([open, inside(FUEL)])).toHaveLength(2);
    const parts: MappedFeature = {
      ...areaOf(FUEL, { id: 'relation/1' }),
      geometry: {
        type: 'MultiPolygon',
        coordinates: [squareOf(40, 0, 3).coordinates, squareOf(0, 0, 2).coordinates],
      },
    };
    expect(idsOf([parts, inside(FUEL)])).toEqual([['relation/1', ['node/1']]]);
    const holed: MappedFeature = {
      ...areaOf(FUEL),
      geometry: { type: 'Polygon', coordinates: [ring, squareOf(1.4, 1.4, 0.2).coordinates[0]!] },
    };
    expect(idsOf([holed, inside(FUEL)])).toHaveLength(2);
  });

  it('merges over the 180th meridian', () => {
    const ring: Position[] = [
      [179.9, -17],
      [-179.9, -17],
      [-179.9, -16],
      [179.9, -16],
      [179.9, -17],
    ];
    for (const coordinates of [ring, [...ring.slice(1), ring[1]!]]) {
      const area: MappedFeature = {
        ...areaOf(FUEL),
        geometry: { type: 'Polygon', coordinates: [coordinates] },
      };
      for (const lon of [179.95, -179.95]) {
        expect(idsOf([area, nodeOf(FUEL, { lon, lat: -16.5 })])).toEqual([['way/1', ['node/1']]]);
      }
      expect(idsOf([area, nodeOf(FUEL, { lon: 0, lat: -16.5 })])).toHaveLength(2);
    }
  });

  it('gives a node in nested areas to the smallest', () => {
    const big = areaOf(FUEL, { id: 'way/1', side: 4 });
    const small = areaOf(FUEL, { id: 'way/2', west: 1, side: 2 });
    expect(idsOf([big, small, inside(FUEL)])).toEqual([
      ['way/1', []],
      ['way/2', ['node/1']],
    ]);
  });

  it('loses no supply by merging', () => {
    const area = areaOf({ amenity: 'fuel', man_made: 'tower' });
    const both = inside({ amenity: 'fuel', man_made: 'water_tap' });
    expect(idsOf([area, both])).toHaveLength(2);
    expect(idsOf([areaOf(FUEL), both])).toEqual([['way/1', ['node/1']]]);
  });

  it('finds the same as trying every node with every area', () => {
    const at = fc.integer({ min: 0, max: 10_000 }).map((thousandths) => thousandths / 1000);
    const kind = fc.constantFrom<Tags[]>(FUEL, { amenity: 'drinking_water' }, { natural: 'spring' });
    fc.assert(
      fc.property(
        fc.array(
          fc.tuple(
            at,
            at,
            fc.integer({ min: 1, max: 30 }).map((tenths) => tenths / 10),
            kind,
          ),
          { maxLength: 12 },
        ),
        fc.array(fc.tuple(at, at, kind), { maxLength: 30 }),
        (squares, spots) => {
          const areas = squares.map(([west, south, side, tags], i) => ({
            id: `way/${i}`,
            geometry: squareOf(west, south, side),
            tags,
            editedAt: null,
          }));
          const nodes = spots.map(([lon, lat, tags], i) => nodeOf(tags, { id: `node/${i}`, lon, lat }));
          const merged = toSupplyFeatures([...nodes, ...areas]).features.flatMap(({ alsoIds }) => alsoIds);
          const expected = spots
            .map(([lon, lat, tags], i) => ({ id: `node/${i}`, lon, lat, tags }))
            .filter((node) =>
              areas.some(
                (area) =>
                  JSON.stringify(area.tags) === JSON.stringify(node.tags) &&
                  booleanPointInPolygon(point([node.lon, node.lat]), area.geometry),
              ),
            )
            .map(({ id }) => id);
          expect([...merged].sort()).toEqual([...expected].sort());
        },
      ),
    );
  });

  it('takes up 20,000 areas and 80,000 nodes with none lost', { tags: 'slow' }, () => {
    const areas = Array.from(
      { length: 20_000 },
      (_, i): MappedFeature => ({
        id: `way/${i}`,
        geometry: squareOf(-100 + (i % 200) * 0.9, -45 + Math.floor(i / 200) * 0.9, 0.3),
        tags: FUEL,
        editedAt: null,
      }),
    );
    const nodes = Array.from({ length: 80_000 }, (_, i) =>
      nodeOf(FUEL, {
        id: `node/${i}`,
        lon: -99.9 + (i % 400) * 0.45,
        lat: -44.9 + Math.floor(i / 400) * 0.45,
      }),
    );
    const { features, skipped } = toSupplyFeatures([...nodes, ...areas]);
    const ids = features.flatMap(({ id, alsoIds }) => [id, ...alsoIds]);
    expect(skipped).toEqual([]);
    expect(new Set(ids).size).toBe(100_000);
    // Every other node in both directions lies in a square.
    expect(features).toHaveLength(80_000);
  });
});

describe('merged objects that differ', () => {
  const judged = (area: Tags, ...nodes: Tags[]) => {
    const mapped = [areaOf(area), ...nodes.map((tags, i) => inside(tags, `node/${i + 1}`))];
    const points = classify(toSupplyFeatures(mapped).features, PLAIN);
    expect(points).toHaveLength(1);
    return points[0]!;
  };

  it('are judged by the worse reading, whichever it is, and say so', () => {
    const yes = { amenity: 'fuel', 'fuel:diesel': 'yes' };
    const no = { amenity: 'fuel', 'fuel:diesel': 'no' };
    for (const point of [judged(yes, no), judged(no, yes)]) {
      expect([point.counts, point.evidence]).toEqual([false, 'doubtful']);
      expect(codesOf(point)).toEqual(['fuel-not-sold', 'evidence-below', 'tags-differ']);
      expect(point.reasons.slice(-1).map((reason) => textOf(reason))[0]).toContain('node/1: fuel:diesel');
    }
    expect(judged(yes, yes).counts).toBe(true);
    expect(judged(FUEL, yes, no).counts).toBe(false);
    expect(judged(FUEL, no, yes).counts).toBe(false);
    expect(judged({ ...yes, access: 'yes' }, { ...yes, access: 'private' }).counts).toBe(false);
    expect(judged({ ...yes, access: 'private' }, { ...yes, access: 'yes' }).counts).toBe(false);
    expect(judged(yes, { ...yes, access: 'private' }).counts).toBe(false);
    expect(judged(yes, { 'disused:amenity': 'fuel' }).counts).toBe(false);
    expect(judged({ 'disused:amenity': 'fuel' }, yes).counts).toBe(false);
    expect(judged(yes, { ...yes, disused: 'yes' }).counts).toBe(false);
  });

  it('are of the less fit class of water', () => {
    const fit = { man_made: 'water_tap', drinking_water: 'yes' };
    const untreated = { man_made: 'water_tap', drinking_water: 'untreated' };
    const unfit = { man_made: 'water_tap', drinking_water: 'no' };
    expect(judged(fit, untreated)).toMatchObject({ waterClass: 'treatable', counts: false });
    expect(judged(untreated, fit)).toMatchObject({ waterClass: 'treatable', counts: false });
    expect(judged(untreated, fit, unfit)).toMatchObject({ waterClass: 'washing', counts: false });
  });

  it('hold no drinking water where one of them says it has none', () => {
    const camp = { tourism: 'camp_site', drinking_water: 'yes' };
    const station = { ...FUEL, drinking_water: 'yes' };
    const mapped = [areaOf(station), inside({ ...FUEL, drinking_water: 'no' })];
    const points = classify(toSupplyFeatures(mapped).features, PLAIN);
    expect(points.map(({ commodity, counts }) => [commodity, counts])).toEqual([
      ['fuel', true],
      ['water', false],
    ]);
    expect(points[1]).toMatchObject({ waterClass: 'washing', evidence: 'doubtful' });
    expect(codesOf(points[1]!)).toEqual(['tags-contradict', 'evidence-below', 'tags-differ']);
    expect(judged(camp, camp).counts).toBe(true);
  });

  it('do not differ where only names, fees or remarks do', () => {
    const point = judged(
      { ...FUEL, name: 'North', fee: 'no' },
      { ...FUEL, name: 'South', fee: 'yes', ref: '4' },
    );
    expect(codesOf(point)).toEqual([]);
    expect(point.name).toBe('North');
  });

  it('are as old as the older look at them', () => {
    const { features } = toSupplyFeatures([
      areaOf({ ...FUEL, check_date: '2025-03-01' }),
      inside({ ...FUEL, check_date: '2019-03-01' }),
    ]);
    expect(features[0]?.tags.check_date).toBe('2019-03-01');
    expect(classify(features, { ...PLAIN, on: '2026-01-01' })[0]?.counts).toBe(false);
  });

  it("are found by the id of any of them in the user's reports", () => {
    const mapped = [areaOf(FUEL), inside(FUEL, 'node/5')];
    const confirmations = [{ id: 'node/5', on: '2026-01-01', works: false }];
    const [point] = classify(toSupplyFeatures(mapped).features, { ...PLAIN, confirmations });
    expect([point?.id, point?.counts]).toEqual(['way/1', false]);
  });
});
