import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { encodePbfElements, type PbfElement } from '../../fixtures/pbf-writer.ts';
import {
  FRESH,
  FUEL,
  isCalm,
  type MapObject,
  osmXml,
  overpassJson,
  STALE,
  STRAIGHT_BOX,
  StraightRoute,
  straightMap,
  WATER,
} from './straight-route.ts';

let route: StraightRoute;
beforeAll(async () => {
  route = await StraightRoute.open();
});
afterAll(() => route.close());

const AHEAD = '2222-01-01T00:00:00Z';
const bare = ({ version: _version, timestamp: _timestamp, ...object }: MapObject): MapObject => object;
const UNDATED = straightMap().map(bare);
const HINTED = { ...FUEL, tags: { amenity: 'fuel', name: 'Middle fuel' } };

const geoJson = (date: string | null) =>
  JSON.stringify({
    type: 'FeatureCollection',
    bbox: STRAIGHT_BOX,
    ...(date === null ? {} : { timestamp: date, copyright: 'Survey of nobody' }),
    features: [FUEL, WATER].map(({ lon, lat, tags, type, id }) => ({
      type: 'Feature',
      id: `${type}/${id}`,
      geometry: { type: 'Point', coordinates: [lon, lat] },
      properties: tags,
    })),
  });

const pbf = (asOf: string) =>
  encodePbfElements(STRAIGHT_BOX, straightMap() as PbfElement[], { metadata: false, asOf });

describe('how old the map is', () => {
  it.each([
    ['OSM XML with <meta>', { 'land.osm': osmXml({ objects: UNDATED }) }, FRESH],
    ['Overpass JSON', { 'land.json': overpassJson({ objects: UNDATED }) }, FRESH],
    ['GeoJSON', { 'land.geojson': geoJson(FRESH) }, FRESH],
    ['pbf', { 'land.osm.pbf': pbf(FRESH) }, FRESH],
  ])('is told by %s', async (_name, files, date) => {
    const [extract] = (await route.analysis(files)).extracts;
    expect(extract).toMatchObject({ asOf: date, asOfBy: 'file' });
    expect(await route.run(files)).toContain(`as of ${date.slice(0, 10)}`);
  });

  it('is the date of every object that has none', async () => {
    const fresh = await route.analysis({ 'land.osm': osmXml({ objects: UNDATED }) });
    expect([isCalm(fresh, 'fuel'), isCalm(fresh, 'water')]).toEqual([true, true]);
    const old = await route.analysis({ 'land.osm': osmXml({ objects: UNDATED, date: STALE }) });
    expect(isCalm(old, 'water'), 'a tap on a map of six years ago was counted').toBe(false);
    expect(old.passings.flatMap(({ reasons }) => reasons.map(({ code }) => code))).toContain('stale');
  });

  it('is the most that an object can be', async () => {
    const old = await route.analysis({ 'land.osm': osmXml({ objects: straightMap(), date: STALE }) });
    expect(isCalm(old, 'water'), 'an edit after the date of its own file was believed').toBe(false);
  });

  it.each([
    ['no date at all', null],
    ['a date to come', AHEAD],
    ['a date before there was a map', '1970-01-01T00:00:01Z'],
  ])('is unknown with %s: one level down, and said on top', async (_name, date) => {
    const files = { 'land.osm': osmXml({ objects: straightMap({ fuel: HINTED }).map(bare), date }) };
    const analysis = await route.analysis(files);
    expect(analysis.extracts[0]).toMatchObject({ asOf: null, asOfBy: null });
    expect(analysis.cautions.map(({ code }) => code)).toContain('age-unknown');
    expect(analysis.passings.map(({ evidence, counts }) => [evidence, counts])).toEqual([
      ['doubtful', false],
      ['implied', false],
    ]);
    expect([isCalm(analysis, 'fuel'), isCalm(analysis, 'water')]).toEqual([false, false]);
    expect(await route.run(files)).toContain(
      'Map data: land.osm, of unknown date. © OpenStreetMap contributors, ODbL 1.0.',
    );
  });

  it('is unknown where objects are dated to come', async () => {
    const ahead = straightMap().map((object) => ({ ...object, timestamp: AHEAD }));
    const analysis = await route.analysis({ 'land.osm': osmXml({ objects: ahead, date: null }) });
    expect(isCalm(analysis, 'water'), 'an edit of the year 2222 was believed').toBe(false);
  });

  it('is unknown in a pbf without metadata', async () => {
    const analysis = await route.analysis({ 'land.osm.pbf': pbf('') });
    expect(isCalm(analysis, 'water')).toBe(false);
    expect(analysis.extracts[0]?.asOf).toBeNull();
  });

  it('can be vouched for by the name of the file', async () => {
    const files = { 'land.osm': osmXml({ objects: UNDATED, date: null }) };
    const vouched = await route.analysis(files, {
      extracts: [{ file: 'land.osm', asOf: FRESH.slice(0, 10) }],
    });
    expect(vouched.extracts[0]).toMatchObject({ asOf: FRESH.slice(0, 10), asOfBy: 'user' });
    expect([isCalm(vouched, 'fuel'), isCalm(vouched, 'water')]).toEqual([true, true]);
    const old = await route.analysis(files, { extracts: [{ file: 'land.osm', asOf: STALE.slice(0, 10) }] });
    expect(isCalm(old, 'water')).toBe(false);
    const other = await route.analysis(files, { extracts: [{ file: 'sea.osm', asOf: FRESH.slice(0, 10) }] });
    expect(isCalm(other, 'water')).toBe(false);
    expect(other.cautions.map(({ code }) => code)).toContain('extract-not-given');
  });

  it('cannot be vouched newer than the file says', async () => {
    const files = { 'land.osm': osmXml({ objects: UNDATED, date: STALE }) };
    const vouched = await route.analysis(files, {
      extracts: [{ file: 'land.osm', asOf: FRESH.slice(0, 10) }],
    });
    expect(vouched.extracts[0]).toMatchObject({ asOf: STALE, asOfBy: 'file' });
  });

  it('stands on top of a plan as well', { tags: 'slow' }, async () => {
    const text = await route.run({ 'land.osm': osmXml({ objects: straightMap() }) }, {}, { command: 'plan' });
    expect(text.split('\n')[1]).toBe(
      `Map data: land.osm, as of ${FRESH.slice(0, 10)}. © OpenStreetMap contributors, ODbL 1.0.`,
    );
  });

  it('comes with whom to credit, as the file says it', async () => {
    const { extracts } = await route.analysis({ 'land.geojson': geoJson(FRESH) });
    expect(extracts[0]).toMatchObject({ attribution: 'Survey of nobody', licence: null });
  });
});
