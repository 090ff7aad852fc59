import { describe, expect, it } from 'vitest';
import type { Surroundings } from '../../../server/core/input/sources.ts';
import { nearestSettlement } from '../../../server/core/surroundings/settlements.ts';

const settlement = (name: string | null, lon: number, lat: number): Surroundings['objects'][number] => ({
  id: `node/${name}`,
  what: 'settlement',
  name,
  lines: [Float64Array.of(lon, lat)],
});
const around = (...objects: Surroundings['objects']): Surroundings => ({ objects, roads: [] });

describe('the nearest named place', () => {
  it('is told with how far and in which direction a place lies as seen from it', () => {
    const ground = around(settlement('Ollin', 88, -35), settlement('Far Town', 88.1, -35));
    // A minute of latitude is a nautical mile, 1.85 km.
    expect(nearestSettlement(ground, { lon: 88, lat: -35 + 1 / 60 })).toMatchObject({
      name: 'Ollin',
      direction: 'n',
      offM: expect.closeTo(1849, 0),
    });
    const directions = [
      [0, 1, 'n'],
      [1, 1, 'ne'],
      [1, 0, 'e'],
      [1, -1, 'se'],
      [0, -1, 's'],
      [-1, -1, 'sw'],
      [-1, 0, 'w'],
      [-1, 1, 'nw'],
    ] as const;
    const equator = around(settlement('Ollin', 10, 0));
    for (const [east, north, direction] of directions)
      expect(nearestSettlement(equator, { lon: 10 + east / 100, lat: north / 100 })?.direction).toBe(
        direction,
      );
  });

  it('is none beyond 20 km, none without a name, and found over the 180th meridian', () => {
    expect(nearestSettlement(around(settlement('Ollin', 88, -35)), { lon: 88, lat: -34.8 })).toBeNull();
    expect(nearestSettlement(around(settlement(null, 88, -35)), { lon: 88, lat: -35 })).toBeNull();
    expect(nearestSettlement(undefined, { lon: 88, lat: -35 })).toBeNull();
    const east = around(settlement('Date Line', 179.99, 0));
    expect(nearestSettlement(east, { lon: -179.99, lat: 0 })).toMatchObject({ direction: 'e' });
  });
});
