import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isCalm, osmXml, overpassJson, StraightRoute, straightMap } from './straight-route.ts';

let route: StraightRoute;
beforeAll(async () => {
  route = await StraightRoute.open();
});
afterAll(() => route.close());

describe('the straight route of 1,200 km', () => {
  it('holds with the reserve by the two objects in its middle', async () => {
    const analysis = await route.analysis({ 'land.osm': osmXml({ objects: straightMap() }) });
    expect([isCalm(analysis, 'fuel'), isCalm(analysis, 'water')]).toEqual([true, true]);
    expect(analysis.route.lengthKm).toBeCloseTo(1200, -1);
  });

  it('is dry at km 667 without them', async () => {
    const land = osmXml({ objects: straightMap({ fuel: null, water: null }) });
    const analysis = await route.analysis({ 'land.osm': land });
    expect([isCalm(analysis, 'fuel'), isCalm(analysis, 'water')]).toEqual([false, false]);
    expect(analysis.fuel.gaps[0]?.runsDryKm).toBeCloseTo(667, 0);
    expect(analysis.fuel.gaps[0]?.arriveL).toBeLessThan(0);
    expect(analysis.water.gaps[0]?.arriveL).toBeLessThan(0);
  });

  it('is the same by an answer of Overpass with its objects alone', async () => {
    const analysis = await route.analysis({ 'reply.json': overpassJson({ objects: straightMap() }) });
    expect(analysis.passings.map(({ id, counts }) => [id, counts])).toEqual([
      ['node/1', true],
      ['node/2', true],
    ]);
  });
});
