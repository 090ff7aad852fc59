import { beforeAll, expect, test } from 'vitest';
import { analyseTrip } from '../../server/app/analyse-trip.ts';
import type { Analysis, Gap } from '../../server/contract/analysis.ts';
import { problemLine } from '../../server/core/input/problem.ts';
import { EXAMPLE_RIG } from '../helpers/course.ts';
import { describeReal } from '../helpers/real.ts';
import { loadSwiss } from './swiss-trip.ts';

/** Figures of the rig and trip below, written out again so that the sums here stand on their own. */
const HIGH_L_PER_KM = 0.17;
const DRAWABLE_L = 127;
const RESERVE_KM = 100;
const RESERVE_SHARE = 0.1;
const ALLOWANCE = 1.07;
const CAN_L = 20;

describeReal('litres of every gap of the Swiss route, by plain arithmetic from its two edges', () => {
  let analysis: Analysis;

  beforeAll(async () => {
    const rig = {
      ...EXAMPLE_RIG,
      fuel: { ...EXAMPLE_RIG.fuel, reserve: { km: RESERVE_KM, shareOfNeed: RESERVE_SHARE } },
    };
    const trip = {
      aboard: { fuelLitres: 40, waterLitres: 70 },
      onward: { km: 120 },
      allowancePercent: 7,
      // Far fewer points count, so that some gaps are long enough to eat into the reserve.
      counting: { fuel: 'stated' as const },
      corridorKm: 0.5,
      departure: '2026-08-10',
    };
    const outcome = analyseTrip(await loadSwiss(), { rig, trip }, { today: '2026-08-10' });
    if (!outcome.ok) throw new Error(problemLine(outcome.problem));
    analysis = outcome.value.analysis;
  });

  const sums = (gap: Gap, isLast: boolean, departL: number) => {
    const way =
      (gap.to.atKm - gap.from.atKm + gap.from.detourKm + gap.to.detourKm + (isLast ? 120 : 0)) * ALLOWANCE;
    const need = way * HIGH_L_PER_KM;
    const reserve = RESERVE_KM * HIGH_L_PER_KM + RESERVE_SHARE * need;
    const margin = departL - need - reserve;
    return { way, need, reserve, arrive: departL - need, margin };
  };

  test('no stretch of it is a sketch, so that plain arithmetic applies', () => {
    expect(analysis.cautions.filter((one) => one.code === 'sparse-steps')).toEqual([]);
    expect(analysis.route.longestStepKm).toBeLessThan(5);
  });

  test('need, reserve, arrival, margin, verdict and extra are equal to 1e-9', () => {
    const { gaps } = analysis.fuel;
    expect(gaps.length).toBeGreaterThan(100);
    gaps.forEach((gap, index) => {
      const expected = sums(gap, index === gaps.length - 1, index === 0 ? 40 : DRAWABLE_L);
      expect(Math.abs(gap.wayKm - expected.way)).toBeLessThan(1e-9);
      expect(Math.abs(gap.needL - expected.need)).toBeLessThan(1e-9);
      expect(Math.abs(gap.reserveL - expected.reserve)).toBeLessThan(1e-9);
      expect(Math.abs(gap.arriveL - expected.arrive)).toBeLessThan(1e-9);
      expect(Math.abs(gap.marginL - expected.margin)).toBeLessThan(1e-9);
      expect(Math.abs(gap.extraL - Math.max(0, -expected.margin))).toBeLessThan(1e-9);
      expect(gap.extraCans).toBe(Math.ceil(Math.max(0, -expected.margin) / CAN_L));
      const holds = expected.margin >= 0 ? 'enough' : expected.arrive >= 0 ? 'into-reserve' : 'short';
      expect(gap.verdict).toBe(holds);
    });
  });

  test('the gaps tile the route and the longest is the one named', () => {
    const { gaps, longest } = analysis.fuel;
    expect(gaps[0]!.from.atKm).toBe(0);
    expect(gaps.at(-1)!.to.atKm).toBe(analysis.route.lengthKm);
    gaps.slice(1).forEach((gap, index) => {
      expect(gap.from.atKm).toBe(gaps[index]!.to.atKm);
    });
    expect(gaps[longest]!.lengthKm).toBe(Math.max(...gaps.map((gap) => gap.lengthKm)));
  });

  test('water, of which the file tells nothing, is one gap without data', () => {
    expect(analysis.water.cover).toEqual([]);
    expect(analysis.water.gaps.map((gap) => gap.acrossNoData)).toEqual([true]);
  });
});
