import fc from 'fast-check';
import { nearGrid } from '../../../server/app/near-route.ts';
import type { OsmType, RawElement } from '../../../server/io/osm/extract/raw-element.ts';

/** The land within 5 km of 10° E 50° N; the corner of a cell of the grid, so that four are marked. */
export const NEAR_LAND = nearGrid({ lon: Float64Array.of(10), lat: Float64Array.of(50) }, 5);

const TAGS: fc.Arbitrary<Record<string, string> | undefined> = fc.constantFrom<
  (Record<string, string> | undefined)[]
>(
  undefined,
  { highway: 'track' },
  { amenity: 'fuel' },
  { amenity: 'fuel', source: 'survey' },
  { amenity: 'fuel', building: 'yes' },
  { amenity: 'drinking_water' },
);
const RELATION_TAGS: fc.Arbitrary<Record<string, string>> = fc.constantFrom<Record<string, string>[]>(
  { type: 'multipolygon', amenity: 'fuel' },
  { type: 'multipolygon', amenity: 'fuel', building: 'yes' },
  { type: 'site', amenity: 'fuel' },
  { type: 'boundary' },
);

const near = (most: number) => fc.integer({ min: -most, max: most }).map((steps) => steps * 0.001);
/** Positions on the near land, 700 km to the east of it, and by the 180th meridian. */
export const anyPlace: fc.Arbitrary<{ lon: number; lat: number }> = fc
  .tuple(fc.constantFrom(10, 10, 20, 179.999), near(3), near(3))
  .map(([lon, east, north]) => ({ lon: lon + east > 180 ? lon + east - 360 : lon + east, lat: 50 + north }));

const untagged = (element: RawElement, tags: Record<string, string> | undefined): RawElement =>
  tags === undefined ? element : { ...element, tags };

const anyId = (most: number) => fc.integer({ min: 1, max: most });
const byId = { selector: ({ id }: RawElement) => id };

const anyNode = fc
  .tuple(anyId(20), anyPlace, TAGS)
  .map(([id, place, tags]) => untagged({ type: 'node', id, ...place }, tags));
const anyWay = fc
  .tuple(anyId(12), fc.array(anyId(22), { minLength: 1, maxLength: 5 }), fc.boolean(), TAGS)
  .map(([id, nodes, closed, tags]) =>
    untagged({ type: 'way', id, nodes: closed ? [...nodes, nodes[0]!] : nodes }, tags),
  );
const anyMember = fc.record({
  type: fc.constantFrom<OsmType[]>('way', 'way', 'way', 'node', 'relation'),
  ref: anyId(14),
  role: fc.constantFrom('', 'outer', 'inner'),
});
const anyRelation = fc
  .tuple(anyId(6), fc.array(anyMember, { maxLength: 4 }), RELATION_TAGS)
  .map(([id, members, tags]): RawElement => ({ type: 'relation', id, members, tags }));

/** A small world whose ways and relations refer to what is there, and sometimes to what is not. */
export const anyWorld: fc.Arbitrary<RawElement[]> = fc
  .tuple(
    fc.uniqueArray(anyNode, { ...byId, minLength: 10, maxLength: 20 }),
    fc.uniqueArray(anyWay, { ...byId, maxLength: 10 }),
    fc.uniqueArray(anyRelation, { ...byId, maxLength: 5 }),
  )
  .map((parts) => parts.flat());
