import { writeFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodePbfElements, type PbfElement } from '../../fixtures/pbf-writer.ts';
import {
  FUEL,
  generalLand,
  isCalm,
  type MapObject,
  osmXml,
  overpassJson,
  placeAt,
  STALE,
  STRAIGHT_BOX,
  STRAIGHT_KM,
  StraightRoute,
  straightMap,
  WATER,
} from './straight-route.ts';

let route: StraightRoute;
beforeAll(async () => {
  route = await StraightRoute.open();
});
afterAll(() => route.close());

type Files = Readonly<Record<string, string | Uint8Array>>;
/** Stretches covered, in whole kilometres. */
async function coverOf(files: Files, commodity: 'fuel' | 'water', trip: object = {}) {
  const { cover } = (await route.analysis(files, trip))[commodity];
  return cover.map(({ fromKm, toKm }) => [Math.round(fromKm), Math.round(toKm)]);
}
/** A map without any relation looks cut off. */
const ROAD_NUMBER: PbfElement = {
  type: 'relation',
  id: 600_000,
  members: [{ type: 'way', ref: 200_000, role: '' }],
  tags: { type: 'route', route: 'road' },
};
const pbfOf = (objects: readonly PbfElement[]) =>
  encodePbfElements(STRAIGHT_BOX, objects, { asOf: '2026-10-01T00:00:00Z', blockSize: 50 });
const pbf = (objects: readonly MapObject[]) => pbfOf([...(objects as PbfElement[]), ROAD_NUMBER]);

const ALL = [[0, 1199]];
const ROADS = generalLand().filter(({ tags, id }) => tags === undefined || id < 300_000);

describe('what an extract covers', () => {
  it.each([
    ['OSM XML', (objects: readonly MapObject[]) => osmXml({ objects })],
    ['pbf', pbf],
    ['pbf, ways before nodes', (objects: readonly MapObject[]) => pbf([...objects].reverse())],
  ])('is all of the route near the roads of a general map: %s', async (_name, write) => {
    expect(await coverOf({ land: write(straightMap()) }, 'fuel')).toEqual(ALL);
    expect(await coverOf({ land: write(straightMap()) }, 'water')).toEqual(ALL);
  });

  it.each([
    ['OSM XML', (objects: readonly MapObject[]) => osmXml({ objects })],
    ['pbf', pbf],
  ])('ends where its roads end, whatever its box says: %s', async (_name, write) => {
    const half = [FUEL, WATER, ...generalLand(0, 680)];
    const [[from, to] = []] = await coverOf({ land: write(half) }, 'water');
    expect(from).toBe(0);
    expect(to).toBeGreaterThanOrEqual(680);
    expect(to).toBeLessThan(683);
  });

  it('is nothing of a file that may have been cut off, until one vouches for it', async () => {
    const files = { 'land.pbf': pbfOf(straightMap() as PbfElement[]) };
    const cautionsOf = async (trip: object) =>
      (await route.analysis(files, trip)).cautions.filter(({ code }) => code === 'maybe-cut');
    expect(await coverOf(files, 'water')).toEqual([]);
    expect(await cautionsOf({})).toHaveLength(1);
    const marksOf = async (trip: object) =>
      (await route.analysis(files, trip)).extracts.map(({ maybeCut = false }) => maybeCut);
    expect(await marksOf({})).toEqual([true]);
    const vouched = { extracts: [{ file: 'land.pbf', whole: true }] };
    expect(await marksOf(vouched)).toEqual([false]);
    expect(await coverOf(files, 'water', vouched)).toEqual(ALL);
    expect(await cautionsOf(vouched)).toEqual([]);
  });

  it('is L-shaped for a map of an L: both arms, and nothing between', async () => {
    const arms = [FUEL, WATER, ...generalLand(0, 200), ...generalLand(1000, 1200)];
    const cover = await coverOf({ 'l.osm': osmXml({ objects: arms }) }, 'water');
    expect(cover.length).toBe(2);
    expect(cover[0]?.[1]).toBeLessThan(203);
    expect(cover[1]?.[0]).toBeGreaterThan(997);
  });

  it('is fuel alone where every supply is fuel, whatever else the file holds', async () => {
    const files = { 'fuel.osm': osmXml({ objects: straightMap({ water: null }) }) };
    expect(await coverOf(files, 'fuel')).toEqual(ALL);
    expect(await coverOf(files, 'water'), 'water is not on this map, and was said to be nowhere').toEqual([]);
    expect(isCalm(await route.analysis(files), 'water')).toBe(false);
  });

  it('is water alone where every supply is water', async () => {
    const files = { 'water.osm': osmXml({ objects: straightMap({ fuel: null }) }) };
    expect(await coverOf(files, 'water')).toEqual(ALL);
    expect(await coverOf(files, 'fuel')).toEqual([]);
  });

  it('is nothing for roads alone', async () => {
    const files = { 'roads.osm': osmXml({ objects: ROADS }) };
    expect([await coverOf(files, 'fuel'), await coverOf(files, 'water')]).toEqual([[], []]);
  });

  it('is near its objects for a file cut down to supplies', async () => {
    const files = { 'cut.osm': osmXml({ objects: [FUEL, WATER] }) };
    expect(await coverOf(files, 'fuel')).toEqual([[575, 625]]);
  });

  it('is nothing for the hull of points until the user vouches', async () => {
    const south = { ...FUEL, id: 8, ...placeAt(1) };
    const corners = [-0.9, 0.9].flatMap((east, index) =>
      [-5, STRAIGHT_KM + 5].map((km, end) => ({
        ...FUEL,
        id: 10 + index * 2 + end,
        lat: placeAt(km).lat,
        lon: placeAt(km).lon + east,
      })),
    );
    const files = { 'reply.json': overpassJson({ objects: [FUEL, south, ...corners] }) };
    expect(await coverOf(files, 'fuel')).toEqual([]);
    const { cautions } = await route.analysis(files);
    expect(cautions.map(({ code }) => code)).toContain('cover-unvouched');
    expect(await coverOf(files, 'fuel', { extracts: [{ file: 'reply.json', hull: true }] })).toEqual(ALL);
  });
});

describe('a boundary that the user gives', () => {
  const at = (km: number, east: number): [number, number] => [placeAt(km).lon + east, placeAt(km).lat];
  const ring = [at(300, -0.5), at(300, 0.5), at(900, 0.5), at(900, -0.5)];
  const land = { 'land.osm': osmXml({ objects: straightMap() }) };
  const lines = ring.map(([lon, lat]) => `   ${lon}   ${lat}`).join('\n');

  it('narrows what an extract covers, of one commodity where one is named', async () => {
    const trip = { extracts: [{ file: 'land.osm', boundaries: [{ commodity: 'water', rings: [ring] }] }] };
    expect(await coverOf(land, 'water', trip)).toEqual([[300, 899]]);
    expect(await coverOf(land, 'fuel', trip)).toEqual(ALL);
  });

  it('widens it, whatever the file holds', async () => {
    const trip = { extracts: [{ file: 'cut.osm', boundaries: [{ rings: [ring] }] }] };
    expect(await coverOf({ 'cut.osm': osmXml({ objects: [FUEL], bounds: null }) }, 'water', trip)).toEqual([
      [300, 899],
    ]);
  });

  it.each([
    ['.poly', `land\n1\n${lines}\nEND\nEND\n`],
    [
      'GeoJSON',
      JSON.stringify({ type: 'Feature', geometry: { type: 'Polygon', coordinates: [[...ring, ring[0]]] } }),
    ],
  ])('is read from a file beside the trip: %s', async (_name, text) => {
    await writeFile(route.path('edge'), text);
    const trip = { extracts: [{ file: 'land.osm', boundaries: [{ file: 'edge' }] }] };
    expect(await coverOf(land, 'fuel', trip)).toEqual([[300, 899]]);
  });

  it.each([
    ['holes', `land\n1\n${lines}\nEND\n!2\n${lines}\nEND\nEND\n`],
    ['no end', `land\n1\n${lines}\n`],
  ])('is refused with %s', async (_name, text) => {
    await writeFile(route.path('edge'), text);
    const trip = { extracts: [{ file: 'land.osm', boundaries: [{ file: 'edge' }] }] };
    await expect(route.run(land, trip)).rejects.toThrow('boundary');
  });
});

describe('what is gone in a newer map', () => {
  const old = osmXml({ objects: straightMap(), date: '2025-06-01T00:00:00Z' });

  it('does not count: a newer general extract covers its place and has it not', async () => {
    const newer = osmXml({ objects: straightMap({ fuel: null, water: { ...WATER, id: 77 } }) });
    for (const files of [
      { 'old.osm': old, 'new.osm': newer },
      { 'new.osm': newer, 'old.osm': old },
    ] as Files[]) {
      const analysis = await route.analysis(files);
      const gone = analysis.passings.filter(({ reasons }) =>
        reasons.some(({ code }) => code === 'gone-in-newer'),
      );
      expect(gone.map(({ id, counts }) => [id, counts])).toEqual([['node/2', false]]);
    }
    const withFuel = osmXml({ objects: straightMap({ fuel: { ...FUEL, id: 78, ...placeAt(1100) } }) });
    const analysis = await route.analysis({ 'old.osm': old, 'new.osm': withFuel });
    expect(isCalm(analysis, 'fuel'), 'a station that the newer map dropped was counted').toBe(false);
  });

  it('stands where the newer map does not reach', async () => {
    const north = osmXml({ objects: [{ ...FUEL, id: 78, ...placeAt(1100) }, ...generalLand(900, 1200)] });
    const analysis = await route.analysis({ 'old.osm': old, 'new.osm': north });
    expect(isCalm(analysis, 'fuel')).toBe(true);
  });

  it('is not told by an older map', async () => {
    const older = osmXml({ objects: straightMap({ fuel: { ...FUEL, id: 78 } }), date: STALE });
    const analysis = await route.analysis({
      'old.osm': osmXml({ objects: straightMap() }),
      'older.osm': older,
    });
    expect(isCalm(analysis, 'fuel')).toBe(true);
  });
});
