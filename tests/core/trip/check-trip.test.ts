import { expect, it } from 'vitest';
import { checkTrip } from '../../../server/core/trip/check-trip.ts';

it.each<[why: string, bbox: [number, number, number, number]]>([
  ['has no height', [10, 5, 12, 5]],
  ['has its south above its north', [10, 6, 12, 5]],
  ['has no width', [10, 5, 10, 6]],
])('a box that %s is refused with its place', (_why, bbox) => {
  const good = {
    commodity: 'fuel' as const,
    bbox: [178, -20, -179, -10] as [number, number, number, number],
  };
  expect(checkTrip({ cover: [good] }, null)).toBeNull();
  expect(checkTrip({ cover: [good, { commodity: 'fuel', bbox }] }, null)).toEqual({
    path: '/cover/1/bbox',
    misfit: 'box-inside-out',
    facts: { bbox },
  });
});

it('a day that no calendar has is refused with the place at which it is told', () => {
  const works = { id: 'node/1', works: true };
  const confirmations = [
    { ...works, on: '2026-02-28' },
    { ...works, on: '2026-02-30' },
  ];
  const note = { id: 'node/1', on: '2026-04-31', saltOk: true };
  const places = [
    checkTrip({ departure: '2027-02-29' }, null),
    checkTrip({ confirmations }, null),
    checkTrip({ waterNotes: [note] }, null),
    checkTrip({ extracts: [{ file: 'a.osm', asOf: '2026-13-01' }] }, null),
  ];
  expect(places.map((misfit) => [misfit?.path, misfit?.misfit, misfit?.facts])).toEqual([
    ['/departure', 'date-impossible', { date: '2027-02-29' }],
    ['/confirmations/1/on', 'date-impossible', { date: '2026-02-30' }],
    ['/waterNotes/0/on', 'date-impossible', { date: '2026-04-31' }],
    ['/extracts/0/asOf', 'date-impossible', { date: '2026-13-01' }],
  ]);
});
