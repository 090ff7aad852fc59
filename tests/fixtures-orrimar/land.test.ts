import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { stepM } from '../../server/core/geodesy/step.ts';
import { type DemoElement, demoElements, demoText, demoTrack } from './demo-files.ts';

const elements = demoElements();
const track = demoTrack();
const nodes = new Map(elements.filter(({ type }) => type === 'node').map((node) => [node.id, node]));
const positionOf = (id: number): [number, number] => {
  const node = nodes.get(id);
  if (node?.lon === undefined || node.lat === undefined) throw new Error(`node ${id} has no place`);
  return [node.lon, node.lat];
};
const steps = track.slice(1).map(([lon, lat], i) => stepM(track[i]![0], track[i]![1], lon, lat));

/** Even-odd rule on degrees: fine for an outline this far from pole and 180th meridian. */
function isInside([lon, lat]: readonly number[], ring: readonly (readonly [number, number])[]): boolean {
  let inside = false;
  for (let i = 1; i < ring.length; i++) {
    const [x1, y1] = ring[i - 1]!;
    const [x2, y2] = ring[i]!;
    if (y1 > lat! !== y2 > lat! && lon! < ((x2 - x1) * (lat! - y1)) / (y2 - y1) + x1) inside = !inside;
  }
  return inside;
}

/** The coastline ways joined in order; throws where one does not begin where the last ended. */
function outline(): [number, number][] {
  const ids: number[] = [];
  for (const way of elements.filter(({ tags }) => tags?.natural === 'coastline')) {
    if (ids.length > 0 && way.nodes![0] !== ids.at(-1)) throw new Error(`way ${way.id} does not join`);
    ids.push(...way.nodes!.slice(ids.length === 0 ? 0 : 1));
  }
  expect(ids[0]).toBe(ids.at(-1));
  return ids.map(positionOf);
}

describe('the route of Orrimar', () => {
  it('is about 1,450 km long', () => {
    const lengthKm = steps.reduce((sum, step) => sum + step, 0) / 1000;
    expect(lengthKm).toBeGreaterThan(1440);
    expect(lengthKm).toBeLessThan(1460);
  });

  it('has the vertices of a recorded track: thousands, none far apart, none repeated', () => {
    expect(track.length).toBeGreaterThanOrEqual(3000);
    expect(track.length).toBeLessThanOrEqual(6000);
    expect(Math.max(...steps)).toBeLessThan(2000);
    expect(Math.min(...steps)).toBeGreaterThan(10);
  });

  it('has heights that a vehicle could drive: no slope over 15 % between vertices', () => {
    const slopes = steps.map((step, i) => Math.abs(track[i + 1]![2] - track[i]![2]) / step);
    expect(Math.max(...slopes)).toBeLessThan(0.15);
    expect(Math.max(...track.map(([, , ele]) => ele))).toBeGreaterThan(500);
  });

  it('goes out and back once over the same vertices', () => {
    const seen = new Map<string, number>();
    const twice = track.filter((point) => {
      const key = point.join(' ');
      seen.set(key, (seen.get(key) ?? 0) + 1);
      return seen.get(key)! > 1;
    });
    const spurM = steps.reduce((sum, step, i) => {
      const isTwice = seen.get(track[i]!.join(' '))! > 1 && seen.get(track[i + 1]!.join(' '))! > 1;
      return isTwice ? sum + step : sum;
    }, 0);
    expect(twice.length).toBeGreaterThan(20);
    expect(spurM).toBeGreaterThan(20_000);
    expect(Math.max(...seen.values())).toBe(2);
  });

  it('stays on the land, in the empty part of the southern Indian Ocean', () => {
    const shore = outline();
    expect(track.filter((point) => !isInside(point, shore))).toEqual([]);
    expect(shore.filter(([lon, lat]) => lon < 84 || lon > 94 || lat < -38 || lat > -33)).toEqual([]);
  });

  it('leaves the bounds of the extract twice', () => {
    const reply = JSON.parse(demoText('orrimar.overpass.json')) as {
      bounds: { minlat: number; minlon: number; maxlat: number; maxlon: number };
    };
    const { minlat, minlon, maxlat, maxlon } = reply.bounds;
    const inside = track.map(
      ([lon, lat]) => lon >= minlon && lon <= maxlon && lat >= minlat && lat <= maxlat,
    );
    const leaves = inside.filter((is, i) => !is && inside[i - 1] === true).length;
    expect(leaves).toBe(2);
    expect(inside[0]).toBe(true);
    expect(inside.at(-1)).toBe(true);
  });

  it('runs on roads of the extract wherever the extract has ground', () => {
    const onRoad = new Set(
      elements
        .filter(({ tags }) => tags?.highway !== undefined)
        .flatMap((road) => road.nodes!.map((id) => positionOf(id).join(' '))),
    );
    const covered = track.filter(([, lat]) => lat <= -34.35);
    expect(covered.filter(([lon, lat]) => !onRoad.has(`${lon} ${lat}`))).toEqual([]);
  });

  it('says on every form that the land is invented', () => {
    const notice = demoText('notice.txt').trim();
    expect(notice).toBe('Orrimar is invented. Do not drive by it.');
    for (const name of ['route.gpx', 'orrimar.osm', 'orrimar.overpass.json', 'trip.yaml']) {
      expect(demoText(name), name).toContain(notice);
    }
    const island = elements.find(({ type, tags }) => type === 'relation' && tags?.place === 'island');
    expect(island?.tags?.note).toBe(notice);
  });
});

describe('the map of Orrimar', () => {
  const has = (wanted: Record<string, string>, more: (element: DemoElement) => boolean = () => true) =>
    elements.some(
      (element) =>
        Object.entries(wanted).every(([key, value]) => element.tags?.[key] === value) && more(element),
    );
  const isNode = ({ type }: DemoElement) => type === 'node';
  const isWay = ({ type }: DemoElement) => type === 'way';

  it.each<[string, Record<string, string>, ((element: DemoElement) => boolean)?]>([
    ['a disused station', { 'disused:amenity': 'fuel' }],
    [
      'a petrol-only station',
      { amenity: 'fuel', 'fuel:octane_95': 'yes' },
      ({ tags }) => tags?.['fuel:diesel'] === undefined,
    ],
    [
      'an LPG-only station',
      { amenity: 'fuel', 'fuel:lpg': 'yes' },
      ({ tags }) => tags?.['fuel:diesel'] === undefined,
    ],
    ['a station without diesel', { amenity: 'fuel', 'fuel:diesel': 'no' }],
    ['a private fuel depot', { amenity: 'fuel', access: 'private' }],
    ['fuel for boats', { waterway: 'fuel' }],
    ['fuel for aircraft', { aeroway: 'fuel' }],
    [
      'a station that its tags only imply',
      { amenity: 'fuel' },
      ({ tags }) => Object.keys(tags!).every((key) => !key.startsWith('fuel:')),
    ],
    ['a station mapped as an area', { amenity: 'fuel', 'fuel:diesel': 'yes' }, isWay],
    ['a private well', { man_made: 'water_well', access: 'private' }],
    ['a seasonal tap', { amenity: 'drinking_water', seasonal: 'summer' }],
    ['an untested bore', { man_made: 'water_well' }, ({ tags }) => tags?.drinking_water === undefined],
    ['a well without a pump', { man_made: 'water_well', drinking_water: 'yes', pump: 'no' }],
    [
      'a spring that needs treatment',
      { natural: 'spring' },
      ({ tags }) => tags?.drinking_water === undefined,
    ],
    ['an intermittent spring', { natural: 'spring', intermittent: 'yes' }],
    ['a spring not controlled', { natural: 'spring', 'drinking_water:legal': 'no' }],
    ['a tank mapped as an area', { man_made: 'storage_tank', content: 'water' }, isWay],
    ['a supply mapped as a multipolygon', { type: 'multipolygon', drinking_water: 'yes' }],
    ['a water point', { amenity: 'water_point' }, isNode],
    ['a water tank for fires', { emergency: 'water_tank' }],
    ['a decorative fountain', { amenity: 'fountain' }],
    ['a trough for animals', { amenity: 'watering_place' }],
    ['roads', { highway: 'primary' }],
    ['tracks', { highway: 'track' }],
    ['towns', { place: 'town' }],
    ['a salt lake', { natural: 'water', salt: 'yes' }],
  ])('has %s', (_name, tags, more) => {
    expect(has(tags, more)).toBe(true);
  });

  const ringOf = (wayId: number) =>
    elements.find(({ type, id }) => type === 'way' && id === wayId)!.nodes!.map(positionOf);

  it('has a station’s node inside the area of the same station, and a water point inside a camp site', () => {
    expect(isInside(positionOf(6), ringOf(1))).toBe(true);
    expect(isInside(positionOf(4), ringOf(5))).toBe(true);
  });

  it('has land on the left of the coastline, in ways that join to one ring', () => {
    const ring = outline();
    let twiceArea = 0;
    for (let i = 1; i < ring.length; i++) {
      twiceArea += ring[i - 1]![0] * ring[i]![1] - ring[i]![0] * ring[i - 1]![1];
    }
    expect(twiceArea).toBeGreaterThan(0);
  });

  it('gives every element a version and a time; only one is older than three years at departure', () => {
    const departure = /departure: "(\d{4}-\d{2}-\d{2})"/.exec(demoText('trip.yaml'))?.[1];
    expect(departure).toBeDefined();
    const threeYearsBefore = `${Number(departure!.slice(0, 4)) - 3}${departure!.slice(4)}`;
    const time = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/;
    expect(elements.filter(({ version, timestamp }) => !(version >= 1 && time.test(timestamp)))).toEqual([]);
    const stale = elements.filter(({ timestamp }) => timestamp < threeYearsBefore);
    expect(stale.map(({ type, id }) => `${type}/${id}`)).toEqual(['node/19']);
  });

  it('refers only to elements that are there, each once, in order of type and number', () => {
    const keys = elements.map(({ type, id }) => `${type}/${id}`);
    const there = new Set(keys);
    expect(there.size).toBe(keys.length);
    const referred = elements.flatMap(({ nodes: refs, members }) => [
      ...(refs ?? []).map((ref) => `node/${ref}`),
      ...(members ?? []).map(({ type, ref }) => `${type}/${ref}`),
    ]);
    expect(referred.filter((key) => !there.has(key))).toEqual([]);
    const rank = { node: 0, way: 1, relation: 2 };
    const sorted = elements.toSorted((a, b) => rank[a.type] - rank[b.type] || a.id - b.id);
    expect(sorted).toEqual(elements);
  });

  it('is described object by object in the README', () => {
    const readme = readFileSync(new URL('../../fixtures/README.md', import.meta.url), 'utf8');
    const named = [...readme.matchAll(/((?:node|way|relation)\/\d+) ([A-Z][^,|]*?)(?=,| in it| \|)/g)];
    expect(named.length).toBeGreaterThan(30);
    const names = new Map(elements.map(({ type, id, tags }) => [`${type}/${id}`, tags?.name]));
    for (const [, id, name] of named) expect(names.get(id!), id).toBe(name!.trim());
    const described = new Set([...readme.matchAll(/(?:node|way|relation)\/\d+/g)].map(([id]) => id));
    const supplies = elements.filter(({ type, id }) => type === 'node' && id < 100);
    expect(supplies.map(({ id }) => `node/${id}`).filter((id) => !described.has(id))).toEqual([]);
  });
});
