import { Value } from 'typebox/value';
import { describe, expect, test } from 'vitest';
import { Analysis } from '../../../server/contract/analysis.ts';
import { analyse } from '../../../server/core/analyse/analyse.ts';
import type { RouteDocument } from '../../../server/core/input/sources.ts';
import {
  analysisOf,
  DIESEL,
  documentOf,
  equatorDocument,
  equatorLon,
  inputOf,
  pointFeature,
  TAP,
} from '../../helpers/analyse-input.ts';

describe("the design's worked example through the one entry point", () => {
  const analysis = analysisOf({ features: [pointFeature('node/1', 640, DIESEL, 2)] });

  test('the point is passed at km 640, 2 km off, 2.6 km of detour', () => {
    const [passing] = analysis.passings;
    expect(passing).toMatchObject({ id: 'node/1', commodity: 'fuel', evidence: 'stated', counts: true });
    expect(passing!.atKm).toBeCloseTo(640, 3);
    expect(passing!.offRouteKm).toBeCloseTo(2, 4);
    expect(passing!.detourKm).toBeCloseTo(2.6, 4);
  });

  test('its gaps have the figures of the design to a millimetre of route', () => {
    const [first, second] = analysis.fuel.gaps;
    expect(first).toMatchObject({ verdict: 'enough', extraCans: 0, weakest: 'stated' });
    expect(first!.needL).toBeCloseTo(109.242, 4);
    expect(first!.marginL).toBeCloseTo(0.758, 4);
    expect(first!.turnBackKm).toBeCloseTo(323.529, 3);
    expect(second).toMatchObject({ verdict: 'into-reserve', extraCans: 1 });
    expect(second!.needL).toBeCloseTo(119.442, 4);
    expect(second!.marginL).toBeCloseTo(-9.442, 4);
    expect(second!.turnBackKm).toBeCloseTo(960.929, 3);
  });

  test('the whole answer fits the contract', () => {
    expect([...Value.Errors(Analysis, analysis)]).toEqual([]);
  });

  test('the longest gap is the second for fuel, the only one for water', () => {
    expect(analysis.fuel.longest).toBe(1);
    expect(analysis.water.gaps).toHaveLength(1);
    expect(analysis.water.gaps[0]!.verdict).toBe('short');
  });
});

describe('start and end', () => {
  const features = [pointFeature('node/1', 300, DIESEL), pointFeature('node/2', 300, TAP)];
  const codes = (trip: Parameters<typeof analysisOf>[0]) => analysisOf(trip).cautions.map((one) => one.code);

  test('what was not told is reckoned with a caution each', () => {
    const trip = { allowancePercent: 0 };
    const analysis = analysisOf({ document: equatorDocument(600), features, trip });
    expect(analysis.cautions.filter((one) => one.code === 'start-assumed-full')).toHaveLength(2);
    expect(analysis.cautions.filter((one) => one.code === 'onward-unknown')).toHaveLength(1);
    expect(analysis.fuel.gaps.map((gap) => gap.verdict)).toEqual(['enough', 'unknown']);
    expect(analysis.water.gaps.at(-1)!.verdict).toBe('unknown');
  });

  test('what was told takes the cautions away', () => {
    expect(codes({ document: equatorDocument(600), features })).toEqual([]);
  });

  test.each([
    [{ fuelLitres: 60 }, 60],
    [{ fuelLitres: 130 }, 127],
    [{ fuelKmSinceFill: 100 }, 110],
    [{ fuelKmSinceFill: 5000 }, 0],
  ])('%j aboard leave the start with %d l', (aboard, litres) => {
    const trip = { ...inputOf().trip, aboard };
    expect(analysisOf({ document: equatorDocument(600), trip }).fuel.gaps[0]!.departL).toBeCloseTo(litres, 9);
  });

  test('days since the last fill are charged at the high rate', () => {
    const trip = { ...inputOf().trip, aboard: { waterDaysSinceFill: 1.5 } };
    expect(analysisOf({ document: equatorDocument(100), trip }).water.gaps[0]!.departL).toBeCloseTo(
      70 - 27,
      9,
    );
  });

  test('waypoints at the ends lend the edges their names', () => {
    const waypoint = (name: string, km: number) => ({
      lon: equatorLon(km),
      lat: 0,
      ele: null,
      name,
      symbol: null,
      type: null,
      comment: null,
      description: null,
      time: null,
    });
    const document = { ...equatorDocument(100), waypoints: [waypoint('Here', 0.2), waypoint('There', 99.5)] };
    const [gap] = analysisOf({ document }).fuel.gaps;
    expect([gap!.from.name, gap!.to.name]).toEqual(['Here', 'There']);
  });
});

describe('cover', () => {
  const eastOf = (km: number) => ({
    commodity: 'fuel' as const,
    rings: [
      [
        [equatorLon(km), -1],
        [100, -1],
        [100, 1],
        [equatorLon(km), 1],
        [equatorLon(km), -1],
      ] as [number, number][],
    ],
    guessed: false,
    source: 'test',
  });

  test('of one commodity says nothing for the other', () => {
    const supplies = { extracts: [], features: [], cover: [eastOf(0)], skipped: [], cautions: [] };
    const analysis = analysisOf({ document: equatorDocument(200), supplies });
    expect(analysis.fuel.gaps[0]).toMatchObject({ verdict: 'enough', acrossNoData: false });
    expect(analysis.water.gaps[0]).toMatchObject({ verdict: 'enough', acrossNoData: true });
    expect(analysis.water.cover).toEqual([]);
  });

  test('that begins on the way leaves the rest as dry, with its place', () => {
    const supplies = { extracts: [], features: [], cover: [eastOf(900)], skipped: [], cautions: [] };
    const analysis = analysisOf({ supplies });
    expect(analysis.fuel.cover).toHaveLength(1);
    expect(analysis.fuel.cover[0]!.fromKm).toBeCloseTo(900, 2);
    expect(analysis.fuel.gaps[0]!.verdict).toBe('unknown');
    const caution = analysis.cautions.find((one) => one.code === 'no-cover' && one.text.includes('fuel'));
    expect(caution!.toKm).toBeCloseTo(900, 2);
  });
});

describe('rescues of a short gap', () => {
  const features = [
    pointFeature('node/far', 500, DIESEL, 40),
    pointFeature('node/shut', 450, { 'disused:amenity': 'fuel' }),
    pointFeature('node/too-far', 400, DIESEL, 60),
  ];

  test('are points off the corridor up to 50 km and points that do not count, with why', () => {
    const [gap] = analysisOf({ features }).fuel.gaps;
    expect(gap!.verdict).toBe('short');
    expect(gap!.rescue.map((one) => one.id)).toEqual(['node/far', 'node/shut']);
    expect(gap!.rescue[0]!.detourKm).toBeCloseTo(40 * 1.3, 2);
    expect(gap!.rescue[1]!.reasons.length).toBeGreaterThan(0);
  });

  test('are sought to 50 km off the route, no less and no more', () => {
    const [gap] = analysisOf({
      features: [pointFeature('node/in', 500, DIESEL, 49.9), pointFeature('node/out', 600, DIESEL, 50.1)],
    }).fuel.gaps;
    expect(gap!.rescue.map((one) => one.id)).toEqual(['node/in']);
  });

  test('are those beside the gap itself, not beside another', () => {
    // Supplied at km 400: the gap before is long enough, the one after is short.
    const [before, after] = analysisOf({
      features: [
        pointFeature('node/here', 400, DIESEL),
        pointFeature('node/before', 200, DIESEL, 30),
        pointFeature('node/after', 900, DIESEL, 30),
      ],
    }).fuel.gaps;
    expect(before!.verdict).toBe('enough');
    expect(after!.verdict).toBe('short');
    expect(after!.rescue.map((one) => one.id)).toEqual(['node/after']);
  });

  test('are not listed for a gap that is not short', () => {
    const [gap] = analysisOf({ features, document: equatorDocument(520) }).fuel.gaps;
    expect(gap!.rescue).toEqual([]);
  });
});

describe('camps, stays and nights', () => {
  const camp = (km: number, offLat = 0) => ({ lon: equatorLon(km), lat: offLat, name: `camp ${km}` });

  test('a camp adds the trip’s nights a camp to its gap, one by default', () => {
    const [gap] = analysisOf({ document: equatorDocument(245), camps: [camp(100)] }).water.gaps;
    // On the morning after it is 24 h, then 145 km at 35 km/h.
    expect(gap!.days).toBeCloseTo((24 + 145 / 35) / 24, 6);
    const twoNights = { ...inputOf().trip, campDays: 2 };
    const [rested] = analysisOf({ document: equatorDocument(245), camps: [camp(100)], trip: twoNights }).water
      .gaps;
    expect(rested!.days).toBeCloseTo((48 + 145 / 35) / 24, 6);
    // A camp is where a night is spent: of no days it is one night.
    const none = { ...inputOf().trip, campDays: 0 };
    const [night] = analysisOf({ document: equatorDocument(245), camps: [camp(100)], trip: none }).water.gaps;
    expect(night!.days).toBeCloseTo((24 + 145 / 35) / 24, 6);
    const [through] = analysisOf({ document: equatorDocument(245) }).water.gaps;
    expect(through!.days).toBeCloseTo(245 / 35 / 24, 6);
  });

  test('a camp outside the corridor is left out with a caution', () => {
    const analysis = analysisOf({ document: equatorDocument(245), camps: [camp(100, 1)] });
    expect(analysis.cautions.map((one) => one.code)).toContain('camp-off-route');
    expect(analysis.nights).toEqual([]);
  });

  test('nights are at the camps and where a day of the slow pace ends', () => {
    const nights = analysisOf({ document: equatorDocument(700), camps: [camp(100)] }).nights;
    expect(nights.map((night) => night.from)).toEqual(['camp', 'pace', 'pace']);
    expect(nights[1]!.atKm).toBeCloseTo(345, 3);
    expect(nights[2]!.atKm).toBeCloseTo(590, 3);
  });

  test('a stay at or past the end is charged to the last gap', () => {
    const trip = { ...inputOf().trip, stays: [{ atKm: 500, days: 2 }] };
    const analysis = analysisOf({ document: equatorDocument(245), trip });
    // 7 h of driving and two whole days.
    expect(analysis.water.gaps[0]!.days).toBeCloseTo(2 + 7 / 24, 6);
    expect(analysis.cautions.map((one) => one.code)).toContain('stay-off-route');
  });
});

describe('purity', () => {
  test('a frozen input is analysed, twice alike', () => {
    const freeze = <T>(value: T): T => {
      if (ArrayBuffer.isView(value) || typeof value !== 'object' || value === null) return value;
      for (const part of Object.values(value)) freeze(part);
      return Object.freeze(value);
    };
    const input = freeze(inputOf({ features: [pointFeature('node/1', 640, DIESEL, 2)] }));
    expect(analyse(input)).toEqual(analyse(input));
    expect(analyse(input)).toEqual(analyse(structuredClone(input)));
  });
});

describe('cautions of the route', () => {
  test('those of its file and of its line are told once each', () => {
    const document: RouteDocument = {
      ...documentOf([
        [
          [0, 0],
          [0.01, 0],
        ],
        [
          [0.012, 0],
          [0.02, 0],
        ],
      ]),
      cautions: [{ code: 'gpx-old', facts: { count: 1, line: 2 } }],
    };
    const codes = analysisOf({ document }).cautions.map(({ code }) => code);
    expect(codes.slice(0, 2)).toEqual(['gpx-old', 'bridge']);
    expect(codes).toEqual([...new Set(codes)]);
  });
});

describe('a route that is a sketch', () => {
  test('leaves its gaps unknown at best and counts its straight lines 1.3 times', () => {
    const document = documentOf([
      [
        [0, 0],
        [equatorLon(100), 0],
      ],
    ]);
    const analysis = analysisOf({ document });
    expect(analysis.fuel.gaps[0]!.verdict).toBe('unknown');
    expect(analysis.fuel.gaps[0]!.wayKm).toBeCloseTo(130, 3);
    expect(analysis.route.longestStepKm).toBeCloseTo(100, 3);
    expect(analysis.route.lengthKm).toBeCloseTo(100, 3);
  });
});

describe('the day for which supplies are judged', () => {
  const seasonal = pointFeature('node/1', 50, { ...TAP, seasonal: 'summer' });
  const old = { ...pointFeature('node/2', 50, DIESEL), editedAt: '2013-04-01T00:00:00Z' };
  const evidence = (features: Parameters<typeof analysisOf>[0], trip: object, today: string) =>
    analysisOf({ ...features, document: equatorDocument(100), trip, today }).passings.map((one) => [
      one.evidence,
      one.counts,
    ]);

  test('a season is judged for the departure only: without one it is doubtful, whatever today is', () => {
    expect(evidence({ features: [seasonal] }, { departure: '2026-07-01' }, '2026-01-01')).toEqual([
      ['stated', true],
    ]);
    expect(evidence({ features: [seasonal] }, {}, '2026-07-01')).toEqual([['doubtful', false]]);
  });

  test('the age of tags is judged for the departure, or today where there is none', () => {
    expect(evidence({ features: [old] }, { departure: '2015-07-01' }, '2026-07-01')).toEqual([
      ['stated', true],
    ]);
    expect(evidence({ features: [old] }, {}, '2026-07-01')).toEqual([['implied', true]]);
  });
});
