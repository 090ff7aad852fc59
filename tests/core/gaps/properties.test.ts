import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Gap } from '../../../server/contract/analysis.ts';
import type { RigFile } from '../../../server/contract/rig.ts';
import type { Course, Edge } from '../../../server/core/gaps/course/course.ts';
import { VERDICT_RANK } from '../../../server/core/gaps/verdict.ts';
import { courseOf, EXAMPLE_RIG, endEdge, passingEdge, startEdge } from '../../helpers/course.ts';
import { gapsInKm } from '../../helpers/in-km.ts';

const LENGTH_M = 1_500_000;

const passings = fc
  .array(
    fc.record({ atM: fc.integer({ min: 0, max: LENGTH_M }), detourM: fc.integer({ min: 0, max: 8000 }) }),
    {
      maxLength: 8,
    },
  )
  .map((points) =>
    points.sort((a, b) => a.atM - b.atM).map((point) => passingEdge(point.atM, point.detourM)),
  );

const spans = fc
  .array(fc.tuple(fc.integer({ min: 0, max: LENGTH_M }), fc.integer({ min: 1, max: 300_000 })), {
    maxLength: 3,
  })
  .map((pairs) => {
    let reached = 0;
    return pairs
      .sort((a, b) => a[0] - b[0])
      .flatMap(([start, length]) => {
        const fromM = Math.max(start, reached);
        const toM = Math.min(LENGTH_M, fromM + length);
        reached = toM;
        return toM > fromM ? [{ fromM, toM }] : [];
      });
  });

const rigFile = fc.record({
  high: fc.integer({ min: 8, max: 40 }),
  reserveKm: fc.integer({ min: 0, max: 300 }),
});
const rigWith = (high: number, reserveKm: number, shareOfNeed = 0.1): RigFile => ({
  ...EXAMPLE_RIG,
  fuel: {
    ...EXAMPLE_RIG.fuel,
    litresPer100Km: { low: 1, typical: 2, high },
    reserve: { km: reserveKm, shareOfNeed },
  },
  water: {
    ...EXAMPLE_RIG.water,
    litresPerDay: { low: 1, typical: 2, high },
    reserve: { days: reserveKm / 100, shareOfNeed },
  },
});

const course = fc
  .record({
    commodity: fc.constantFrom('fuel' as const, 'water' as const),
    rig: rigFile,
    sketchy: spans.map((all) => all.map((span) => ({ kind: 'bridge' as const, ...span }))),
    uncovered: spans,
    allowancePercent: fc.integer({ min: 0, max: 30 }),
    onward: fc.option(
      fc.record({ km: fc.integer({ min: 0, max: 200 }), hours: fc.integer({ min: 0, max: 20 }) }),
    ),
    stays: fc.array(
      fc.record({ atM: fc.integer({ min: 0, max: LENGTH_M }), days: fc.integer({ min: 0, max: 3 }) }),
      {
        maxLength: 3,
      },
    ),
  })
  .map(({ rig, allowancePercent, stays, ...rest }) => ({
    ...rest,
    stays: stays.sort((a, b) => a.atM - b.atM),
    rigFile: rigWith(rig.high, rig.reserveKm),
    lengthM: LENGTH_M,
    allowanceFactor: 1 + allowancePercent / 100,
    figures: rig,
  }));

const edgesOf = (points: Edge[]): Edge[] => [startEdge, ...points, endEdge(LENGTH_M)];
const reckoned = (wanted: Course, points: Edge[]): Gap[] =>
  gapsInKm(wanted, edgesOf(points), wanted.rig[wanted.commodity].drawableL);
const ranks = (gaps: Gap[]) => gaps.map((gap) => VERDICT_RANK[gap.verdict]);

describe('gaps', () => {
  test('should tile the route exactly', () => {
    fc.assert(
      fc.property(course, passings, (changes, points) => {
        const gaps = reckoned(courseOf(changes), points);
        expect(gaps[0]!.from.atKm).toBe(0);
        expect(gaps.at(-1)!.to.atKm).toBe(LENGTH_M / 1000);
        gaps.slice(1).forEach((gap, index) => {
          expect(gap.from).toEqual(gaps[index]!.to);
        });
      }),
    );
  });

  test('should never get a longer longest one from one more point without detours', () => {
    fc.assert(
      fc.property(course, passings, fc.integer({ min: 0, max: LENGTH_M }), (changes, points, atM) => {
        const longest = (some: Edge[]) =>
          Math.max(...reckoned(courseOf(changes), some).map((gap) => gap.lengthKm));
        const more = [...points, passingEdge(atM)].sort((a, b) => a.atM - b.atM);
        expect(longest(more)).toBeLessThanOrEqual(longest(points));
      }),
    );
  });

  test('should never get a better verdict from more use or more reserve', () => {
    fc.assert(
      fc.property(course, passings, fc.nat(20), fc.nat(200), (changes, points, moreUse, moreReserve) => {
        const before = reckoned(courseOf(changes), points);
        const { high, reserveKm } = changes.figures;
        const thirstier = { ...changes, rigFile: rigWith(high + moreUse, reserveKm + moreReserve, 0.2) };
        const after = ranks(reckoned(courseOf(thirstier), points));
        ranks(before).forEach((rank, index) => {
          expect(after[index]!).toBeLessThanOrEqual(rank);
        });
      }),
    );
  });

  test('should never turn from short or unknown to enough when cover is taken away', () => {
    fc.assert(
      fc.property(course, passings, spans, (changes, points, uncovered) => {
        const covered = reckoned(courseOf({ ...changes, uncovered: [] }), points);
        const bare = reckoned(courseOf({ ...changes, uncovered }), points);
        covered.forEach((gap, index) => {
          if (gap.verdict === 'enough') return;
          expect(bare[index]!.verdict).not.toBe('enough');
        });
      }),
    );
  });

  test('should have a margin that is what is aboard less need and reserve, and a verdict that says so', () => {
    fc.assert(
      fc.property(course, passings, (changes, points) => {
        for (const gap of reckoned(courseOf(changes), points)) {
          expect(gap.arriveL).toBeCloseTo(gap.departL - gap.needL, 9);
          expect(gap.marginL).toBeCloseTo(gap.arriveL - gap.reserveL, 9);
          if (gap.verdict === 'enough') expect(gap.marginL).toBeGreaterThanOrEqual(-1e-9);
          if (gap.verdict === 'into-reserve') expect(gap.marginL).toBeLessThan(0);
          if (gap.verdict === 'short') expect(gap.arriveL).toBeLessThan(0);
          expect(gap.extraCans * 20).toBeGreaterThanOrEqual(gap.extraL - 1e-6);
        }
      }),
    );
  });

  test('should bring a fuel turn-back point that out and home use up the budget exactly, or the gap ends', () => {
    fc.assert(
      fc.property(course, passings, (changes, points) => {
        const flat = courseOf({ ...changes, commodity: 'fuel', sketchy: [], stays: [] });
        const perKm = (flat.rig.fuel.litresPer100Km.high / 100) * changes.allowanceFactor;
        for (const gap of reckoned(flat, points)) {
          const budget = gap.departL - gap.reserveL;
          if (gap.turnBackKm === null) {
            expect(2 * perKm * gap.from.detourKm).toBeGreaterThan(budget);
          } else {
            const used = 2 * perKm * (gap.turnBackKm - gap.from.atKm + gap.from.detourKm);
            if (gap.turnBackKm < gap.to.atKm) expect(used).toBeCloseTo(budget, 6);
            else expect(used).toBeLessThanOrEqual(budget + 1e-6);
          }
        }
      }),
    );
  });
});
