import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boundsBetween,
  nearestKm,
  positionAt,
  stretchWithin,
} from '../../../../web/map/geometry/nearest-km.ts';
import { sampleReply } from '../../sample-reply.ts';

const { line } = sampleReply().map;
const EMPTY = { coordinates: [], atKm: [] };

describe('the map and route km', () => {
  test('a place on the route is nearest to itself', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1200, noNaN: true }), (km) => {
        const [lon, lat] = positionAt(line, km)!;
        expect(nearestKm(line, lon, lat)).toBeCloseTo(km, 3);
      }),
    );
  });

  test('an out-and-back line gives the way out', () => {
    const back = {
      coordinates: [
        [0, 0],
        [1, 0],
        [0, 0],
      ],
      atKm: [0, 111, 222],
    };
    expect(nearestKm(back, 0.5, 0.1)).toBeCloseTo(55.5, 6);
  });

  test('off its ends lie its ends', () => {
    expect(positionAt(line, -5)).toEqual(line.coordinates[0]);
    expect(positionAt(line, 5000)).toEqual(line.coordinates.at(-1));
    expect(nearestKm(line, 60, -60)).toBe(0);
  });

  test('repeated vertices do no harm', () => {
    const still = {
      coordinates: [
        [0, 0],
        [0, 0],
        [1, 0],
      ],
      atKm: [0, 0, 111],
    };
    expect(positionAt(still, 0)).toEqual([0, 0]);
    expect(nearestKm(still, 0, 0)).toBe(0);
  });

  test('bounds hold the stretch and no more', () => {
    const [low, high] = boundsBetween(line, 100, 110)!;
    const ends = [positionAt(line, 100)!, positionAt(line, 110)!];
    expect(low).toEqual([Math.min(...ends.map(([lon]) => lon)), Math.min(...ends.map(([, lat]) => lat))]);
    expect(high).toEqual([Math.max(...ends.map(([lon]) => lon)), Math.max(...ends.map(([, lat]) => lat))]);
    const [west] = boundsBetween(line, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)!;
    expect(west[0]).toBe(86);
  });

  test('an empty line has no place', () => {
    expect(nearestKm(EMPTY, 0, 0)).toBeNull();
    expect(positionAt(EMPTY, 0)).toBeNull();
    expect(boundsBetween(EMPTY, 0, 1)).toBeNull();
  });
});

describe('the stretch of the route within a box', () => {
  // North, off to the east, and back west again.
  const line = {
    coordinates: [
      [10, 0],
      [10, 1],
      [10, 2],
      [14, 2],
      [14, 3],
      [10, 3],
      [10, 3.5],
      [10, 4],
      [10, 4.5],
    ],
    atKm: [0, 100, 200, 600, 700, 1100, 1150, 1200, 1250],
  };
  const box = { west: 9, east: 11, south: -1, north: 5 };

  test('is the longest of those that hang together', () => {
    expect(stretchWithin(line, box)).toEqual({ fromKm: 0, toKm: 200 });
    expect(stretchWithin(line, { ...box, south: 0.5 })).toEqual({ fromKm: 1100, toKm: 1250 });
    expect(stretchWithin(line, { ...box, west: 0, east: 20 })).toEqual({ fromKm: 0, toKm: 1250 });
  });

  test('is found on whatever turn of the globe the map is', () => {
    expect(stretchWithin(line, { ...box, west: -351, east: -349 })).toEqual({ fromKm: 0, toKm: 200 });
  });

  test('is none where at most a point of it lies', () => {
    expect(stretchWithin(line, { ...box, south: 0.5, north: 1.5 })).toBeNull();
    expect(stretchWithin(line, { ...box, west: 40, east: 50 })).toBeNull();
  });
});
