import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { findPassings, nearestPlaces } from '../../../../server/core/route/passings/passings.ts';
import { lineOnPlain, onPlain, placeOnPlain, routeOfSegments, routeThrough } from '../lines.ts';

const wgs84 = geodesic.Geodesic.WGS84;

/** [km along, metres off] of the passings of one point, rounded to 10 m and to metres. */
const found = (route: ReturnType<typeof routeThrough>, eastM: number, northM: number, corridorM = 5_000) =>
  findPassings(route, [placeOnPlain(eastM, northM)], corridorM).map(({ atM, offM }) => [
    Math.round(atM / 10) / 100,
    Math.round(offM),
  ]);
const along = (...corners: [number, number][]) => routeThrough(lineOnPlain(corners));

describe('passings of one point', () => {
  it('is one where the line goes straight by', () => {
    expect(found(along([0, 0], [30_000, 0]), 12_000, 3_000)).toEqual([[12, 3_000]]);
  });

  it('is none outside the corridor', () => {
    const route = along([0, 0], [30_000, 0]);
    expect(found(route, 12_000, 4_999)).toHaveLength(1);
    expect(found(route, 12_000, 5_001)).toEqual([]);
    expect(found(route, 12_000, 501, 500)).toEqual([]);
  });

  it('is two out and back, when the turning place is far enough beyond', () => {
    expect(found(along([0, 0], [30_000, 0], [0, 0]), 12_000, 3_000)).toEqual([
      [12, 3_000],
      [48, 3_000],
    ]);
  });

  it('is one out and back, the earlier, when the line turns back before it is 1,000 m further away', () => {
    // From the point at 500 m off, the turning place 1,300 m on is 1,393 m away: a rise of 893 m.
    expect(found(along([0, 0], [13_300, 0], [0, 0]), 12_000, 500)).toEqual([[12, 500]]);
    // 1,500 m on: 1,581 m away, a rise of 1,081 m.
    expect(found(along([0, 0], [13_500, 0], [0, 0]), 12_000, 500)).toEqual([
      [12, 500],
      [15, 500],
    ]);
  });

  it('is two where a loop comes back to the same place', () => {
    const route = along([0, 0], [10_000, 0], [10_000, 8_000], [2_000, 8_000], [2_000, -6_000]);
    expect(found(route, 2_100, 100)).toEqual([
      [2.1, 100],
      [10 + 8 + 8 + 7.9, 100],
    ]);
  });

  it('is two at the crossing of a figure of eight, one at each far side', () => {
    const eight = along([0, 0], [8_000, 8_000], [8_000, 0], [0, 8_000], [0, 20_000]);
    const side = Math.hypot(8_000, 8_000) / 1000;
    const crossing = found(eight, 4_000, 4_000, 500);
    expect(crossing.map(([atKm]) => Number(atKm!.toFixed(1)))).toEqual([
      Number((side / 2).toFixed(1)),
      Number((side * 1.5 + 8).toFixed(1)),
    ]);
    expect(found(eight, 8_200, 4_000, 500)).toHaveLength(1);
  });

  it('is one at either end, where the distance still falls', () => {
    const route = along([0, 0], [30_000, 0]);
    expect(found(route, -2_000, 0)).toEqual([[0, 2_000]]);
    expect(found(route, 32_000, 0)).toEqual([[30, 2_000]]);
  });

  it('is one at the start and one later where the line starts inside the corridor, leaves and comes back', () => {
    const route = along([0, 0], [9_000, 0], [9_000, 4_000], [0, 4_000]);
    expect(found(route, -1_000, 2_500, 5_000)).toEqual([
      [0, 2_693],
      [22, 1_803],
    ]);
  });

  it('keeps only the nearer of two lows with a small rise between, whichever comes first', () => {
    const dent = along([0, 1_500], [6_000, 2_300], [10_000, 1_000], [20_000, 6_000]);
    const there = found(dent, 4_500, 0);
    expect(there).toHaveLength(1);
    const back = found(along([20_000, 6_000], [10_000, 1_000], [6_000, 2_300], [0, 1_500]), 4_500, 0);
    expect(back).toHaveLength(1);
    expect(back[0]![1]).toBe(there[0]![1]);
  });

  it('looks a kilometre beyond the corridor: a rise to 1,000 m parts two lows, one to 900 m does not', () => {
    const corridorM = 1_000;
    const hump = (topM: number) => along([0, 900], [4_000, topM], [8_000, 900]);
    // A corridor's width of 1 km about the point: both ends of the line are lows at 900 m and a bit.
    expect(found(hump(2_500), 4_000, 0, 6_000)).toHaveLength(1);
    const bend = (topM: number) =>
      along([-20_000, 800], [0, 800], [0, topM], [1, topM], [1, 800], [20_000, 800]);
    expect(found(bend(1_700), 0, 0, corridorM)).toHaveLength(1);
    expect(found(bend(1_900), 0, 0, corridorM)).toHaveLength(2);
  });

  it('cancels the smallest rise first: three lows, the middle one near its left neighbour', () => {
    // Out and back along spurs from a base 800 m off: rises of 400 m and 1,400 m.
    const route = along(
      [-20_000, 800],
      [-200, 800],
      [-200, 1_200],
      [0, 700],
      [0, 2_100],
      [100, 2_100],
      [200, 800],
      [20_000, 800],
    );
    const places = found(route, 0, 0, 1_000);
    expect(places).toHaveLength(2);
    expect(places[0]![1]).toBe(700);
    expect(places[1]![1]).toBeGreaterThan(800);
  });

  it('is the first of all the equal places on an arc about the point', () => {
    const arc = Array.from({ length: 91 }, (_, i): [number, number] => {
      const angle = (i * Math.PI) / 180;
      return [2_000 * Math.cos(angle), 2_000 * Math.sin(angle)];
    });
    const [only, ...more] = found(routeThrough(arc.map(([x, y]) => onPlain(x, y))), 0, 0);
    expect(more).toEqual([]);
    expect(only![1]).toBe(2_000);
  });

  it('does not mind repeated points, at the low or elsewhere', () => {
    const points = lineOnPlain([
      [0, 0],
      [10_000, 0],
      [10_000, 10_000],
    ]);
    const repeated = points.flatMap((point) => [point, point, point]);
    for (const [x, y] of [
      [10_500, -500],
      [4_050, 700],
      [-300, 0],
    ] as const) {
      expect(found(routeThrough(repeated), x, y)).toEqual(found(routeThrough(points), x, y));
    }
  });

  it('lies exactly on the line at no distance', () => {
    const [place, ...more] = findPassings(along([0, 0], [30_000, 0]), [placeOnPlain(12_000, 0)], 500);
    expect(more).toEqual([]);
    expect(place!.offM).toBeLessThan(0.05);
  });
});

describe('bridges', () => {
  const upTo10 = lineOnPlain([
    [0, 0],
    [10_000, 0],
  ]);
  const on = (x: number) =>
    lineOnPlain([
      [x, 0],
      [40_000, 0],
    ]);

  it('have no passing when they are over 1 km, but where the parts that they join end', () => {
    const route = routeOfSegments(upTo10, on(22_000));
    expect(found(route, 16_000, 1_000)).toEqual([]);
    expect(found(route, 12_000, 0)).toEqual([[10, 2_000]]);
    expect(found(route, 20_000, 0)).toEqual([[22, 2_000]]);
    expect(found(route, 5_000, 400)).toEqual([[5, 400]]);
  });

  it('have both ends as passings when the line between them goes far enough away from neither', () => {
    // Both ends are 4 km away and the bridge between them comes nearer: no rise at all, so one, the earlier.
    expect(found(routeOfSegments(upTo10, on(18_000)), 14_000, 0)).toEqual([[10, 4_000]]);
  });

  it('are as good as road up to 1 km', () => {
    expect(found(routeOfSegments(upTo10, on(10_900)), 10_450, 300)).toEqual([[10.45, 300]]);
  });
});

describe('passings of several points', () => {
  it('come in route order, then by point, where two corridors touch', () => {
    const route = along([0, 0], [30_000, 0], [0, 0]);
    const points = [placeOnPlain(14_000, 800), placeOnPlain(13_000, -800), placeOnPlain(14_000, 800)];
    const order = findPassings(route, points, 1_000).map(({ point, atM }) => [
      point,
      Math.round(atM / 100) / 10,
    ]);
    expect(order).toEqual([
      [1, 13],
      [0, 14],
      [2, 14],
      [0, 46],
      [2, 46],
      [1, 47],
    ]);
  });

  it('are found over the 180th meridian, whichever side a point is written on', () => {
    const route = routeThrough([
      [179.8, -17],
      [-179.8, -17],
    ]);
    const lons = [179.9, -180, 180, -179.9, 180.1];
    const passings = findPassings(
      route,
      lons.map((lon) => ({ lon, lat: -17.01 })),
      5_000,
    );
    const atM = lons.map((_, point) => passings.find((passing) => passing.point === point)!.atM);
    expect(passings).toHaveLength(5);
    [0.25, 0.5, 0.5, 0.75, 0.75].forEach((share, point) => {
      expect(Math.abs(atM[point]! - share * route.lengthM)).toBeLessThan(1);
    });
  });

  it('are found beside a pole, where boxes of degrees are of no use', () => {
    const route = routeThrough([
      [0, -89.9],
      [90, -89.9],
      [180, -89.9],
    ]);
    const [passing] = findPassings(route, [{ lon: -135, lat: -89.95 }], 9_000);
    const leg = wgs84.InverseLine(-89.9, 90, -89.9, 180);
    let nearestM = Infinity;
    for (let i = 0; i <= 2_000; i += 1) {
      const { lat2, lon2 } = leg.Position((leg.s13 * i) / 2_000);
      nearestM = Math.min(nearestM, wgs84.Inverse(-89.95, -135, lat2!, lon2!).s12!);
    }
    expect(passing!.offM).toBeCloseTo(nearestM, 1);
  });
});

describe('the nearest place of each point', () => {
  it('is a single one within the radius, however far the corridor, bridges over 1 km aside', () => {
    const route = along([0, 0], [60_000, 0], [0, 0]);
    const points = [placeOnPlain(12_000, 40_000), placeOnPlain(20_000, 51_000), placeOnPlain(55_000, -3_000)];
    const places = nearestPlaces(route, points, 50_000);
    expect(places.map(({ point }) => point)).toEqual([0, 2]);
    expect(places[0]!.offM).toBeGreaterThan(39_900);
    expect(Math.abs(places[1]!.atM - 55_000)).toBeLessThan(30);
    const bridged = routeOfSegments(
      lineOnPlain([
        [0, 0],
        [10_000, 0],
      ]),
      lineOnPlain([
        [30_000, 0],
        [40_000, 0],
      ]),
    );
    const [nearest] = nearestPlaces(bridged, [placeOnPlain(19_000, 0)], 50_000);
    expect(Math.abs(nearest!.atM - 10_000)).toBeLessThan(1);
  });

  it('come in the order of the route, at one place in that of the points', () => {
    const points = [50_000, 10_000, 30_000, 10_000].map((eastM) => placeOnPlain(eastM, 0));
    const places = nearestPlaces(along([0, 0], [60_000, 0]), points, 1_000);
    expect(places.map(({ point }) => point)).toEqual([1, 3, 2, 0]);
  });
});
