import { expect, test } from 'vitest';
import type { Passing } from '../../../server/contract/analysis.ts';
import { isOnMap, objectThen } from '../../../web/notes/object-then.ts';
import { coordinatesText, withOwnPoint, withoutOwnPoint } from '../../../web/notes/own-point.ts';
import { sampleReply } from '../sample-reply.ts';

const POINT = { at: '1, 2', grade: 'drinking' as const, on: '2026-05-01' };

test('own points get ids of their names, each one of its own, and can be taken out', () => {
  const names = ['Low farm', 'Low farm', undefined, '!!!'];
  const trip = names.reduce(
    (before, name) => withOwnPoint(before, name === undefined ? POINT : { ...POINT, name }),
    {},
  ) as ReturnType<typeof withOwnPoint>;
  expect(trip.ownPoints?.map(({ id }) => id)).toEqual(['low-farm', 'low-farm-2', 'point', 'point-2']);
  const one = withOwnPoint({}, POINT);
  expect(withoutOwnPoint(one, 'point')).toEqual({});
  expect(withoutOwnPoint(trip, 'low-farm').ownPoints?.map(({ id }) => id)).toEqual([
    'low-farm-2',
    'point',
    'point-2',
  ]);
});

test('a place clicked is told to a metre', () => {
  expect(coordinatesText({ lon: 84.2071, lat: -33.868123 })).toBe('-33.86812, 84.20710');
});

test('what an object is when it is noted: its place, its tags, what stands within 200 m', () => {
  const [like] = sampleReply().analysis.passings;
  const at = (id: string, lon: number, lat: number): Passing => ({
    ...like!,
    id,
    lon,
    lat,
    tags: { amenity: 'fuel' },
  });
  const passing = at('node/1', 179.9999, 60);
  // A degree of longitude at 60 degrees is half one at the equator, 55.7 km.
  const others = [at('node/2', -179.9999, 60), at('node/3', 179.9964, 60), at('node/4', 179.996, 60)];
  expect(objectThen(passing, [passing, ...others, at('node/2', -179.9999, 60)])).toEqual({
    lon: 179.9999,
    lat: 60,
    tags: { amenity: 'fuel' },
    near: ['node/2', 'node/3'],
  });
  expect(['node/1', 'own/noted/x', 'laid/fuel-3'].map((id) => isOnMap({ id }))).toEqual([true, false, false]);
});
