import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Analysis } from '../../../server/contract/analysis.ts';
import type { MappedFeature, Surrounding, SurroundingKind } from '../../../server/core/input/sources.ts';
import { Between } from '../../../server/core/surroundings/between.ts';
import { reachOf } from '../../../server/core/surroundings/reach.ts';
import { RoadMap, RoadMarks } from '../../../server/core/surroundings/road-marks.ts';
import {
  analysisOf,
  DIESEL,
  documentOf,
  equatorLon,
  inputOf,
  pointFeature,
} from '../../helpers/analyse-input.ts';
import { routeThrough } from '../route/lines.ts';

/** Metres of one degree of latitude at the equator, WGS 84 (check-values G4). */
const lat = (m: number): number => m / 110_574.276;
const lon = (km: number): number => equatorLon(km);

/** A line through places, each km along the equator and metres north of it. */
const lineOf = (what: SurroundingKind, ...places: [km: number, northM: number][]): Surrounding => ({
  id: 'way/1',
  what,
  name: null,
  lines: [Float64Array.from(places.flatMap(([km, northM]) => [lon(km), lat(northM)]))],
});
/** Along the equator, a vertex every km: as much of it as these places need. */
const NEAR_500 = documentOf([
  Array.from({ length: 41 }, (_, index): [number, number] => [lon(480 + index), 0]),
]);
const withGround = (features: MappedFeature[], objects: readonly Surrounding[], roads = []): Analysis =>
  analysisOf({
    document: NEAR_500,
    supplies: { ...inputOf({ features }).supplies, surroundings: { objects, roads } },
  });

const RANK = { doubtful: 0, implied: 1, stated: 2, confirmed: 3 } as const;
const station = (offM: number) => pointFeature('node/1', 500, DIESEL, offM / 1000);
const passingOf = (analysis: Analysis) => analysis.passings.find(({ id }) => id === 'node/1');

const anyOff = fc.integer({ min: 50, max: 4900 }).chain((m) => fc.constantFrom(m, -m));
const anyBarrier = fc.constantFrom<SurroundingKind[]>('river', 'canal', 'railway', 'coast', 'border');

describe('what lies between', () => {
  it('never raises the evidence, takes it to doubt where the straight way crosses it, and gives it back when gone', {
    tags: 'slow',
  }, () => {
    fc.assert(
      fc.property(
        anyOff,
        anyBarrier,
        anyOff,
        fc.integer({ min: -900, max: 900 }),
        (offM, what, barrierM, slopeM) => {
          const bare = passingOf(withGround([station(offM)], []));
          const barrier = lineOf(what, [496, barrierM - slopeM], [504, barrierM + slopeM]);
          const barred = passingOf(withGround([station(offM)], [barrier]));
          expect(bare?.evidence).toBe('stated');
          expect(RANK[barred?.evidence ?? 'confirmed']).toBeLessThanOrEqual(RANK.stated);
          // At km 500 the barrier is half way between its ends; the straight way runs due north or south there.
          const isBetween = Math.sign(barrierM) === Math.sign(offM) && Math.abs(barrierM) < Math.abs(offM);
          // A route that crosses it so near is a way across itself.
          const routeCrosses = Math.abs(barrierM) <= Math.abs(slopeM) && Math.abs(barrierM) < 350;
          if (!routeCrosses && Math.abs(Math.abs(barrierM) - Math.abs(offM)) > 1) {
            expect(barred?.evidence).toBe(isBetween ? 'doubtful' : 'stated');
            expect(barred?.counts).toBe(!isBetween);
          }
          expect(passingOf(withGround([station(offM)], []))).toEqual(bare);
        },
      ),
      { numRuns: 150 },
    );
  });

  it('is judged for each passing: on the way back, on the other bank, the same station counts', () => {
    // Out along the equator, back two km to the north of it; the river runs between, the station by the way back.
    const document = documentOf([
      [
        ...Array.from({ length: 101 }, (_, km): [number, number] => [lon(km), 0]),
        ...Array.from({ length: 101 }, (_, km): [number, number] => [lon(100 - km), lat(2000)]),
      ],
    ]);
    const features = [pointFeature('node/1', 50, DIESEL, 1.5)];
    const river = lineOf('river', [20, 1000], [80, 1000]);
    const { passings } = analysisOf({
      document,
      supplies: { ...inputOf({ features }).supplies, surroundings: { objects: [river], roads: [] } },
    });
    expect(passings.map(({ evidence, counts }) => [evidence, counts])).toEqual([
      ['doubtful', false],
      ['stated', true],
    ]);
    expect(passings[0]?.reasons.map(({ code }) => code)).toEqual(['no-way-across', 'evidence-below']);
  });

  it('does not touch what the user confirmed or marked', () => {
    const river = lineOf('river', [490, 500], [510, 500]);
    const own = { ...station(1000), id: 'own/depot' };
    expect(withGround([own], [river]).passings[0]?.counts).toBe(true);
    const input = inputOf({ features: [station(1000)] });
    const confirmed = analysisOf({
      supplies: { ...input.supplies, surroundings: { objects: [river], roads: [] } },
      trip: {
        ...input.trip,
        confirmations: [{ id: 'node/1', commodity: 'fuel', works: true, on: '2026-05-01' }],
      },
    });
    expect(confirmed.passings[0]).toMatchObject({ evidence: 'confirmed', counts: true });
  });

  it('is found on both sides of the 180th meridian, whichever way longitudes are written', () => {
    const river: Surrounding = {
      id: 'way/1',
      what: 'river',
      name: null,
      lines: [Float64Array.of(179.99, 0.01, -179.99, 0.01)],
    };
    const between = new Between({ objects: [river], roads: [] });
    const route = routeThrough([
      [179.9, 0],
      [180.1, 0],
    ]);
    for (const at of [179.995, -179.995, 180.005])
      expect(
        between.barriers(route, { lon: at, lat: 0 }, { lon: at > 180 ? at - 360 : at, lat: 0.02 }),
      ).toEqual([{ what: 'river', name: null }]);
    expect(between.barriers(route, { lon: 179.98, lat: 0 }, { lon: 179.98, lat: 0.02 })).toEqual([]);
  });
});

describe('a route that crosses what lies between', () => {
  const route = routeThrough([
    [lon(0), 0],
    [lon(20), 0],
  ]);
  const barriersFrom = (...river: [km: number, northM: number][]) =>
    new Between({ objects: [lineOf('river', ...river)], roads: [] }).barriers(
      route,
      { lon: lon(10.1), lat: 0 },
      { lon: lon(10.1), lat: lat(400) },
    );

  it('is a way across itself where it does so near by', () => {
    expect(barriersFrom([9.8, -200], [10.4, 400])).toEqual([]);
    expect(barriersFrom([10.02, 20], [10.4, 400])).toEqual([{ what: 'river', name: null }]);
  });

  it('is none where it does so too far off', () => {
    expect(barriersFrom([9, -10], [9.1, 100], [10.4, 100])).toEqual([{ what: 'river', name: null }]);
  });
});

describe('roads near a place', () => {
  const route = routeThrough([
    [10, 45],
    [10.2, 45],
  ]);
  /** Metres of a degree of latitude at 45° N, WGS 84. */
  const NORTH_M = 111_132;
  const mapOf = (northM: number, slope: number): RoadMap => {
    const marks = RoadMarks.of(reachOf(route));
    marks.markLine([
      { lon: 9.99, lat: 45 + northM / NORTH_M - slope },
      { lon: 10.21, lat: 45 + northM / NORTH_M + slope },
    ]);
    return new RoadMap([marks.drawn()]);
  };

  it('are seen within 120 m for sure, and not beyond 300 m', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -3000, max: 3000 }),
        fc.integer({ min: -600, max: 600 }),
        fc.double({ min: 10.02, max: 10.18, noNaN: true }),
        (roadM, offM, placeLon) => {
          const isNear = mapOf(roadM, 0).isRoadNear({ lon: placeLon, lat: 45 + (roadM + offM) / NORTH_M });
          if (Math.abs(offM) <= 120) expect(isNear).toBe(true);
          if (Math.abs(offM) > 300) expect(isNear).toBe(false);
        },
      ),
      { numRuns: 300 },
    );
  });

  it('are seen as near to the east as to the north, also far from the equator', () => {
    const north = routeThrough([
      [10, 70],
      [10.2, 70],
    ]);
    const marks = RoadMarks.of(reachOf(north));
    marks.markStep(10.1, 69.99, 10.1, 70.01);
    const map = new RoadMap([marks.drawn()]);
    // Metres of a degree of longitude at 70° N, WGS 84.
    const isNear = (eastM: number) => map.isRoadNear({ lon: 10.1 + eastM / 38_188, lat: 70 });
    expect([-120, -60, 60, 120].map(isNear)).toEqual([true, true, true, true]);
    expect([-300, 300].map(isNear)).toEqual([false, false]);
  });

  it('count in the cells around where too much is mapped to draw all of them', () => {
    const marks = RoadMarks.of(reachOf(route));
    marks.mark(10.1, 45);
    const place = { lon: 10.1, lat: 45 + 500 / NORTH_M };
    expect(new RoadMap([marks.drawn()]).isRoadNear(place)).toBe(false);
    const { cells } = marks.drawn();
    marks.crowd(cells[0] ?? -1);
    expect(new RoadMap([marks.drawn()]).isRoadNear(place)).toBe(true);
  });
});
