import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import type { RawExtract } from '../../../../server/io/osm/extract/raw-extract.ts';
import { describeReal, realPath } from '../../../helpers/real.ts';
import { readFile } from './pbf-files.ts';

const osmiumIsHere = spawnSync('osmium', ['--version']).status === 0;

/** Wanted elements of a type with a tag. */
const having = (extract: RawExtract, type: string, key: string, value: string) =>
  extract.elements.filter(
    (element) =>
      element.type === type && extract.wanted.has(`${type}/${element.id}`) && element.tags?.[key] === value,
  ).length;

/** Counts as SOURCES.md beside the files states them (made with osmium-tool 1.15); null where it does not say. */
const STATED = [
  {
    name: 'extracts/liechtenstein-2013.osm.pbf',
    counts: { nodes: 65_733, ways: 7_121, relations: 113 },
    fuel: { nodes: 15, ways: 1 },
    drinkingWaterNodes: 10,
  },
  {
    name: 'extracts/liechtenstein-2015.osm.pbf',
    counts: { nodes: 142_832, ways: 15_247, relations: 358 },
    fuel: { nodes: 14, ways: 1 },
    drinkingWaterNodes: 14,
  },
  {
    name: 'extracts/monaco-2023.osm.pbf',
    counts: null,
    fuel: { nodes: 3, ways: null },
    drinkingWaterNodes: 21,
  },
];

describeReal('real extracts in .osm.pbf', () => {
  for (const stated of STATED) {
    it(`should hold what is stated of ${stated.name}`, async () => {
      const extract = await readFile(realPath(stated.name));
      if (stated.counts !== null) expect(extract.counts).toEqual(stated.counts);
      expect(having(extract, 'node', 'amenity', 'fuel')).toBe(stated.fuel.nodes);
      if (stated.fuel.ways !== null) expect(having(extract, 'way', 'amenity', 'fuel')).toBe(stated.fuel.ways);
      expect(having(extract, 'node', 'amenity', 'drinking_water')).toBe(stated.drinkingWaterNodes);
      expect(extract.shows).toEqual({ fuel: true, water: true, general: true });
      expect(extract.bounds).not.toBeNull();
      expect(extract.skipped).toEqual([]);
    });

    it(`should give every node of a wanted way of ${stated.name}`, async () => {
      const { elements } = await readFile(realPath(stated.name));
      const nodes = new Set(elements.filter(({ type }) => type === 'node').map(({ id }) => id));
      const missing = elements.flatMap(({ nodes: refs = [] }) => refs.filter((id) => !nodes.has(id)));
      expect(missing).toEqual([]);
    });
  }

  it('should hold the two other objects with drinking water and the spring of 2015', async () => {
    const extract = await readFile(realPath('extracts/liechtenstein-2015.osm.pbf'));
    const others = extract.elements.filter(
      ({ tags = {} }) => tags.drinking_water === 'yes' && tags.amenity !== 'drinking_water',
    );
    expect(others).toHaveLength(2);
    expect(having(extract, 'node', 'natural', 'spring')).toBe(1);
  });

  const peer = osmiumIsHere ? 'osmium is here' : 'OSMIUM IS ABSENT: only the stated counts are compared';
  it(`should give the fuel stations with their tags, times and places as osmium does (${peer})`, async () => {
    for (const { name, fuel } of STATED) {
      const { elements } = await readFile(realPath(name));
      const ours = elements
        .filter(({ type, tags }) => type === 'node' && tags?.amenity === 'fuel')
        .map(({ id, version, timestamp, lon, lat, tags }) => ({ id, version, timestamp, lon, lat, tags }))
        .sort((a, b) => a.id - b.id);
      expect(ours).toHaveLength(fuel.nodes);
      if (osmiumIsHere) expect(ours).toEqual(fuelNodesByOsmium(realPath(name)));
    }
  });
});

/** The fuel nodes of a file in osmium's line format (OPL), taken apart. */
function fuelNodesByOsmium(path: string) {
  const filter = spawnSync('osmium', ['tags-filter', '-R', '-f', 'pbf', '-o', '-', path, 'n/amenity=fuel'], {
    maxBuffer: 1 << 26,
  });
  const opl = spawnSync('osmium', ['cat', '-F', 'pbf', '-f', 'opl', '-'], {
    input: filter.stdout,
    encoding: 'utf8',
  });
  // OPL writes special characters as %hex%.
  const unescaped = (text: string) =>
    text.replace(/%([0-9a-f]+)%/g, (_, hex: string) => String.fromCodePoint(Number.parseInt(hex, 16)));
  return opl.stdout
    .split('\n')
    .filter((line) => line.startsWith('n'))
    .map((line) => {
      const fields = new Map(line.split(' ').map((field) => [field[0], field.slice(1)]));
      const tags = (fields.get('T') ?? '').split(',').map((tag) => tag.split('=').map(unescaped));
      return {
        id: Number(fields.get('n')),
        version: Number(fields.get('v')),
        timestamp: fields.get('t'),
        lon: Number(fields.get('x')),
        lat: Number(fields.get('y')),
        tags: Object.fromEntries(tags),
      };
    })
    .sort((a, b) => a.id - b.id);
}
