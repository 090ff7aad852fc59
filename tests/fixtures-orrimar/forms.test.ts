import { beforeAll, describe, expect, it } from 'vitest';
import type { RawElement } from '../../server/io/osm/extract/raw-element.ts';
import type { RawExtract } from '../../server/io/osm/extract/raw-extract.ts';
import { groundFeatures } from '../../server/io/osm/keep/ground-features.ts';
import { readExtract } from '../../server/io/osm/read-extract.ts';
import { type DemoElement, demoElements, demoPath } from './demo-files.ts';

const FORMS = {
  'orrimar.osm': 'osm-xml',
  'orrimar.osm.pbf': 'pbf',
  'orrimar.overpass.json': 'overpass-json',
} as const;
const NAMES = Object.keys(FORMS) as (keyof typeof FORMS)[];

const extracts = new Map<string, RawExtract>();
beforeAll(async () => {
  for (const name of NAMES) {
    const read = await readExtract(demoPath(name), { source: name, ground: [80, -40, 100, -30] });
    if (!read.ok) throw new Error(read.problem.came);
    extracts.set(name, read.value);
  }
});
const extractOf = (name: string): RawExtract => {
  const extract = extracts.get(name);
  if (extract === undefined) throw new Error(`${name} was not read`);
  return extract;
};

const RANK = { node: 0, way: 1, relation: 2 };
/** Elements in one order, with what every form holds: an empty set of tags and none are the same. */
function comparable(elements: readonly (RawElement | DemoElement)[]) {
  return elements
    .map(({ type, id, version, timestamp, lat, lon, nodes, members, tags }) => ({
      type,
      id,
      version,
      timestamp,
      lat,
      lon,
      nodes,
      members: members?.map(({ type: memberType, ref, role }) => ({ type: memberType, ref, role })),
      tags: tags ?? {},
    }))
    .sort((a, b) => RANK[a.type] - RANK[b.type] || a.id - b.id);
}
const untimed = (elements: readonly (RawElement | DemoElement)[]) =>
  comparable(elements).map(({ version, timestamp, ...rest }) => rest);

/** The objects that README names as supplies, those beside the route as well. */
const SUPPLIES = [
  ...[1, 2, 3, 4, 6, 7, 8, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30]
    .concat([31, 32])
    .map((id) => `node/${id}`),
  'way/1',
  'way/2',
  'relation/1',
];

describe.each(NAMES)('%s as the program reads it', (name) => {
  it('is known by its content', () => {
    expect(extractOf(name).format).toBe(FORMS[name]);
  });

  it('holds the supplies of the README and no others', () => {
    expect([...extractOf(name).wanted].sort()).toEqual([...SUPPLIES].sort());
  });

  it('gives them as they were generated: place, tags, version, time', () => {
    const { wanted, elements } = extractOf(name);
    const isWanted = ({ type, id }: { type: string; id: number }) => wanted.has(`${type}/${id}`);
    const generated = comparable(demoElements().filter(isWanted));
    const read = comparable(elements.filter(isWanted));
    expect(read).toEqual(generated);
  });

  it('gives what lends them geometry', () => {
    const there = new Map(
      extractOf(name).elements.map((element) => [`${element.type}/${element.id}`, element]),
    );
    const needed = ['way/3', 'way/4'];
    for (const id of ['way/1', 'way/2', 'way/3', 'way/4']) {
      for (const node of there.get(id)?.nodes ?? []) needed.push(`node/${node}`);
    }
    expect(needed.length).toBeGreaterThan(20);
    const lent = needed.map((key) => there.get(key)).filter((element) => element !== undefined);
    expect(lent.length).toBe(needed.length);
    const wanted = new Set(needed);
    const generated = demoElements().filter(({ type, id }) => wanted.has(`${type}/${id}`));
    const unique = [...new Map(lent.map((element) => [`${element.type}/${element.id}`, element])).values()];
    expect(untimed(unique).map(({ tags, ...rest }) => rest)).toEqual(
      untimed(generated).map(({ tags, ...rest }) => rest),
    );
  });

  it('declares the same bounds, is a general map of both commodities, and leaves nothing out', () => {
    const { bounds, hull, shows, skipped, cautions, counts } = extractOf(name);
    expect(bounds).toEqual([84, -38, 94.2, -34.35]);
    expect(hull).toBeNull();
    expect(shows).toEqual({ fuel: true, water: true, general: true });
    expect(skipped).toEqual([]);
    expect(cautions).toEqual([]);
    const count = (wanted: string) => demoElements().filter(({ type }) => type === wanted).length;
    expect(counts).toEqual({ nodes: count('node'), ways: count('way'), relations: count('relation') });
  });

  it('gives the same ground: roads, places and coast', () => {
    const ground = (extract: RawExtract) =>
      groundFeatures(extract.ground)
        .map((feature) => JSON.stringify([feature.properties, feature.geometry]))
        .sort();
    const first = ground(extractOf('orrimar.osm'));
    for (const what of ['road', 'track', 'place', 'coast']) {
      expect(
        first.some((feature) => feature.includes(`"what":"${what}"`)),
        what,
      ).toBe(true);
    }
    expect(ground(extractOf(name))).toEqual(first);
  });
});
