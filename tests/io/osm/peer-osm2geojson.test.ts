import { existsSync, readdirSync, readFileSync } from 'node:fs';
import type { Feature, Geometry, Position } from 'geojson';
import { expect, it } from 'vitest';
import type { RawElement } from '../../../server/io/osm/extract/raw-element.ts';
import { overpassElement } from '../../../server/io/osm/json/overpass-element.ts';
import { convert } from '../../../server/io/osm/unite/convert.ts';
import { parseOsmXml } from '../../../server/io/osm/xml/osm-xml-parser.ts';
import { describeReal, realFolderThere, realPath } from '../../helpers/real.ts';

/** aspectumapp/osm2geojson: Overpass JSON and OSM XML with the GeoJSON that its authors expect. */
const FOLDER = realPath('peers/osm2geojson/');
const cases = realFolderThere
  ? readdirSync(FOLDER).filter(
      (name) => /\.(json|osm)$/.test(name) && existsSync(FOLDER + name.replace(/\.\w+$/, '.geojson')),
    )
  : [];

/** Features that differ from the expected, by file without ending and id: ours, and why. */
const EXPLAINED: Readonly<Record<string, { ours: string; why: string }>> = {
  'issue-4 relation/7390177': {
    ours: 'Point',
    why: 'a bus line, told by the middle of its stops; the peer joins up all its ways',
  },
  'map relation/1802915': {
    ours: 'Point',
    why: 'a street with its houses, told by the middle of those in the file; the peer joins up all its members',
  },
  'relation relation/1': {
    ours: 'skipped',
    why: 'the relation has no tag but its type, so the area belongs to its outer way; and 200 km have no one place',
  },
};

async function elementsOf(name: string): Promise<RawElement[]> {
  const text = readFileSync(FOLDER + name, 'utf8');
  const elements: RawElement[] = [];
  if (name.endsWith('.json')) {
    const document = JSON.parse(text) as { elements?: unknown[] };
    for (const [i, raw] of (document.elements ?? []).entries()) {
      const parsed = overpassElement(raw, `/elements/${i}`, name);
      if (parsed !== null) elements.push(parsed.element);
    }
    return elements;
  }
  const pieces = (async function* () {
    yield Buffer.from(text);
  })();
  await parseOsmXml(pieces, name, { element: ({ element }) => elements.push(element) });
  return elements;
}

/** All positions of a geometry, each once, in sorted order: ring start, direction and "Multi" do not matter. */
function placesOf(geometry: Geometry): string[] {
  const places = new Set<string>();
  const walk = (part: unknown): void => {
    if (!Array.isArray(part)) return;
    if (typeof part[0] === 'number') places.add((part as Position).slice(0, 2).join(' '));
    else part.forEach(walk);
  };
  if ('coordinates' in geometry) walk(geometry.coordinates);
  return [...places].sort();
}

const plainType = (geometry: Geometry): string => geometry.type.replace('Multi', '');

describeReal('osm2geojson', () => {
  it('has the cases that were looked at', () => {
    expect(cases).toHaveLength(20);
  });

  it.each(cases)('%s gives the expected features, or the difference is explained', async (name) => {
    const expectedText = readFileSync(FOLDER + name.replace(/\.\w+$/, '.geojson'), 'utf8');
    const expected = (JSON.parse(expectedText) as { features: Feature[] }).features;
    const idOf = (feature: Feature) => `${feature.properties?.type}/${feature.properties?.id}`;
    const wanted = new Set(expected.map(idOf));
    const { features, skipped } = convert(await elementsOf(name), wanted);
    expect(features.length + skipped.length).toBe(wanted.size);
    const differing: string[] = [];
    for (const feature of expected) {
      const id = idOf(feature);
      const ours = features.find((candidate) => candidate.id === id);
      const explained = EXPLAINED[`${name.replace(/\.\w+$/, '')} ${id}`];
      if (explained !== undefined) {
        expect(ours?.geometry.type ?? 'skipped').toBe(explained.ours);
        differing.push(id);
        continue;
      }
      expect(ours && plainType(ours.geometry)).toBe(plainType(feature.geometry));
      expect(ours && placesOf(ours.geometry)).toEqual(placesOf(feature.geometry));
      expect(ours?.tags).toEqual(feature.properties?.tags ?? {});
    }
    expect(differing.length).toBeLessThan(2);
  });
});
