import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coverSpans, mergeSpans, type Ring } from '../../../../server/core/route/cover/cover-spans.ts';
import { positionAt } from '../../../../server/core/route/passings/locate.ts';
import { onPlain, routeThrough } from '../lines.ts';

const box = (west: number, south: number, east: number, north: number): Ring => [
  [west, south],
  [east, south],
  [east, north],
  [west, north],
  [west, south],
];
const plainRing = (...corners: [number, number][]): Ring => corners.map(([x, y]) => onPlain(x, y));
const km = (spans: ReturnType<typeof coverSpans>) =>
  spans.map(({ fromM, toM }) => [Math.round(fromM / 10) / 100, Math.round(toM / 10) / 100]);

/** Even-odd rule in the test's own words: count the edges to the east. */
function isIn(ring: Ring, lon: number, lat: number): boolean {
  let crossings = 0;
  ring.forEach(([x1, y1], i) => {
    const [x2, y2] = ring[(i + 1) % ring.length]!;
    if (y1 <= lat === y2 <= lat) return;
    if (x1 + ((lat - y1) * (x2 - x1)) / (y2 - y1) > lon) crossings += 1;
  });
  return crossings % 2 === 1;
}

describe('stretches inside areas', () => {
  const east = routeThrough([onPlain(0, 0), onPlain(30_000, 0)]);

  it('run from crossing to crossing', () => {
    const ring = plainRing([4_000, -5_000], [11_000, -5_000], [11_000, 5_000], [4_000, 5_000]);
    expect(km(coverSpans(east, [ring]))).toEqual([[4, 11]]);
  });

  it('begin at the start and end at the end when these are inside', () => {
    expect(coverSpans(east, [box(80, -40, 95, -20)])).toEqual([{ fromM: 0, toM: east.lengthM }]);
    const west = plainRing([-5_000, -5_000], [6_000, -5_000], [6_000, 5_000], [-5_000, 5_000]);
    expect(km(coverSpans(east, [west]))).toEqual([[0, 6]]);
  });

  it('are none outside, and none for rings that hold nothing', () => {
    expect(coverSpans(east, [box(10, 10, 20, 20)])).toEqual([]);
    expect(
      coverSpans(east, [
        [],
        [[88, -27]],
        [
          [88, -27],
          [89, -27],
        ],
      ]),
    ).toEqual([]);
    expect(coverSpans(east, [])).toEqual([]);
  });

  it('are one where two areas overlap or share a border, two where they leave a strip between', () => {
    const ring = (from: number, to: number) =>
      plainRing([from, -5_000], [to, -5_000], [to, 5_000], [from, 5_000]);
    expect(km(coverSpans(east, [ring(10_000, 20_000), ring(2_000, 12_000)]))).toEqual([[2, 20]]);
    expect(km(coverSpans(east, [ring(2_000, 10_000), ring(10_000, 20_000)]))).toEqual([[2, 20]]);
    expect(km(coverSpans(east, [ring(2_000, 10_000), ring(10_100, 20_000)]))).toEqual([
      [2, 10],
      [10.1, 20],
    ]);
  });

  it('take a route along the very edge as inside', () => {
    const along = routeThrough([
      [10, 0],
      [10.1, 0],
      [10.1, 0.1],
    ]);
    const [span, ...more] = coverSpans(along, [box(10.02, -1, 10.08, 0)]);
    expect(more).toEqual([]);
    expect(span!.fromM / along.lengthM).toBeCloseTo(0.1, 2);
    expect(span!.toM / along.lengthM).toBeCloseTo(0.4, 2);
  });

  it('begin at a corner that rounding has put beside the route', () => {
    const along = routeThrough([
      [10, 0],
      [10.1, 0],
    ]);
    const ring: Ring = [
      [10.02, 1e-16],
      [10.08, -1e-16],
      [10.08, 1],
      [10.02, 1],
    ];
    const [span, ...more] = coverSpans(along, [ring]);
    expect(more).toEqual([]);
    expect(span!.fromM / along.lengthM).toBeCloseTo(0.2, 6);
    expect(span!.toM / along.lengthM).toBeCloseTo(0.8, 6);
  });

  it('go over the 180th meridian, the area written as two, or on either turn', () => {
    const route = routeThrough([
      [179, -17],
      [-179, -17],
    ]);
    const whole = coverSpans(route, [box(179.5, -18, 180, -16), box(-180, -18, -179.5, -16)]);
    expect(whole).toHaveLength(1);
    expect(whole[0]!.fromM / route.lengthM).toBeCloseTo(0.25, 4);
    expect(whole[0]!.toM / route.lengthM).toBeCloseTo(0.75, 4);
    const back = routeThrough([
      [-179, -17],
      [179, -17],
    ]);
    expect(coverSpans(back, [box(-180, -90, 180, 90)])).toEqual([{ fromM: 0, toM: back.lengthM }]);
  });

  it('should be those that a sample of the route every few metres finds', () => {
    const place = fc.tuple(fc.integer({ min: -8_000, max: 8_000 }), fc.integer({ min: -8_000, max: 8_000 }));
    const ring = fc
      .array(place, { minLength: 3, maxLength: 9 })
      .map((corners) => corners.map(([x, y]) => onPlain(x, y)));
    const route = fc.uniqueArray(place, { minLength: 2, maxLength: 8, selector: String });
    fc.assert(
      fc.property(route, fc.array(ring, { minLength: 1, maxLength: 4 }), (corners, rings) => {
        const built = routeThrough(corners.map(([x, y]) => onPlain(x, y)));
        const spans = coverSpans(built, rings);
        spans.forEach((span, i) => {
          expect(span.toM).toBeGreaterThan(span.fromM);
          if (i > 0) expect(span.fromM).toBeGreaterThan(spans[i - 1]!.toM);
        });
        const SAMPLES = 500;
        const wrong: number[] = [];
        for (let i = 0; i <= SAMPLES; i += 1) {
          const atM = (built.lengthM * i) / SAMPLES;
          // The sample lies on the geodesic, the span on the straight line in degrees: not within half a metre of a crossing.
          if (spans.some(({ fromM, toM }) => Math.min(Math.abs(fromM - atM), Math.abs(toM - atM)) < 0.5))
            continue;
          const { lon, lat } = positionAt(built, atM);
          const nearEdge = rings.some((corners) =>
            [
              [0, 1e-6],
              [0, -1e-6],
              [1e-6, 0],
              [-1e-6, 0],
            ].some(([dx, dy]) => isIn(corners, lon + dx!, lat + dy!) !== isIn(corners, lon, lat)),
          );
          if (nearEdge) continue;
          const sampled = rings.some((corners) => isIn(corners, lon, lat));
          if (spans.some(({ fromM, toM }) => fromM <= atM && atM <= toM) !== sampled) wrong.push(atM);
        }
        expect(wrong).toEqual([]);
      }),
      { numRuns: 60, seed: 9 },
    );
  });
});

describe('merging spans', () => {
  it('puts them in order, joins what touches, leaves out what is empty', () => {
    const spans = [
      { fromM: 30, toM: 40 },
      { fromM: 0, toM: 10 },
      { fromM: 20, toM: 20 },
      { fromM: 10, toM: 15 },
      { fromM: 32, toM: 35 },
    ];
    expect(mergeSpans(spans)).toEqual([
      { fromM: 0, toM: 15 },
      { fromM: 30, toM: 40 },
    ]);
  });
});
