import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodePbfElements, type PbfElement, type PbfWriteOptions } from '../../../../fixtures/pbf-writer.ts';
import { toContract } from '../../../../server/app/to-contract.ts';
import { wantedFor } from '../../../../server/core/supply/tags/wanted.ts';
import type { RawElement } from '../../../../server/io/osm/extract/raw-element.ts';
import { OTHER_KEYS } from '../../../../server/io/osm/extract/whole-file/content-census.ts';
import { inOrder, readBytes } from './pbf-files.ts';

const degrees = (most: number) =>
  fc.integer({ min: -most * 1e7, max: most * 1e7 }).map((units) => units / 1e7);

const tags = fc.oneof(
  fc.constant({}),
  fc.dictionary(
    fc.constantFrom('name', 'highway', 'building', 'amenity', '__proto__', 'ü', 'disused:amenity'),
    fc.string({ unit: 'grapheme', maxLength: 6 }),
  ),
  fc.constantFrom(
    { amenity: 'fuel', name: 'Ölhof' },
    { amenity: 'drinking_water' },
    { man_made: 'water_tap', drinking_water: 'yes' },
  ),
);

const edit = fc.record(
  {
    version: fc.integer({ min: 1, max: 2 ** 31 - 1 }),
    timestamp: fc
      .integer({ min: 1, max: 2 ** 33 })
      .map((s) => new Date(s * 1000).toISOString().replace('.000Z', 'Z')),
  },
  { requiredKeys: [] },
);

const nodeId = fc.oneof(fc.integer({ min: 1, max: 60 }), fc.integer({ min: -(2 ** 40), max: 2 ** 40 }));
const uniqueBy = { selector: (element: { id: number }) => element.id };

/** A small world whose ways and relations refer to its nodes and ways, and sometimes to what is not there. */
const world = fc
  .uniqueArray(fc.record({ id: nodeId, lon: degrees(180), lat: degrees(90), tags, edit }), {
    ...uniqueBy,
    minLength: 1,
    maxLength: 40,
  })
  .chain((nodes) => {
    const ref = fc.oneof(fc.constantFrom(...nodes.map((node) => node.id)), nodeId);
    const way = fc.record({ id: nodeId, nodes: fc.array(ref, { maxLength: 8 }), tags, edit });
    const member = fc.record({
      type: fc.constantFrom('node' as const, 'way' as const, 'relation' as const),
      ref,
      role: fc.constantFrom('', 'outer', 'inner'),
    });
    return fc.record({
      nodes: fc.constant(nodes),
      ways: fc.uniqueArray(way, { ...uniqueBy, maxLength: 15 }),
      relations: fc.uniqueArray(
        fc.record({ id: nodeId, members: fc.array(member, { maxLength: 6 }), tags, edit }),
        { ...uniqueBy, maxLength: 8 },
      ),
    });
  })
  .map(({ nodes, ways, relations }): PbfElement[] => [
    ...nodes.map(({ edit, ...node }) => ({ type: 'node' as const, ...node, ...edit })),
    ...ways.map(({ edit, ...way }) => ({ type: 'way' as const, ...way, ...edit })),
    ...relations.map(({ edit, ...relation }) => ({ type: 'relation' as const, ...relation, ...edit })),
  ]);

const options: fc.Arbitrary<PbfWriteOptions> = fc.record({
  dense: fc.boolean(),
  compression: fc.constantFrom('zlib' as const, 'raw' as const),
  blockSize: fc.integer({ min: 1, max: 50 }),
  granularity: fc.constantFrom(1, 100),
  offset: fc.constantFrom([0, 0] as const, [-4_000_000_000, 7_000_000_000] as const),
});

/** As the reader gives it: wanted with all, lent without tags and time. */
const plain = ({ tags: all, timestamp, ...element }: PbfElement, withTags: boolean): RawElement => {
  const kept = withTags && all !== undefined && Object.keys(all).length > 0 ? { tags: { ...all } } : {};
  const time = withTags && timestamp !== undefined ? { timestamp } : {};
  return { ...(element as Omit<RawElement, 'tags'>), ...kept, ...time } as RawElement;
};

/** What the reader must give, worked out by following the references of the whole world in memory. */
function expected(elements: readonly PbfElement[]): { elements: RawElement[]; wanted: string[] } {
  const byId = new Map(elements.map((element) => [`${element.type}/${element.id}`, element]));
  const kept = new Map<string, RawElement>();
  const lend = (id: string) => {
    const element = byId.get(id);
    if (element === undefined) return;
    if (!kept.has(id)) kept.set(id, plain(element, false));
    if (element.type === 'way') for (const node of element.nodes) lend(`node/${node}`);
  };
  const wanted = elements.filter(
    (element) =>
      wantedFor(element.tags ?? {}).length > 0 &&
      (element.type !== 'relation' || element.members.some((member) => member.type !== 'relation')),
  );
  for (const element of wanted) kept.set(`${element.type}/${element.id}`, plain(element, true));
  for (const element of wanted) {
    if (element.type === 'way') for (const node of element.nodes) lend(`node/${node}`);
    if (element.type !== 'relation') continue;
    for (const member of element.members)
      if (member.type !== 'relation') lend(`${member.type}/${member.ref}`);
  }
  return {
    elements: inOrder([...kept.values()]),
    wanted: wanted.map((element) => `${element.type}/${element.id}`).sort(),
  };
}

/** A general map holds at least 5 roads, 2 places and 5 of what supplies nothing; a road is no point. */
function isGeneral(elements: readonly PbfElement[]): boolean {
  const others = elements.filter(({ tags = {} }) => wantedFor(tags).length === 0);
  const least = (count: number, isOne: (element: PbfElement, tags: Record<string, string>) => boolean) =>
    others.filter((element) => isOne(element, element.tags ?? {})).length >= count;
  return (
    least(5, ({ type }, tags) => type !== 'node' && 'highway' in tags) &&
    least(2, (_element, tags) => 'place' in tags) &&
    least(5, (_element, tags) => OTHER_KEYS.some((key) => key in tags))
  );
}

describe('a file written and read back', () => {
  it('should give exactly the wanted elements and what they refer to, whatever the form and order', {
    tags: 'slow',
  }, async () => {
    await fc.assert(
      fc.asyncProperty(
        world.chain((elements) =>
          fc.tuple(fc.constant(elements), fc.shuffledSubarray(elements, { minLength: elements.length })),
        ),
        options,
        async ([sorted, shuffled], form) => {
          const answer = expected(sorted);
          for (const elements of [sorted, shuffled]) {
            const read = await readBytes(encodePbfElements([-10, -20, 30, 40], elements, form));
            expect(inOrder(read.elements)).toEqual(answer.elements);
            expect([...read.wanted].sort()).toEqual(answer.wanted);
            expect(read.bounds).toEqual([-10, -20, 30, 40]);
            expect(read.hull).toBeNull();
            const count = (type: string) => elements.filter((element) => element.type === type).length;
            expect(read.counts).toEqual({
              nodes: count('node'),
              ways: count('way'),
              relations: count('relation'),
            });
            const supply = (commodity: 'fuel' | 'water') =>
              elements.some((element) => wantedFor(element.tags ?? {}).includes(commodity));
            expect(read.shows).toMatchObject({ general: isGeneral(elements) });
            expect(read.shows).toMatchObject({ fuel: supply('fuel'), water: supply('water') });
          }
        },
      ),
      { numRuns: 150, seed: 7 },
    );
  });

  it('should give the same when read by threads', { tags: 'slow' }, async () => {
    await fc.assert(
      fc.asyncProperty(world, options, async (elements, form) => {
        const bytes = encodePbfElements(null, elements, { ...form, blockSize: 3 });
        const box = { ground: [-90, -45, 90, 45] as [number, number, number, number] };
        expect(await readBytes(bytes, box, 0)).toEqual(await readBytes(bytes, box));
      }),
      { numRuns: 4, seed: 11 },
    );
  });
});

describe('positions stored in ways', () => {
  it('should stand in for nodes that the file leaves out', async () => {
    const way: PbfElement = {
      type: 'way',
      id: 5,
      nodes: [1, 2, 1],
      locations: [
        [10.5, 20.25],
        [10.75, -20.5],
        [10.5, 20.25],
      ],
      tags: { amenity: 'fuel' },
    };
    const read = await readBytes(encodePbfElements(null, [way]));
    expect(read.elements).toEqual([
      { type: 'node', id: 1, lat: 20.25, lon: 10.5 },
      { type: 'node', id: 2, lat: -20.5, lon: 10.75 },
      { type: 'way', id: 5, nodes: [1, 2, 1], tags: { amenity: 'fuel' } },
    ]);
  });
});

describe('an object that occurs twice', () => {
  const station = (version: number, lat: number): PbfElement => ({
    type: 'node',
    id: 1,
    lon: 10,
    lat,
    version,
    tags: { amenity: 'fuel' },
  });

  it('should be read in its newest version, whichever comes first', async () => {
    for (const order of [
      [station(2, 20), station(3, 21)],
      [station(3, 21), station(2, 20)],
    ]) {
      const read = await readBytes(encodePbfElements(null, order));
      expect(read.elements).toEqual([
        { type: 'node', id: 1, lon: 10, lat: 21, version: 3, tags: { amenity: 'fuel' } },
      ]);
    }
  });

  it('should be skipped with a reason when its newest version is no supply', async () => {
    const closed: PbfElement = { type: 'node', id: 1, lon: 10, lat: 20, version: 4 };
    const read = await readBytes(encodePbfElements(null, [closed, station(3, 20)]));
    expect(read.elements).toEqual([]);
    expect(toContract(read.skipped)).toEqual([
      { id: 'node/1', reason: 'a newer version in the same file is deleted or no supply any more' },
    ]);
  });
});

describe('elements that cannot be used', () => {
  it('should be skipped with a reason, not dropped in silence', async () => {
    const read = await readBytes(
      encodePbfElements(null, [
        { type: 'node', id: 1, lon: 10, lat: 20, visible: false, tags: { amenity: 'fuel' } },
        { type: 'node', id: 2, lon: 200, lat: 20, tags: { amenity: 'fuel' } },
        {
          type: 'relation',
          id: 3,
          members: [{ type: 'relation', ref: 9, role: '' }],
          tags: { amenity: 'fuel' },
        },
      ]),
    );
    expect(read.elements).toEqual([]);
    expect(toContract(read.skipped)).toEqual([
      { id: 'node/1', reason: 'marked as deleted in the file' },
      { id: 'node/2', reason: 'position off the Earth (200, 20)' },
      { id: 'relation/3', reason: 'a relation without nodes or ways among its members' },
    ]);
  });
});
