import { booleanPointInPolygon } from '@turf/turf';
import { expect, it } from 'vitest';
import { extractAreas, unknownGround } from '../../../../web/map/geometry/unknown-ground.ts';
import { sampleReply } from '../../sample-reply.ts';

const { map } = sampleReply();
const box = (west: number, south: number, size: number): [number, number][] => [
  [west, south],
  [west + size, south],
  [west + size, south + size],
  [west, south + size],
  [west, south],
];
const withExtracts = (...rings: [number, number][][]) => ({
  ...map,
  extracts: [{ source: 'one.osm.pbf', rings }],
});

it('nothing is known where no extract reaches, extracts that overlap taken together', () => {
  const unknown = unknownGround(withExtracts(box(80, -35, 4), box(82, -33, 4)))!;
  const isUnknown = (lon: number, lat: number) => booleanPointInPolygon([lon, lat], unknown);
  expect(isUnknown(81, -34)).toBe(false);
  expect(isUnknown(83, -32)).toBe(false);
  expect(isUnknown(85, -30)).toBe(false);
  expect(isUnknown(81, -30)).toBe(true);
  expect(isUnknown(85, -34.5)).toBe(true);
  expect(isUnknown(100, -34)).toBe(true);
});

it('nothing is hatched where there is no extract at all, and a ring of too few places is none', () => {
  expect(unknownGround({ ...map, extracts: [] })).toBeNull();
  expect(extractAreas(withExtracts(box(80, -35, 4).slice(0, 3), box(1, 1, 1)))).toHaveLength(1);
});
