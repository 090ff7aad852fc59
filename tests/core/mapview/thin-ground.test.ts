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

  it('counts the width of the box by its degrees, over the 180th meridian as well', () => {
    // A twenty-thousandth of 10 degrees is 0.0005: a bend of 0.002 on the way of a degree is seen, one of 0.0001 is not.
    const bendsLeft = (heightDeg: number, box: [number, number, number, number]) => {
      const bent: [number, number][] = [
        [179, 0],
        [179.5, heightDeg],
        [180, 0],
      ];
      const [feature] = thinGround([line('primary', bent)], box).ground;
      return feature?.geometry.type === 'LineString' && feature.geometry.coordinates.length === 3;
    };
    for (const box of [
      [172, -5, 182, 5],
      [172, -5, -178, 5],
    ] as [number, number, number, number][]) {
      expect(bendsLeft(0.002, box)).toBe(true);
      expect(bendsLeft(0.0001, box)).toBe(false);
    }
    // 360 degrees wide it is 0.018.
    expect(bendsLeft(0.002, [-180, -5, 180, 5])).toBe(false);
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
