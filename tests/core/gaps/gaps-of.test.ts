import { describe, expect, test } from 'vitest';
import { courseOf, EXAMPLE_RIG, endEdge, passingEdge, startEdge } from '../../helpers/course.ts';
import { gapsInKm } from '../../helpers/in-km.ts';

const FULL = 127;
const WATER_FULL = 70;

describe('the worked example of the design (design.md 3, "A gap\'s figures")', () => {
  const gaps = gapsInKm(courseOf(), [startEdge, passingEdge(640_000, 2600), endEdge(1_340_000)], FULL);

  test('gap 1 has a margin of 0.758 l and turns back at km 323.529', () => {
    expect(gaps[0]).toMatchObject({ lengthKm: 640, verdict: 'enough', extraL: 0, extraCans: 0 });
    expect(gaps[0]!.wayKm).toBeCloseTo(642.6, 9);
    expect(gaps[0]!.needL).toBeCloseTo(109.242, 9);
    expect(gaps[0]!.marginL).toBeCloseTo(0.758, 9);
    expect(gaps[0]!.turnBackKm).toBeCloseTo(323.529, 3);
  });

  test('gap 2 lacks 9.442 l, one can, and turns back at km 960.929', () => {
    expect(gaps[1]).toMatchObject({ lengthKm: 700, verdict: 'into-reserve', extraCans: 1 });
    expect(gaps[1]!.needL).toBeCloseTo(119.442, 9);
    expect(gaps[1]!.marginL).toBeCloseTo(-9.442, 9);
    expect(gaps[1]!.extraL).toBeCloseTo(9.442, 9);
    expect(gaps[1]!.turnBackKm).toBeCloseTo(960.929, 3);
  });
});

describe('what else a gap tells', () => {
  test('the weaker of its two ends is named; start and end are none', () => {
    const weak = { ...passingEdge(200_000), evidence: 'implied' as const };
    const gaps = gapsInKm(courseOf(), [startEdge, passingEdge(100_000), weak, endEdge(300_000)], FULL);
    expect(gaps.map((gap) => gap.weakest)).toEqual(['stated', 'implied', 'implied']);
    expect(gapsInKm(courseOf(), [startEdge, endEdge(300_000)], FULL)[0]!.weakest).toBeNull();
  });

  test('the terms shown add up to the figures', () => {
    const course = courseOf({
      allowanceFactor: 1.05,
      sketchy: [{ kind: 'bridge', fromM: 100_000, toM: 110_000 }],
      rigFile: { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, reserve: { km: 100, shareOfNeed: 0.1 } } },
      onward: { km: 30, hours: 0 },
    });
    for (const gap of gapsInKm(course, [startEdge, passingEdge(300_000, 1300), endEdge(600_000)], FULL)) {
      const sum = (terms: { value: number }[]) => terms.reduce((total, term) => total + term.value, 0);
      expect(sum(gap.working.wayKm)).toBeCloseTo(gap.wayKm, 9);
      expect(sum(gap.working.needL)).toBeCloseTo(gap.needL, 9);
      expect(sum(gap.working.reserveL)).toBeCloseTo(gap.reserveL, 9);
    }
  });

  test('straight lines where a road is meant count 1.3 times, and leave the gap unknown at best', () => {
    const course = courseOf({ sketchy: [{ kind: 'bridge', fromM: 10_000, toM: 20_000 }] });
    const [gap] = gapsInKm(course, [startEdge, endEdge(100_000)], FULL);
    expect(gap!.wayKm).toBeCloseTo(103, 9);
    expect(gap!.verdict).toBe('unknown');
    expect(gap!.acrossNoData).toBe(false);
  });

  test.each([
    ['few straight steps stand on their raised need', 'sparse', 20_000, 'enough', false],
    ['more than a fifth of straight steps leave it unknown', 'sparse', 20_001, 'unknown', true],
    ['one step to a chosen point leaves it unknown', 'via', 6_000, 'unknown', true],
    ['so does one jump', 'bridge', 2_000, 'unknown', true],
  ] as const)('of 100 km, %s', (_rule, kind, lengthM, verdict, leavesUnknown) => {
    const course = courseOf({ sketchy: [{ kind, fromM: 10_000, toM: 10_000 + lengthM }] });
    const [gap] = gapsInKm(course, [startEdge, endEdge(100_000)], FULL);
    expect(gap).toMatchObject({ verdict, doubt: { of: kind, fromKm: 10, leavesUnknown } });
    expect(gap!.wayKm).toBeCloseTo(100 + (0.3 * lengthM) / 1000, 9);
  });

  test('straight steps are summed over a gap, and the longest is named', () => {
    const step = (fromM: number, toM: number) => ({ kind: 'sparse' as const, fromM, toM });
    const course = courseOf({ sketchy: [step(0, 6_000), step(40_000, 48_000), step(90_000, 97_000)] });
    const [gap] = gapsInKm(course, [startEdge, endEdge(100_000)], FULL);
    expect(gap!.doubt).toEqual({ of: 'sparse', fromKm: 40, toKm: 48, leavesUnknown: true });
    const halves = gapsInKm(course, [startEdge, passingEdge(44_000), endEdge(100_000)], FULL);
    // 10 of 44 km and 11 of 56 km: more than a fifth, and less.
    expect(halves.map(({ verdict }) => verdict)).toEqual(['unknown', 'enough']);
    expect(halves.map(({ doubt }) => [doubt?.fromKm, doubt?.toKm])).toEqual([
      [0, 6],
      [90, 97],
    ]);
  });

  test('a straight line does not hide that a gap is short', () => {
    const course = courseOf({ sketchy: [{ kind: 'bridge', fromM: 10_000, toM: 20_000 }] });
    expect(gapsInKm(course, [startEdge, endEdge(900_000)], FULL)[0]!.verdict).toBe('short');
  });

  test('a closed stretch leaves each gap across it unknown at best, before any other doubt, and no other gap', () => {
    const sketchy = [{ kind: 'bridge' as const, fromM: 10_000, toM: 20_000 }];
    const course = { ...courseOf({ sketchy }), closed: [{ fromM: 90_000, toM: 110_000 }] };
    const edges = [startEdge, passingEdge(100_000), passingEdge(200_000), endEdge(300_000)];
    const gaps = gapsInKm(course, edges, FULL);
    expect(gaps.map(({ verdict }) => verdict)).toEqual(['unknown', 'unknown', 'enough']);
    expect(gaps.map(({ doubt }) => doubt)).toEqual([
      { of: 'closed', fromKm: 90, toKm: 100, leavesUnknown: true },
      { of: 'closed', fromKm: 100, toKm: 110, leavesUnknown: true },
      null,
    ]);
    expect(gapsInKm(course, [startEdge, endEdge(900_000)], FULL)[0]!.verdict).toBe('short');
  });

  test('the last gap is unknown at best while nobody said how far the next supply is', () => {
    const edges = [startEdge, passingEdge(100_000), endEdge(200_000)];
    const gaps = gapsInKm(courseOf({ onward: null }), edges, FULL);
    expect(gaps.map((gap) => gap.verdict)).toEqual(['enough', 'unknown']);
  });

  test('the way past the end is charged to the last gap only', () => {
    const edges = [startEdge, passingEdge(100_000), endEdge(200_000)];
    const gaps = gapsInKm(courseOf({ onward: { km: 80, hours: 0 } }), edges, FULL);
    expect(gaps.map((gap) => Math.round(gap.wayKm * 1e9) / 1e9)).toEqual([100, 180]);
    expect(gaps.map((gap) => gap.lengthKm)).toEqual([100, 100]);
  });

  test('what is aboard at the start goes for the first gap, full tanks for the others', () => {
    const gaps = gapsInKm(courseOf(), [startEdge, passingEdge(100_000), endEdge(200_000)], 30);
    expect(gaps.map((gap) => gap.departL)).toEqual([30, FULL]);
    expect(gaps[0]!.verdict).toBe('into-reserve');
  });

  test('water is charged for the time that passes, not for every day begun', () => {
    const needOver = (lengthM: number) =>
      gapsInKm(courseOf({ commodity: 'water' }), [startEdge, endEdge(lengthM)], WATER_FULL)[0]!.needL;
    // 245 km a day, 18 l a day: a day and a kilometre, a day, and 10 km, which are minutes.
    expect(needOver(246_000)).toBeCloseTo(18 + 18 / 245, 9);
    expect(needOver(245_000)).toBeCloseTo(18, 9);
    expect(needOver(10_000)).toBeCloseTo((18 * 10) / 245, 9);
  });

  test('a stay adds its days to the gap it stands in and to no other', () => {
    const course = courseOf({ commodity: 'water', stays: [{ atM: 100_000, days: 2 }] });
    const gaps = gapsInKm(course, [startEdge, passingEdge(100_000), endEdge(200_000)], WATER_FULL);
    const drivingL = (18 * 100) / 245;
    expect(gaps[0]!.needL).toBeCloseTo(drivingL, 9);
    expect(gaps[1]!.needL).toBeCloseTo(36 + drivingL, 9);
  });

  test('the hours past the end count where the km do not explain them', () => {
    const course = courseOf({ commodity: 'water', onward: { km: 35, hours: 8 } });
    // 35 km are one hour at the slow pace; 8 h of 7 h a day are 8/7 days.
    expect(gapsInKm(course, [startEdge, endEdge(24_500)], WATER_FULL)[0]!.days).toBeCloseTo(0.1 + 8 / 7, 9);
  });

  test('a reserve of a fraction is of what the tanks give', () => {
    const rigFile = { ...EXAMPLE_RIG, fuel: { ...EXAMPLE_RIG.fuel, reserve: { fraction: 1 / 3 } } };
    const [gap] = gapsInKm(courseOf({ rigFile }), [startEdge, endEdge(100_000)], FULL);
    expect(gap!.reserveL).toBeCloseTo(FULL / 3, 9);
  });
});

describe('stretches without cover', () => {
  const uncovered = [{ fromM: 400_000, toM: 500_000 }];

  test('a gap that holds in spite of them is enough, and says so', () => {
    const [gap] = gapsInKm(courseOf({ uncovered }), [startEdge, endEdge(600_000)], FULL);
    expect(gap).toMatchObject({ verdict: 'enough', acrossNoData: true });
  });

  test('a gap that runs dry beyond the first of them is unknown', () => {
    const [gap] = gapsInKm(courseOf({ uncovered }), [startEdge, endEdge(900_000)], FULL);
    expect(gap).toMatchObject({ verdict: 'unknown', acrossNoData: true });
  });

  test('a gap that runs dry before the first of them is short', () => {
    const late = [{ fromM: 800_000, toM: 850_000 }];
    const [gap] = gapsInKm(courseOf({ uncovered: late }), [startEdge, endEdge(900_000)], FULL);
    expect(gap).toMatchObject({ verdict: 'short', acrossNoData: true });
    expect(gap!.runsDryKm).toBeCloseTo(127 / 0.17, 6);
  });

  test('one that only touches the gap at its edge is not in it', () => {
    const [gap] = gapsInKm(courseOf({ uncovered }), [startEdge, endEdge(400_000)], FULL);
    expect(gap!.acrossNoData).toBe(false);
  });
});

describe('if the supply ahead fails', () => {
  test('the detour to it is driven twice before going on', () => {
    // 300 + 2 × 10 + 300 km of way: 105.4 l of 127 l, reserve 17 l.
    const edges = [startEdge, passingEdge(300_000, 10_000), passingEdge(600_000), endEdge(700_000)];
    const [first] = gapsInKm(courseOf(), edges, FULL);
    expect(first!.ifToFails!.marginL).toBeCloseTo(127 - 620 * 0.17 - 17, 9);
    expect(first!.ifToFails).toMatchObject({ verdict: 'enough', canReturn: true });
  });

  test('there is no return when out and back take more than is aboard', () => {
    const edges = [startEdge, passingEdge(400_000), passingEdge(600_000), endEdge(700_000)];
    expect(gapsInKm(courseOf(), edges, FULL)[0]!.ifToFails).toMatchObject({ canReturn: false });
  });

  test('there is no return against a stretch that cannot be driven back', () => {
    const course = courseOf({ oneWay: [{ fromM: 50_000, toM: 60_000 }] });
    const edges = [startEdge, passingEdge(100_000), passingEdge(200_000), endEdge(300_000)];
    const gaps = gapsInKm(course, edges, FULL);
    expect(gaps.map((gap) => gap.ifToFails?.canReturn ?? null)).toEqual([false, true, null]);
    expect(gaps[0]!.turnBackKm).toBe(50);
  });

  test('water for the way back is charged by the time of out and back together', () => {
    const course = courseOf({ commodity: 'water' });
    const edges = [startEdge, passingEdge(122_500), passingEdge(200_000), endEdge(300_000)];
    // Out and back are exactly one day: 18 l of 20 l.
    expect(gapsInKm(course, edges, 20)[0]!.ifToFails!.canReturn).toBe(true);
    expect(gapsInKm(course, edges, 17)[0]!.ifToFails!.canReturn).toBe(false);
  });
});

describe('leaving a supply out', () => {
  test('helps when its detour costs more than it brings', () => {
    // 30 km off the route, 5 km before the next: 700 + 39 km out lack fuel, straight on 705 km hold.
    const edges = [startEdge, passingEdge(640_000, 39_000), passingEdge(645_000), endEdge(700_000)];
    const gaps = gapsInKm(courseOf(), edges, FULL);
    expect(gaps.map((gap) => gap.verdict)).toEqual(['into-reserve', 'enough', 'enough']);
    expect(gaps.map((gap) => gap.skipHelps)).toEqual([true, false, false]);
  });

  test('does not help when the stretch without it is no better', () => {
    const edges = [startEdge, passingEdge(660_000), endEdge(1_340_000)];
    expect(gapsInKm(courseOf(), edges, FULL).some((gap) => gap.skipHelps)).toBe(false);
  });
});

describe('levels', () => {
  test('begin with what is aboard on leaving, end with what is aboard on arrival, and never rise', () => {
    const course = courseOf({ commodity: 'water', stays: [{ atM: 60_000, days: 1 }], allowanceFactor: 1.05 });
    for (const gap of gapsInKm(
      course,
      [startEdge, passingEdge(100_000, 1300), endEdge(300_000)],
      WATER_FULL,
    )) {
      expect(gap.levels[0]).toEqual({ atKm: gap.from.atKm, litres: gap.departL });
      expect(gap.levels.at(-1)!.litres).toBeCloseTo(gap.arriveL, 9);
      gap.levels.slice(1).forEach((level, index) => {
        expect(level.litres).toBeLessThanOrEqual(gap.levels[index]!.litres + 1e-9);
        expect(level.atKm).toBeGreaterThanOrEqual(gap.levels[index]!.atKm);
      });
    }
  });

  test('tell where the reserve begins and where nothing is left', () => {
    const [gap] = gapsInKm(courseOf(), [startEdge, endEdge(1_000_000)], FULL);
    expect(gap!.reserveFromKm).toBeCloseTo(110 / 0.17, 6);
    expect(gap!.runsDryKm).toBeCloseTo(127 / 0.17, 6);
    expect(gap!.verdict).toBe('short');
  });
});
