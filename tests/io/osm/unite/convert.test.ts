import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toContract } from '../../../../server/app/to-contract.ts';
import { keyOf } from '../../../../server/io/osm/extract/element-key.ts';
import type { OsmType, RawElement } from '../../../../server/io/osm/extract/raw-element.ts';
import { convert } from '../../../../server/io/osm/unite/convert.ts';
import { anyWorld } from '../worlds.ts';

const FUEL = { amenity: 'fuel' };
const node = (id: number, lon: number, lat: number, tags?: Record<string, string>): RawElement => ({
  type: 'node',
  id,
  lon,
  lat,
  ...(tags !== undefined && { tags }),
});
const way = (id: number, nodes: number[], tags?: Record<string, string>): RawElement => ({
  type: 'way',
  id,
  nodes,
  ...(tags !== undefined && { tags }),
});
type Member = NonNullable<RawElement['members']>[number];
const relation = (
  id: number,
  members: [OsmType, number, string?][],
  tags: Record<string, string>,
): RawElement => ({
  type: 'relation',
  id,
  members: members.map(([type, ref, role = '']): Member => ({ type, ref, role })),
  tags,
});
const SQUARE = [node(1, 0, 0), node(2, 0.001, 0), node(3, 0.001, 0.001), node(4, 0, 0.001)];

/** Converts with all tagged elements wanted; gives "id type" for features, "id: reason" for the skipped. */
function outcome(elements: RawElement[]) {
  const wanted = new Set(elements.filter(({ tags }) => tags !== undefined).map(keyOf));
  const { features, skipped, cautions } = convert(elements, wanted);
  return {
    features: features.map(({ id, geometry }) => `${id} ${geometry.type}`),
    skipped: toContract(skipped).map(({ id, reason }) => `${id}: ${reason}`),
    cautions: cautions.map(({ code }) => code),
    positions: features.map(({ geometry }) => ('coordinates' in geometry ? geometry.coordinates : null)),
  };
}

const MULTIPOLYGON = { type: 'multipolygon', ...FUEL };
const SITE = { type: 'site', ...FUEL };

describe('an element becomes', () => {
  it('a point, a line or an area as it is mapped, with its own tags and time', () => {
    const elements = [...SQUARE, node(9, 5, 6, FUEL), way(10, [1, 2, 3, 4, 1], FUEL), way(11, [1, 2], FUEL)];
    expect(outcome(elements)).toMatchObject({
      features: ['node/9 Point', 'way/10 Polygon', 'way/11 LineString'],
      skipped: [],
      cautions: [],
    });
    const timed = { ...node(9, 5, 6, FUEL), timestamp: '2024-01-01T00:00:00Z' };
    expect(convert([timed], new Set(['node/9'])).features).toEqual([
      {
        id: 'node/9',
        geometry: { type: 'Point', coordinates: [5, 6] },
        tags: FUEL,
        editedAt: '2024-01-01T00:00:00Z',
      },
    ]);
  });

  it('a point for a node that is also part of a way', () => {
    const elements = [node(1, 0, 0, FUEL), node(2, 1, 1), way(10, [1, 2], FUEL)];
    expect(outcome(elements).features).toEqual(['node/1 Point', 'way/10 LineString']);
  });

  it('an area for a multipolygon, also where its members have no role', () => {
    const elements = [
      ...SQUARE,
      way(10, [1, 2, 3]),
      way(11, [3, 4, 1]),
      relation(
        20,
        [
          ['way', 10],
          ['way', 11],
        ],
        MULTIPOLYGON,
      ),
    ];
    expect(outcome(elements)).toMatchObject({ features: ['relation/20 Polygon'], cautions: [] });
  });

  it('one feature where outline and multipolygon say the same; two where they do not', () => {
    const ring = way(10, [1, 2, 3, 4, 1], FUEL);
    const area = relation(20, [['way', 10, 'outer']], MULTIPOLYGON);
    expect(outcome([...SQUARE, ring, area])).toMatchObject({
      features: ['relation/20 Polygon'],
      skipped: ['way/10: it is the outline of relation/20, which has the same tags'],
    });
    const other = way(10, [1, 2, 3, 4, 1], { amenity: 'drinking_water' });
    expect(outcome([...SQUARE, other, area]).features).toEqual(['way/10 Polygon', 'relation/20 Polygon']);
  });
});

describe('what is not whole', () => {
  it('a way without its nodes is skipped, with the reason', () => {
    expect(outcome([way(10, [1, 2], FUEL), way(11, [], FUEL)]).skipped).toEqual([
      'way/10: none of its nodes is in the extract',
      'way/11: it has no nodes',
    ]);
  });

  it('a way with some of its nodes is placed by these, with a caution', () => {
    expect(outcome([...SQUARE, way(10, [1, 2, 77], FUEL), way(11, [3, 77], FUEL)])).toMatchObject({
      features: ['way/10 LineString', 'way/11 Point'],
      cautions: ['placed-roughly'],
    });
  });

  it('a way is placed by the centre that the server gave', () => {
    expect(outcome([{ ...way(10, [77, 78], FUEL), center: { lat: 2, lon: 3 } }])).toMatchObject({
      features: ['way/10 Point'],
      positions: [[3, 2]],
      cautions: [],
    });
  });

  it('a site stands at the middle of its members', () => {
    const site = relation(
      20,
      [
        ['node', 1],
        ['way', 10],
        ['relation', 21],
      ],
      SITE,
    );
    const nested = relation(21, [['node', 3]], SITE);
    delete nested.tags;
    expect(outcome([...SQUARE, way(10, [1, 2]), nested, site])).toMatchObject({
      features: ['relation/20 Point'],
      positions: [[0.0005, 0.001 / 3]],
      cautions: [],
    });
  });

  it('a site over the 180th meridian stands there, and not on the other side of the earth', () => {
    const { positions } = outcome([
      node(1, 179.9999, 0),
      node(2, -179.9997, 0),
      relation(
        20,
        [
          ['node', 1],
          ['node', 2],
        ],
        SITE,
      ),
    ]);
    expect((positions[0] as number[])[0]).toBeCloseTo(-179.9999, 9);
  });

  it('relations that hold each other come to an end', () => {
    const elements = [
      relation(20, [['relation', 21]], SITE),
      relation(
        21,
        [
          ['relation', 20],
          ['node', 1],
        ],
        SITE,
      ),
      node(1, 2, 3),
    ];
    expect(outcome(elements).features).toEqual(['relation/20 Point', 'relation/21 Point']);
  });

  it('a multipolygon with a member missing is placed by the rest, with a caution', () => {
    const open = relation(
      20,
      [
        ['way', 10, 'outer'],
        ['way', 77, 'outer'],
      ],
      MULTIPOLYGON,
    );
    expect(outcome([...SQUARE, way(10, [1, 2, 3]), open])).toMatchObject({
      features: ['relation/20 Point'],
      cautions: ['placed-roughly'],
    });
    const openSquare = [...SQUARE, way(10, [1, 2, 3, 4]), way(11, [4, 77])];
    expect(
      outcome([
        ...openSquare,
        relation(
          20,
          [
            ['way', 10, 'outer'],
            ['way', 11, 'outer'],
          ],
          MULTIPOLYGON,
        ),
      ]),
    ).toMatchObject({
      features: ['relation/20 Point'],
      cautions: ['placed-roughly'],
    });
    const holeMissing = relation(
      20,
      [
        ['way', 10, 'outer'],
        ['way', 77, 'inner'],
      ],
      MULTIPOLYGON,
    );
    expect(outcome([...SQUARE, way(10, [1, 2, 3, 4, 1]), holeMissing])).toMatchObject({
      features: ['relation/20 Polygon'],
      cautions: ['placed-roughly'],
    });
  });

  it('a relation without members is skipped; so is one whose members lie far apart', () => {
    const far = [
      node(1, 0, 0),
      node(2, 1, 0),
      relation(
        20,
        [
          ['node', 1],
          ['node', 2],
        ],
        SITE,
      ),
    ];
    expect(outcome([...far, relation(21, [], SITE), relation(22, [['node', 77]], SITE)]).skipped).toEqual([
      'relation/20: its members lie about 111 km apart, so no one place stands for it',
      'relation/21: it has no members',
      'relation/22: none of its members is in the extract',
    ]);
  });

  it('positions that are none on earth are not used', () => {
    const geometry = [{ lat: 95, lon: 0 }, { lat: 1, lon: 2 }, null];
    expect(outcome([{ type: 'way', id: 10, geometry, tags: FUEL }, node(1, 500, 0, FUEL)])).toMatchObject({
      features: ['way/10 Point'],
      positions: [[2, 1]],
      skipped: ['node/1: it has no position'],
    });
  });
});

const id = fc.integer({ min: 1, max: 6 });
const tags = fc.option(fc.constantFrom(FUEL, MULTIPOLYGON, SITE, { amenity: 'drinking_water' }), {
  nil: undefined,
});
const at = fc.record({ lat: fc.double({ min: -91, max: 91 }), lon: fc.double({ min: -181, max: 181 }) });
const optional = { requiredKeys: ['type', 'id'] as ['type', 'id'] };
const anyElement: fc.Arbitrary<RawElement> = fc.oneof(
  fc.record(
    { type: fc.constant('node'), id, lat: fc.double({ min: -91, max: 91 }), lon: fc.double(), tags },
    optional,
  ),
  fc.record(
    {
      type: fc.constant('way'),
      id,
      nodes: fc.array(id, { maxLength: 6 }),
      geometry: fc.array(fc.option(at), { maxLength: 4 }),
      center: at,
      tags,
    },
    optional,
  ),
  fc.record(
    {
      type: fc.constant('relation'),
      id,
      members: fc.array(
        fc.record({
          type: fc.constantFrom<OsmType>('node', 'way', 'relation'),
          ref: id,
          role: fc.constantFrom('outer', 'inner', ''),
        }),
        { maxLength: 5 },
      ),
      tags,
    },
    optional,
  ),
) as fc.Arbitrary<RawElement>;

describe('whatever comes', () => {
  it('every wanted element gives one feature or one skipped entry, and the input stays as it was', () => {
    fc.assert(
      fc.property(fc.array(anyElement, { maxLength: 14 }), fc.boolean(), (elements, all) => {
        const wanted = new Set(elements.filter((element) => all || element.tags !== undefined).map(keyOf));
        const before = structuredClone(elements);
        const { features, skipped } = convert(elements, wanted);
        const told = [...features, ...skipped].map((entry) => entry.id);
        expect(told.sort()).toEqual([...wanted].sort());
        expect(elements).toEqual(before);
      }),
      { numRuns: 500 },
    );
  });

  it('every place that a feature has is on earth', () => {
    fc.assert(
      fc.property(fc.array(anyElement, { maxLength: 14 }), (elements) => {
        for (const { geometry } of convert(elements, new Set(elements.map(keyOf))).features) {
          const numbers = JSON.stringify('coordinates' in geometry && geometry.coordinates).matchAll(
            /\[([^[\]]+)\]/g,
          );
          for (const [, pair] of numbers) {
            const [lon, lat] = pair!.split(',').map(Number);
            expect(Math.abs(lon!) <= 180 && Math.abs(lat!) <= 90).toBe(true);
          }
        }
      }),
      { numRuns: 300 },
    );
  });
});

describe('converting in batches', () => {
  const isTagged = ({ tags }: RawElement) => tags !== undefined;

  /** Some ways and members say themselves where they are, as Overpass gives them. */
  const withInline = (world: RawElement[], choose: (n: number) => boolean): RawElement[] => {
    const nodes = new Map(world.filter(({ type }) => type === 'node').map((each) => [each.id, each]));
    const placeOf = (id: number) => {
      const found = nodes.get(id);
      return found === undefined ? null : { lat: found.lat!, lon: found.lon! };
    };
    return world
      .filter(({ type, tags }, i) => type !== 'node' || tags !== undefined || choose(i))
      .map((element, i) =>
        element.type === 'way' && choose(i + 1)
          ? { ...element, geometry: element.nodes!.map(placeOf) }
          : element,
      );
  };

  it('should give the same as all at once, whatever the size of the batches', { tags: 'slow' }, () => {
    fc.assert(
      fc.property(
        anyWorld,
        fc.integer({ min: 1, max: 4 }),
        fc.func(fc.boolean()),
        (plain, batchOf, choose) => {
          for (const world of [plain, withInline(plain, choose)]) {
            const wanted = new Set(world.filter(isTagged).map(keyOf));
            expect(convert(world, wanted, batchOf)).toEqual(convert(world, wanted, Number.MAX_SAFE_INTEGER));
          }
        },
      ),
      { numRuns: 400 },
    );
  });
});
