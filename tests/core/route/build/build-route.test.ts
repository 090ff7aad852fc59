import fc from 'fast-check';
import geodesic from 'geographiclib-geodesic';
import { describe, expect, it } from 'vitest';
import { routeProblem } from '../../../../server/app/route-problem.ts';
import { toContract } from '../../../../server/app/to-contract.ts';
import type { Caution as CautionTold } from '../../../../server/contract/common.ts';
import { LONGEST_STEP_M } from '../../../../server/core/geodesy/step.ts';
import { problemLine } from '../../../../server/core/input/problem.ts';
import type { Caution } from '../../../../server/core/phrases/cautions.ts';
import { buildRoute } from '../../../../server/core/route/build/build-route.ts';
import { LONG_BRIDGE_M } from '../../../../server/core/route/build/measurement.ts';
import type { RouteLine } from '../../../../server/core/route/route-line.ts';
import {
  type Corner,
  documentOf,
  onPlain,
  partOf,
  routeOfDocument,
  routeOfSegments,
  routeThrough,
} from '../lines.ts';

const wgs84 = geodesic.Geodesic.WGS84;
const toldCautions = (route: RouteLine): CautionTold[] => toContract(route.cautions);

const lengthBy = (points: readonly Corner[]) =>
  points
    .slice(1)
    .reduce((sum, [lon, lat], i) => sum + wgs84.Inverse(points[i]![1], points[i]![0], lat, lon).s12!, 0);

const refusalOf = (document: ReturnType<typeof documentOf>, part: 'all' | number | string = 'all') => {
  const built = buildRoute(document, { part, sparseStepM: 5_000 });
  if (built.ok) throw new Error('was not refused');
  return routeProblem(built.refusal, null);
};

describe('the measured line', () => {
  // Lines north-south, east-west and oblique at several latitudes, with steps short and long.
  const LINES = [-60, -27, 0, 12, 45, 75].flatMap((lat) =>
    [0, 90, 33, 245].flatMap((azimuth) =>
      [700, 15_000, 100_000].map((step) => [lat, azimuth, step] as const),
    ),
  );
  it.each(LINES)(
    'from %d° at azimuth %d in steps of %d m is as long as GeographicLib says',
    (lat, azimuth, step) => {
      const points: Corner[] = [0, 1, 2, 3].map((k) => {
        const { lon2, lat2 } = wgs84.Direct(lat, 88, azimuth, k * step);
        return [lon2!, lat2!];
      });
      const route = routeThrough(points);
      expect(Math.abs(route.lengthM / (3 * step) - 1)).toBeLessThan(1e-9);
      expect(route.vertices).toBe(4);
      expect(Math.abs(route.longestStepM - step)).toBeLessThan(1e-3);
    },
  );

  it('should be densified to 2 km, end at its length, rise all the way, and keep the length of its points', {
    tags: 'slow',
  }, () => {
    const point = fc.tuple(fc.integer({ min: -500, max: 500 }), fc.integer({ min: -500, max: 500 }));
    fc.assert(
      fc.property(fc.uniqueArray(point, { minLength: 2, maxLength: 30, selector: String }), (places) => {
        const points = places.map(([x, y]) => onPlain(x * 97, y * 97));
        const route = routeThrough(points);
        expect(route.atM[0]).toBe(0);
        expect(route.atM.at(-1)).toBe(route.lengthM);
        for (let i = 1; i < route.atM.length; i += 1) {
          const step = route.atM[i]! - route.atM[i - 1]!;
          expect(step > 0 && step <= LONGEST_STEP_M).toBe(true);
        }
        expect(Math.abs(route.lengthM / lengthBy(points) - 1)).toBeLessThan(1e-9);
        expect(route.unsought).toHaveLength(route.atM.length - 1);
      }),
      { numRuns: 100, seed: 3 },
    );
  });

  it('crosses the 180th meridian (check value G15) in either direction', () => {
    for (const [from, to] of [
      [179.9, -179.9],
      [-179.9, 179.9],
    ] as const) {
      const route = routeThrough([
        [from, -17],
        [to, -17],
      ]);
      expect(Math.abs(route.lengthM - 21_297.165)).toBeLessThan(0.001);
      expect(route.bbox[0]).toBeCloseTo(179.9, 9);
      expect(route.bbox[2]).toBeCloseTo(-179.9, 9);
      for (let i = 1; i < route.lon.length; i += 1) {
        expect(Math.abs(route.lon[i]! - route.lon[i - 1]!)).toBeLessThan(1);
      }
    }
  });

  it('goes once round the globe without losing a step', () => {
    const points = [0, 90, 180, -90, 0].map((lon): Corner => [lon, 60]);
    const route = routeThrough(points);
    expect(Math.abs(route.lengthM / lengthBy(points) - 1)).toBeLessThan(1e-8);
    expect(Math.abs(route.lon.at(-1)!)).toBeCloseTo(360, 9);
    expect(route.bbox[0]).toBe(-180);
    expect(route.bbox[2]).toBe(180);
  });

  it('counts repeated points but gives them no length', () => {
    const [a, b] = [onPlain(0, 0), onPlain(800, 300)];
    const route = routeThrough([a, a, b, b, b]);
    expect(route.vertices).toBe(5);
    expect(route.lengthM).toBe(routeThrough([a, b]).lengthM);
    expect(route.cautions).toEqual([]);
  });
});

describe('bridges', () => {
  const first = [onPlain(0, 0), onPlain(3_000, 0)];

  it('says where a short jump is and how long, and counts it in the length', () => {
    const route = routeOfSegments(first, [onPlain(3_600, 0), onPlain(5_000, 0)]);
    expect(route.lengthM).toBeCloseTo(5_000, 0);
    expect(route.cautions).toHaveLength(1);
    const [caution] = toldCautions(route);
    expect(caution).toMatchObject({ code: 'bridge' });
    expect(caution!.fromKm).toBeCloseTo(3, 3);
    expect(caution!.toKm).toBeCloseTo(3.6, 3);
    expect(caution!.text).toContain('km 3.0');
    expect(caution!.text).toContain('600 m');
    expect(caution!.text).not.toContain('no supply is sought');
    expect(route.sketchy).toEqual([]);
    expect(route.unsought.includes(1)).toBe(false);
    expect(route.longestStepM).toBeCloseTo(3_000, 0);
  });

  it('does not call a jump of centimetres one of 0 m', () => {
    const route = routeOfSegments(first, [onPlain(3_000.2, 0), onPlain(5_000, 0)]);
    expect(toldCautions(route)[0]!.text).toContain('a jump of less than a metre');
  });

  it('marks a jump over 1 km as a sketch on which nothing is sought', () => {
    const route = routeOfSegments(first, [onPlain(9_000, 0), onPlain(10_000, 0)]);
    expect(route.sketchy).toHaveLength(1);
    const [span] = route.sketchy;
    expect(span!.kind).toBe('bridge');
    expect(span!.fromM).toBeCloseTo(3_000, 0);
    expect(span!.toM).toBeCloseTo(9_000, 0);
    for (let i = 0; i < route.unsought.length; i += 1) {
      const onBridge = route.atM[i]! >= span!.fromM && route.atM[i + 1]! <= span!.toM;
      expect(route.unsought[i]).toBe(onBridge ? 1 : 0);
    }
    // A bridge is no step: neither the longest one nor a sparse one.
    expect(route.longestStepM).toBeCloseTo(3_000, 0);
    expect(route.cautions.map((caution) => caution.code)).toEqual(['bridge']);
    expect(toldCautions(route)[0]!.text).toContain('on which no supply is sought');
  });

  it('draws the line at 1 km', () => {
    const at = (jumpM: number) =>
      routeOfSegments(first, [onPlain(3_000 + jumpM, 0), onPlain(7_000, 0)]).sketchy.length;
    expect(LONG_BRIDGE_M).toBe(1_000);
    expect(at(999)).toBe(0);
    expect(at(1_001)).toBe(1);
  });

  it('says nothing where a segment begins at the place where the last one ends', () => {
    const route = routeOfSegments(first, [onPlain(3_000, 0), onPlain(5_000, 0)]);
    expect(route.cautions).toEqual([]);
  });

  it('bridges tracks as well, and passes over parts without points', () => {
    const route = routeOfDocument(
      documentOf([
        partOf([first], 'a'),
        partOf([[]], 'b'),
        partOf([[onPlain(3_300, 0), onPlain(4_000, 0)]], 'c'),
      ]),
    );
    expect(route.parts).toBe(2);
    expect(route.cautions.map((caution) => caution.code)).toEqual(['bridge']);
  });
});

describe('sparse steps', () => {
  it('names the longest, its place and how many there are, and joins neighbours into one sketch', () => {
    const xs = [0, 1_000, 8_000, 20_000, 21_000, 27_000, 28_000];
    const route = routeThrough(xs.map((x) => onPlain(x, 0)));
    expect(route.sketchy.map((span) => [span.kind, Math.round(span.fromM), Math.round(span.toM)])).toEqual([
      ['sparse', 1_000, 20_000],
      ['sparse', 21_000, 27_000],
    ]);
    expect(route.cautions).toHaveLength(1);
    const [caution] = toldCautions(route);
    expect(caution).toMatchObject({ code: 'sparse-steps' });
    expect(caution!.text).toContain('3 step(s)');
    expect(caution!.text).toContain('12.0 km');
    expect(caution!.fromKm).toBeCloseTo(8, 2);
    expect(caution!.toKm).toBeCloseTo(20, 2);
    expect(route.longestStepM).toBeCloseTo(12_000, 0);
    expect(route.unsought.includes(1)).toBe(false);
  });

  /** 3 km east, 20 km straight on in a direction, 3 km more in another. */
  const bent = (turnIn: number, turnOut: number) => {
    const to = (from: readonly [number, number], metres: number, degrees: number): [number, number] => [
      from[0] + metres * Math.cos((degrees * Math.PI) / 180),
      from[1] + metres * Math.sin((degrees * Math.PI) / 180),
    ];
    const second = to([3_000, 0], 20_000, turnIn);
    return routeThrough(
      [[0, 0] as const, [3_000, 0] as const, second, to(second, 3_000, turnIn + turnOut)].map(([x, y]) =>
        onPlain(x, y),
      ),
    );
  };

  it.each([
    [0, 0, 'sparse'],
    [44, 0, 'sparse'],
    [46, 0, 'via'],
    [-46, 0, 'via'],
    [0, 44, 'sparse'],
    [0, 46, 'via'],
    [0, 179, 'via'],
    [30, 30, 'sparse'],
  ])('that turn in by %i and out by %i degrees are of the kind %s', (turnIn, turnOut, kind) => {
    expect(bent(turnIn, turnOut).sketchy.map((span) => span.kind)).toEqual([kind]);
  });

  it('at the ends of the route, and beside a point that is there twice, turn by what the line turns', () => {
    const twice = routeThrough([onPlain(0, 0), onPlain(3_000, 0), onPlain(3_000, 0), onPlain(3_000, 20_000)]);
    expect(twice.sketchy.map((span) => span.kind)).toEqual(['via']);
    expect(routeThrough([onPlain(0, 0), onPlain(20_000, 0)]).sketchy.map(({ kind }) => kind)).toEqual([
      'sparse',
    ]);
  });

  it('goes by the limit that is asked for', () => {
    const document = documentOf([partOf([[onPlain(0, 0), onPlain(6_000, 0)]])]);
    expect(routeOfDocument(document, { sparseStepM: 5_000 }).sketchy).toHaveLength(1);
    expect(routeOfDocument(document, { sparseStepM: 7_000 }).sketchy).toHaveLength(0);
  });
});

describe('parts', () => {
  const east = partOf([[onPlain(0, 0), onPlain(1_000, 0)]], 'East');
  const north = partOf([[onPlain(1_000, 0), onPlain(1_000, 2_000)]], 'North');
  const plan = partOf([[onPlain(0, 0), onPlain(0, 4_000)]], 'Plan', 'route');
  const lengthOf = (part: 'all' | number | string, parts = [plan, east, north]) =>
    Math.round(routeOfDocument(documentOf(parts), { part }).lengthM);

  it('follows all tracks, and says that routes are left out', () => {
    const route = routeOfDocument(documentOf([plan, east, north], 'Trip'));
    expect(Math.round(route.lengthM)).toBe(3_000);
    expect(route.parts).toBe(2);
    expect(route.name).toBe('Trip');
    expect(route.cautions.map((caution) => caution.code)).toEqual(['routes-left-out']);
  });

  it('follows all routes when no track has a point', () => {
    expect(lengthOf('all', [plan])).toBe(4_000);
    expect(lengthOf('all', [plan, partOf([[]], 'empty')])).toBe(4_000);
  });

  it('takes one by number, tracks first, or by name', () => {
    expect([lengthOf(1), lengthOf(2), lengthOf(3)]).toEqual([1_000, 2_000, 4_000]);
    expect([lengthOf('North'), lengthOf(' plan '), lengthOf('2')]).toEqual([2_000, 4_000, 2_000]);
    expect(routeOfDocument(documentOf([plan, east], 'Trip'), { part: 'East' }).name).toBe('East');
  });

  it('refuses a part that is not there and lists what is', () => {
    for (const part of [0, 4, 1.5, 'West']) {
      const problem = refusalOf(documentOf([plan, east, north]), part);
      expect(problem.code).toBe('part-unknown');
      expect(problemLine(problem)).toContain('1 track "East", 2 track "North", 3 route "Plan"');
    }
  });

  it('refuses a name that several bear', () => {
    const problem = refusalOf(documentOf([east, partOf([[onPlain(5, 5)]], 'East')]), 'East');
    expect(problem).toMatchObject({ code: 'part-unknown', remedy: 'Give the number of the part' });
  });

  it('calls a route without any name unnamed', () => {
    expect(routeThrough([onPlain(0, 0), onPlain(1, 1)]).name).toBe('unnamed route');
  });

  it("keeps the document's own cautions", () => {
    const own: Caution = { code: 'gpx-old', facts: { count: 1, line: 2 } };
    const document = { ...documentOf([east]), cautions: [own] };
    expect(routeOfDocument(document).cautions).toEqual([own]);
  });
});

describe('what is no route', () => {
  it('has no points', () => {
    expect(refusalOf(documentOf([])).code).toBe('gpx-no-points');
    expect(refusalOf(documentOf([partOf([[]])]), 1).code).toBe('gpx-no-points');
  });

  it('has waypoints only, and the remedy says so', () => {
    const waypoint = { lon: 88, lat: -35, ele: null, name: null, symbol: null };
    const document = documentOf([]);
    document.waypoints.push({ ...waypoint, type: null, comment: null, description: null, time: null });
    expect(refusalOf(document)).toMatchObject({ code: 'gpx-no-points' });
    expect(refusalOf(document).remedy).toContain('Waypoints');
  });

  it('has a single point, or all at one place', () => {
    const place = onPlain(0, 0);
    expect(refusalOf(documentOf([partOf([[place]])])).code).toBe('gpx-one-point');
    expect(refusalOf(documentOf([partOf([[place, place], [place]])]))).toMatchObject({
      code: 'gpx-one-point',
      came: '3 points, all at one place',
    });
  });
});

describe('a line that is longer than any route', () => {
  const poles = (points: number): Corner[] =>
    Array.from({ length: points }, (_, index) => [(index * 7) % 180, index % 2 === 0 ? 80 : -80]);

  it('is refused as soon as that is known, however far apart its points are', () => {
    const started = performance.now();
    const problem = refusalOf(documentOf([partOf([poles(20_000)])]));
    expect(performance.now() - started).toBeLessThan(2_000);
    expect(problem).toMatchObject({ code: 'gpx-too-long', came: 'a line of more than 100000 km' });
  });

  it('is measured up to twice round the Earth', () => {
    const built = buildRoute(documentOf([partOf([poles(5)])]), { part: 'all', sparseStepM: 5_000 });
    expect(built.ok && built.value.lengthM).toBeGreaterThan(70_000_000);
  });
});
