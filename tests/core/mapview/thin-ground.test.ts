import { describe, expect, it } from 'vitest';
import { thinGround } from '../../../server/core/mapview/thin-ground.ts';

const line = (rank: string, coordinates: [number, number][]) => ({
  type: 'Feature' as const,
  geometry: { type: 'LineString' as const, coordinates },
  properties: { what: 'road' as const, name: null, rank },
});
const zigzag = (count: number, height: number) =>
  Array.from({ length: count }, (_, i): [number, number] => [85 + i / 100, -35 + (i % 2) * height]);
const town = {
  type: 'Feature' as const,
  geometry: { type: 'Point' as const, coordinates: [85, -35] },
  properties: { what: 'place' as const, name: 'Ketta', rank: 'town' },
};

describe('ground for the map', () => {
  it('loses the bends that the map cannot show, and no others', () => {
    const flat = thinGround([line('primary', zigzag(50, 1e-6))], [80, -40, 90, -30]);
    expect(flat.ground[0]?.geometry).toMatchObject({
      coordinates: [
        [85, -35],
        [85.49, -34.999999],
      ],
    });
    const bent = thinGround([line('primary', zigzag(50, 0.1))], [80, -40, 90, -30]);
    expect(bent.ground[0]?.geometry).toMatchObject({ coordinates: zigzag(50, 0.1) });
  });

  it('drops the lowest ranks first, tells how many, and keeps every place', () => {
    const lines = ['track', 'primary_link', 'coastline', 'residential', 'trunk'].map((rank) =>
      line(rank, zigzag(10, 0.1)),
    );
    const { ground, dropped } = thinGround([...lines, town], [80, -40, 90, -30], 30);
    expect(ground.map((feature) => feature.properties.rank)).toEqual([
      'town',
      'coastline',
      'trunk',
      'primary_link',
    ]);
    expect(dropped).toBe(2);
  });
});
