import { describe, expect, it } from 'vitest';
import { passingsOf } from '../../../server/core/analyse/passings-of.ts';
import type { SupplyPoint } from '../../../server/core/supply/points/supply-point.ts';
import { equatorDocument, equatorLon } from '../../helpers/analyse-input.ts';
import { routeOfDocument } from '../route/lines.ts';

describe('passings', () => {
  const route = routeOfDocument(equatorDocument(100));
  const point = (id: string, commodity: 'fuel' | 'water', km: number): SupplyPoint =>
    ({ id, commodity, lon: equatorLon(km), lat: 0, tags: {} }) as unknown as SupplyPoint;
  const namesOf = (points: SupplyPoint[]) =>
    passingsOf(route, points, 5000, 1.3).map(({ id, commodity }) => `${id} ${commodity}`);

  it('are in route order, at one place by id, then fuel before water', () => {
    const points = [
      point('node/4', 'water', 60),
      point('node/4', 'fuel', 60),
      point('node/3', 'fuel', 60),
      point('node/9', 'fuel', 20),
    ];
    const inOrder = ['node/9 fuel', 'node/3 fuel', 'node/4 fuel', 'node/4 water'];
    // In whatever order they are given.
    expect(namesOf(points)).toEqual(inOrder);
    expect(namesOf(points.toReversed())).toEqual(inOrder);
  });
});
