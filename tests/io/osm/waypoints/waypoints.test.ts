import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toContract } from '../../../../server/app/to-contract.ts';
import type { Waypoint } from '../../../../server/core/input/sources.ts';
import { commoditiesOf } from '../../../../server/io/osm/extract/wanted-tags.ts';
import { parseTagText } from '../../../../server/io/osm/waypoints/waypoint-tags.ts';
import { SUPPLY_WORDS } from '../../../../server/io/osm/waypoints/waypoint-words.ts';
import { isCamp, waypointFeatures } from '../../../../server/io/osm/waypoints/waypoints.ts';
import { extractAt, scratchFolder } from '../scratch.ts';

const put = scratchFolder();
const waypoint = (more: Partial<Waypoint>): Waypoint => ({
  lon: 85,
  lat: -35,
  ele: null,
  name: null,
  symbol: null,
  type: null,
  comment: null,
  description: null,
  time: null,
  ...more,
});
const read = (...each: Partial<Waypoint>[]) => waypointFeatures(each.map(waypoint), 'notes.gpx');
const tagsOf = (more: Partial<Waypoint>) => read(more).features[0]?.tags;

describe('tags written into a waypoint', () => {
  it('are read with lines folded anywhere, and the object’s id is no tag', () => {
    expect(parseTagText('amenity=fuel; fuel:diesel=yes;\n    brand=Aller\n  and Sons; id=node/123')).toEqual({
      tags: { amenity: 'fuel', 'fuel:diesel': 'yes', brand: 'Aller and Sons' },
      id: 'node/123',
    });
  });

  it('keep a semicolon or an equals sign inside a value', () => {
    const text = 'amenity=fuel; opening_hours=Mo-Fr 08:00-12:00; Sa 09:00-11:00; website=http://x.test/?a=1';
    expect(parseTagText(text)?.tags).toEqual({
      amenity: 'fuel',
      opening_hours: 'Mo-Fr 08:00-12:00; Sa 09:00-11:00',
      website: 'http://x.test/?a=1',
    });
  });

  it.each(['a fine place', 'see x = y', '', 'Good water; drinking=maybe'])(
    '"%s" is no list of tags',
    (text) => {
      expect(parseTagText(text)).toBeNull();
    },
  );

  it('come back as they were written', () => {
    const key = fc.stringMatching(/^[a-z][a-z_]{0,8}(:[a-z]{1,5})?$/).filter((each) => each !== 'id');
    const value = fc.stringMatching(/^[\p{L}\p{N}=.]([\p{L}\p{N} =.]{0,8}[\p{L}\p{N}=.])?$/u);
    const tags = fc.dictionary(key, value, { minKeys: 1 }).map((each) => ({ ...each }));
    fc.assert(
      fc.property(tags, fc.boolean(), (each, folded) => {
        const pieces = Object.entries(each).map(([k, v]) => `${k}=${v}`);
        const parsed = parseTagText(pieces.join(folded ? ';\n   ' : '; '));
        const tidy = Object.fromEntries(Object.entries(each).map(([k, v]) => [k, v.replace(/\s+/g, ' ')]));
        expect(parsed).toEqual({ tags: tidy, id: null });
      }),
    );
  });
});

describe('a waypoint as a supply', () => {
  it('is the OSM object that it names', () => {
    const description = 'amenity=drinking_water; id=way/9';
    expect(read({ name: 'Tap', description, time: '2020-01-01T00:00:00Z' }).features).toEqual([
      {
        id: 'way/9',
        geometry: { type: 'Point', coordinates: [85, -35] },
        tags: { amenity: 'drinking_water' },
        editedAt: null,
      },
    ]);
  });

  it('is an own point, dated by the note, where it names none', () => {
    const time = '2024-05-06T07:08:09Z';
    expect(read({ name: 'Jo’s bowser', symbol: 'Gas Station', time }).features).toEqual([
      {
        id: 'own/jo-s-bowser',
        geometry: { type: 'Point', coordinates: [85, -35] },
        tags: { amenity: 'fuel', name: 'Jo’s bowser' },
        editedAt: time,
      },
    ]);
  });

  it.each([
    [{ symbol: 'Drinking Water' }, { amenity: 'drinking_water' }],
    [{ type: 'fuel' }, { amenity: 'fuel' }],
    [{ symbol: 'Petrol' }, { amenity: 'fuel' }],
    [{ name: 'Diesel at the mission' }, { amenity: 'fuel', 'fuel:diesel': 'yes' }],
    [{ name: 'Eau potable' }, { amenity: 'drinking_water' }],
    [{ name: 'Old well' }, { man_made: 'water_well' }],
    [{ symbol: 'Water Source' }, { natural: 'spring' }],
    [{ symbol: 'Water' }, { man_made: 'water_tap' }],
    [{ symbol: 'Flag', name: 'Fuel 3' }, { amenity: 'fuel' }],
    [{ symbol: 'Gas Station', name: 'Dry Creek Roadhouse' }, { amenity: 'fuel' }],
    [{ symbol: 'Gas Station', name: 'Broken Hill' }, { amenity: 'fuel' }],
  ])('%j says the same as %j', (said, tags) => {
    expect(tagsOf(said)).toEqual('name' in said ? { ...tags, name: said.name } : tags);
  });

  it.each([
    { name: 'Black Water Camp' },
    { name: 'Waterfall' },
    { name: 'Wellington' },
    { symbol: 'Flag' },
    {},
  ])('%j says neither fuel nor water', (said) => {
    expect(read(said)).toEqual({ features: [], skipped: [] });
  });

  it.each([
    { name: 'No fuel' },
    { symbol: 'Drinking Water', description: 'closed in winter' },
    { name: 'Well (dry)' },
    { symbol: 'Gas Station', comment: 'out of order' },
    { symbol: 'Gas Station', name: 'Karalundi - closed' },
    { symbol: 'Drinking Water', description: 'agua no potable' },
    { symbol: 'Drinking Water', description: 'Su yok' },
    { symbol: 'Drinking Water', comment: 'الماء مالح' },
    { name: 'Pozo seco', symbol: 'Water' },
  ])('%j is skipped, for it takes it back', (said) => {
    const { features, skipped } = read(said);
    expect([features.length, skipped.length]).toEqual([0, 1]);
    expect(toContract(skipped)[0]?.reason).toMatch(/notes\.gpx/);
  });

  it('gets an id of its own among others of its name', () => {
    const { features } = read({ name: 'Fuel' }, { name: 'Fuel' }, { symbol: 'Fuel' });
    expect(features.map(({ id }) => id)).toEqual(['own/fuel', 'own/fuel-2', 'own/fuel-3']);
  });

  it('every row of words stands for tags that concern supply', () => {
    for (const { tags, words } of SUPPLY_WORDS) {
      expect(commoditiesOf(tags), words[0]).not.toEqual([]);
      for (const word of words) expect(tagsOf({ symbol: word }), word).toBeDefined();
    }
  });
});

describe('a camp', () => {
  it.each([
    { symbol: 'Campground' },
    { type: 'camp' },
    { name: 'Bush camp 3' },
    { name: 'Night 2' },
    { name: 'Bivouac' },
  ])('%j is one', (said) => {
    expect(isCamp(waypoint(said))).toBe(true);
  });

  it.each([{ name: 'Campbell' }, { symbol: 'Gas Station' }, {}])('%j is none', (said) => {
    expect(isCamp(waypoint(said))).toBe(false);
  });
});

describe('a GPX file as an extract', () => {
  const gpx = (inside: string) =>
    `<?xml version="1.0"?><gpx version="1.1" creator="x" xmlns="http://www.topografix.com/GPX/1/1">${inside}</gpx>`;

  it('gives the waypoints that say fuel or water, and covers nothing', async () => {
    const path = put(
      'notes.osm',
      gpx('<wpt lat="1" lon="2"><name>Fuel</name></wpt><wpt lat="1" lon="3"><name>View</name></wpt>'),
    );
    const extract = await extractAt(path, 'notes.osm');
    expect(extract).toMatchObject({
      format: 'gpx-waypoints',
      features: [{ id: 'own/fuel' }],
      bounds: null,
      hull: null,
      shows: { fuel: true, water: false, general: false },
    });
  });

  it('says so when no waypoint is a supply', async () => {
    const extract = await extractAt(put('view.gpx', gpx('<wpt lat="1" lon="3"><name>View</name></wpt>')));
    expect(extract.cautions.map(({ code }) => code)).toContain('no-supply-in-waypoints');
  });
});
