import { readFileSync } from 'node:fs';
import { beforeAll, expect, it } from 'vitest';
import type { Supplies } from '../../../server/core/input/sources.ts';
import type { RawExtract } from '../../../server/io/osm/extract/raw-extract.ts';
import { groundFeatures } from '../../../server/io/osm/keep/ground-features.ts';
import { unite } from '../../../server/io/osm/unite/unite.ts';
import { describeReal, describeSlowReal, realPath } from '../../helpers/real.ts';
import { extractAt } from './scratch.ts';

const withTag = (extract: RawExtract, key: string, value: string): RawExtract['elements'] =>
  extract.elements.filter(
    (element) => element.tags?.[key] === value && extract.wanted.has(`${element.type}/${element.id}`),
  );
const typesOf = (elements: RawExtract['elements']) => {
  const count = (type: string) => elements.filter((element) => element.type === type).length;
  return { node: count('node'), way: count('way'), relation: count('relation') };
};
const sorted = (supplies: Supplies) => supplies.features.toSorted((a, b) => (a.id < b.id ? -1 : 1));

/** What the features are, whichever file they came from. */
const objects = (supplies: Supplies) =>
  sorted(supplies).map(({ source: _of, seenIn: _in, ...feature }) => feature);

// Counts are those of SOURCES.md beside the data, made with osmium-tool 1.15.
describeSlowReal('Liechtenstein 2013, bzip2 XML and pbf', () => {
  const BOX: [number, number, number, number] = [9.4, 47, 9.7, 47.3];
  let xml: RawExtract;
  let pbf: RawExtract;
  beforeAll(async () => {
    xml = await extractAt(realPath('extracts/liechtenstein-2013.osm.bz2'), 'xml', BOX);
    pbf = await extractAt(realPath('extracts/liechtenstein-2013.osm.pbf'), 'pbf', BOX);
  });

  it('the XML holds what osmium counted', () => {
    expect(xml.counts).toEqual({ nodes: 65_733, ways: 7_121, relations: 113 });
    expect(typesOf(withTag(xml, 'amenity', 'fuel'))).toEqual({ node: 15, way: 1, relation: 0 });
    expect(typesOf(withTag(xml, 'amenity', 'drinking_water'))).toEqual({ node: 10, way: 0, relation: 0 });
    expect(xml.bounds).toEqual([9.471078, 47.04774, 9.636217, 47.27128]);
    expect(xml.shows).toEqual({ fuel: true, water: true, general: true });
  });

  it('both give the same features, cover and skipped', () => {
    const [fromXml, fromPbf] = [unite([xml], [], []), unite([pbf], [], [])];
    expect(fromXml.features.length).toBe(xml.wanted.size);
    expect(objects(fromPbf)).toEqual(objects(fromXml));
    expect(fromPbf.cover.map(({ commodity, rings }) => [commodity, rings])).toEqual(
      fromXml.cover.map(({ commodity, rings }) => [commodity, rings]),
    );
    expect(fromPbf.skipped).toEqual(fromXml.skipped);
  });

  it('united they give every object once', () => {
    expect(objects(unite([xml, pbf], [], []))).toEqual(objects(unite([xml], [], [])));
  });

  it('both give the same ground', () => {
    const lines = (extract: RawExtract) =>
      groundFeatures(extract.ground)
        .map((feature) => JSON.stringify(feature))
        .sort();
    expect(lines(xml).length).toBeGreaterThan(900);
    expect(lines(pbf)).toEqual(lines(xml));
  });
});

describeReal('southern Norway 2024, GeoJSON', () => {
  it('holds 622 drinking-water points between 57.96 and 63.70 N', async () => {
    const extract = await extractAt(realPath('extracts/norway-south-drinking-water-2024.geojson'));
    const { features, cover, skipped } = unite([extract], [], []);
    expect([features.length, skipped]).toEqual([622, []]);
    const lats = features.map(({ geometry }) =>
      geometry.type === 'Point' ? geometry.coordinates[1]! : Number.NaN,
    );
    expect([Math.min(...lats).toFixed(2), Math.max(...lats).toFixed(2)]).toEqual(['57.96', '63.70']);
    expect(cover.map(({ commodity, guessed }) => [commodity, guessed])).toEqual([['water', true]]);
  });
});

describeReal('Switzerland 2026, Overpass JSON and waypoints', () => {
  let overpass: Supplies;
  let waypoints: Supplies;
  beforeAll(async () => {
    overpass = unite([await extractAt(realPath('extracts/switzerland-fuel-2026.overpass.json'))], [], []);
    waypoints = unite([await extractAt(realPath('extracts/switzerland-fuel-2026.waypoints.gpx'))], [], []);
  });

  it('both hold 3,768 points, the same objects at the same places', () => {
    expect([overpass.features.length, overpass.skipped, waypoints.skipped]).toEqual([3_768, [], []]);
    const places = (supplies: Supplies) => sorted(supplies).map(({ id, geometry }) => ({ id, geometry }));
    expect(places(waypoints)).toEqual(places(overpass));
  });

  it('with the same tags, but for spaces at the end of two values', () => {
    const tidy = (supplies: Supplies) =>
      sorted(supplies).map(({ id, tags }) => ({
        id,
        tags: Object.fromEntries(Object.entries(tags).map(([key, value]) => [key, value.trim()])),
      }));
    expect(tidy(waypoints)).toEqual(tidy(overpass));
  });

  it('the Overpass file covers fuel by the hull of its objects, the waypoints nothing', () => {
    expect(overpass.cover.map(({ commodity, guessed }) => [commodity, guessed])).toEqual([['fuel', true]]);
    expect(overpass.cautions.map(({ code }) => code)).toEqual([]);
    expect(waypoints.cover).toEqual([]);
    expect(waypoints.cautions.map(({ code }) => code)).toContain('cover-none');
  });
});

describeReal('an extract of an editor, with several kinds of members', () => {
  it('is read whole', async () => {
    const path = realPath('peers/osm2geojson/issue-54-staffordshire.osm');
    const text = readFileSync(path, 'utf8');
    const count = (name: string) => text.match(new RegExp(`<${name} [^>]*id=`, 'g'))?.length ?? 0;
    const { counts } = await extractAt(path);
    expect(counts).toEqual({ nodes: count('node'), ways: count('way'), relations: count('relation') });
  });
});
