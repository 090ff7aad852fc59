import { describe, expect, test } from 'vitest';
import type { Surrounding } from '../../../server/core/input/sources.ts';
import { analysisOf, inputOf, WORLD_COVER } from '../../helpers/analyse-input.ts';

/** Across the route at 5° E, which is km 556.6. */
const river = (more: Partial<Surrounding> = {}): Surrounding => ({
  id: 'way/1',
  what: 'river',
  name: 'Brown River',
  fresh: true,
  lines: [Float64Array.from([5, -0.03, 5, 0.03])],
  ...more,
});
const withRiver = (objects: readonly Surrounding[], cover = WORLD_COVER) =>
  analysisOf({ supplies: { ...inputOf().supplies, cover, surroundings: { objects, roads: [] } } });

describe('a river that the route crosses', () => {
  test('is one passing, where it is crossed', () => {
    const { passings } = withRiver([river()]);
    expect(passings.map(({ id, counts }) => [id, counts])).toEqual([['way/1', false]]);
    expect(passings[0]?.atKm).toBeCloseTo(556.6, 1);
  });

  test('is none where its water is not fresh', () => {
    const { fresh: _, ...salt } = river();
    expect(withRiver([salt]).passings).toEqual([]);
  });

  test('makes no data of water where no extract tells of water', () => {
    const fuelOnly = WORLD_COVER.filter(({ commodity }) => commodity === 'fuel');
    expect(withRiver([river()], fuelOnly).noData).toEqual(['water']);
    expect(withRiver([river()]).noData).toEqual([]);
    const lake = river({ what: 'lake', name: 'Still Water' });
    expect(withRiver([lake], fuelOnly).passings.map(({ kind }) => kind)).toEqual([
      'lake or pond, surface water',
    ]);
    expect(withRiver([lake], fuelOnly).noData).toEqual(['water']);
  });
});
