import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import {
  FRESH,
  FUEL,
  isCalm,
  type MapObject,
  osmXml,
  overpassJson,
  StraightRoute,
  straightMap,
  WATER,
  withTags,
} from './straight-route.ts';

let route: StraightRoute;
beforeAll(async () => {
  route = await StraightRoute.open();
});
afterAll(() => route.close());

const newer = (object: MapObject): MapObject => ({ ...object, version: 3 });
const bare = ({ version: _version, timestamp: _timestamp, ...object }: MapObject): MapObject => object;
const BASE = osmXml({ objects: straightMap() });
/** A second file that has only the one object, without bounds: it covers nothing. */
const alone = (...objects: MapObject[]) => osmXml({ objects, bounds: null });

const { tags: _fuelTags, ...PLAIN_NODE } = newer(FUEL);

/** What a newer file has of the fuel station that an older one shows. */
const ENDS: [string, string][] = [
  ['deleted', alone({ ...newer(FUEL), visible: false })],
  ['deleted, without its tags', alone({ ...PLAIN_NODE, visible: false })],
  ['its tags dropped', alone(PLAIN_NODE)],
  ['a shop now', alone({ ...PLAIN_NODE, tags: { shop: 'convenience' } })],
  ['no diesel any more', alone(newer(withTags(FUEL, { 'fuel:diesel': 'no' })))],
  ['out of use', alone(newer(withTags(FUEL, { amenity: undefined, 'disused:amenity': 'fuel' })))],
];

describe('versions across files', () => {
  it.each(
    ENDS.flatMap(
      ([name, file]) =>
        [
          [name, 'after', { 'old.osm': BASE, 'new.osm': file }],
          [name, 'before', { 'new.osm': file, 'old.osm': BASE }],
        ] as const,
    ),
  )(
    'the newest wins where the station is %s, its file given %s the older one',
    async (_name, _order, files) => {
      expect(isCalm(await route.analysis(files), 'fuel'), 'fuel is not there, and was counted').toBe(false);
    },
  );

  it('a deletion in an editor counts, whose version is that of the living object', async () => {
    const edit = alone({ ...FUEL, visible: false });
    expect(isCalm(await route.analysis({ 'old.osm': BASE, 'edit.osm': edit }), 'fuel')).toBe(false);
  });

  it('an older file takes nothing away', async () => {
    const older = alone({ ...PLAIN_NODE, version: 1 }, { ...WATER, version: 1, visible: false });
    for (const files of [
      { 'new.osm': BASE, 'old.osm': older },
      { 'old.osm': older, 'new.osm': BASE },
    ]) {
      const analysis = await route.analysis(files);
      expect([isCalm(analysis, 'fuel'), isCalm(analysis, 'water')]).toEqual([true, true]);
    }
  });

  it.each([true, false])(
    'of two readings of which nothing tells the newer the worse is taken (good first: %s)',
    async (goodFirst) => {
      const good = overpassJson({ objects: straightMap().map(bare) });
      const bad = overpassJson({ objects: [bare(withTags(FUEL, { access: 'private' }))] });
      const files = goodFirst ? { 'a.json': good, 'b.json': bad } : { 'b.json': bad, 'a.json': good };
      const analysis = await route.analysis(files);
      expect(isCalm(analysis, 'fuel'), 'a private station was counted').toBe(false);
      expect(analysis.passings[0]?.reasons.map(({ code }) => code)).toContain('tags-differ');
    },
  );

  it.each([true, false])(
    'of two files whose objects tell no age the newer file is taken (good first: %s)',
    async (goodFirst) => {
      const old = overpassJson({ objects: straightMap().map(bare), date: '2026-01-01T00:00:00Z' });
      const closed = overpassJson({ objects: [bare(withTags(FUEL, { access: 'private' }))], date: FRESH });
      const files = goodFirst ? { 'a.json': old, 'b.json': closed } : { 'b.json': closed, 'a.json': old };
      const analysis = await route.analysis(files);
      expect(isCalm(analysis, 'fuel')).toBe(false);
      expect(analysis.passings[0]?.reasons.map(({ code }) => code)).not.toContain('tags-differ');
    },
  );
});
