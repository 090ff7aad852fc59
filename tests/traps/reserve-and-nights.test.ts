import { writeFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Analysis } from '../../server/contract/analysis.ts';
import { osmXml, StraightRoute, straightMap } from './straight-route.ts';

let route: StraightRoute;
beforeAll(async () => {
  route = await StraightRoute.open();
});
afterAll(() => route.close());

const LAND = { 'land.osm': osmXml({ objects: straightMap() }) };

/** The rig of the straight route, by other words of it: 100 l and 15 l/100 km, 14 l of water a day, 280 km a day. */
async function withRig(fuelReserve: string, trip: object): Promise<Analysis> {
  await writeFile(
    route.path('rig.yaml'),
    `
name: straight route
fuel:
  kind: diesel
  litresPer100Km: { low: 12, typical: 13, high: 15 }
  tanks: [{ name: main, litres: 100 }]
  reserve: ${fuelReserve}
water:
  litresPerDay: { low: 10, typical: 12, high: 14 }
  tanks: [{ name: main, litres: 50 }]
  reserve: { days: 1 }
pace: { hoursPerDay: 7, kmPerHour: { slow: 40, typical: 50, fast: 60 } }
`,
  );
  return route.analysis(LAND, trip);
}

describe('a reserve of 60 km at the pump before the dunes', () => {
  const dunes = [{ fromKm: 601, toKm: 700, surface: 'sand' }];

  it('is not the 9 l that it is before a road: what is left would not bring anybody 60 km on', {
    tags: 'slow',
  }, async () => {
    // 600 km take 90 of 100 l.
    const road = (await withRig('{ km: 60 }', {})).fuel.gaps[0];
    expect([road?.reserveL, road?.verdict]).toEqual([expect.closeTo(9, 1), 'enough']);
    const sand = (await withRig('{ km: 60 }', { surfaces: dunes })).fuel.gaps[0];
    expect(sand?.arriveL).toBeCloseTo(10, 0);
    expect(sand?.verdict, 'the traveller was told that the reserve is intact before the dunes').toBe(
      'into-reserve',
    );
  });

  it('that is told in litres is those litres', async () => {
    const sand = (await withRig('{ litres: 9 }', { surfaces: dunes })).fuel.gaps[0];
    expect([sand?.reserveL, sand?.verdict]).toEqual([9, 'enough']);
  });
});

describe('water on the way back', () => {
  it('is that of the nights that fall: home by the evening of the third day, and no kilometre farther', async () => {
    // 36 l above the reserve are 61.7 h. Out 420 km and back are three days of driving with two nights between, 55 h; a
    // kilometre farther a third night falls on the way home, and it is 72 h.
    const [gap] = (await withRig('{ litres: 5 }', {})).water.gaps;
    expect(gap?.turnBackKm).toBeCloseTo(420, 0);
  });
});
