import { describe, expect, it } from 'vitest';
import type { Leg } from '../../../../server/core/plan/legs/leg.ts';
import { covers, kgPerLitre, lessAtStartL } from '../../../../server/core/plan/model/mass-rows.ts';
import { bareRoute, bareStop, questionOf } from '../by-hand/small-routes.ts';

/** 20 l of fuel in a tank of 30 at the start; pumps at km 100 and 200. */
const side = questionOf(
  bareRoute({
    tankL: { fuel: 30, water: 40 },
    startL: { fuel: 20, water: 40 },
    stops: [bareStop(100), bareStop(200)],
  }),
).sides.fuel;

const leg = (from: number, to: number): Leg => ({
  from,
  to,
  hops: [{ from, to, tankL: 20, cans: 0, filledL: 0, spareM: 0 }],
  spareL: 0,
  canM: 0,
});

describe('what a litre less in the tanks takes off a limit', () => {
  const limit = (perLitre: number, ofCans: number) => ({
    name: 'front' as const,
    leftKg: 0,
    canKg: { fuel: { empty: 0, filling: ofCans * side.canL }, water: { empty: 0, filling: 0 } },
    perLitreKg: { fuel: perLitre, water: 0 },
  });
  const withCans = (cans: number): Leg => ({
    ...leg(1, 2),
    hops: [{ from: 1, to: 2, tankL: 20, cans, filledL: 0, spareM: 0 }],
  });

  it('is that of the tanks where no can is poured into them', () => {
    expect(kgPerLitre(limit(0.8, 0.1), side, withCans(0))).toBe(0.8);
    expect(kgPerLitre(limit(-0.2, 0.1), side, withCans(0))).toBe(0);
  });

  it('is that of the cans where they fill the tanks up again', () => {
    expect(kgPerLitre(limit(0.8, 0), side, withCans(2))).toBe(0);
    expect(kgPerLitre(limit(0.8, 0.3), side, withCans(2))).toBeCloseTo(0.3, 12);
    expect(kgPerLitre(limit(0.8, 0.9), side, withCans(2))).toBe(0.8);
  });
});

describe('what a leg weighs at a place', () => {
  it('counts strictly inside the leg only', () => {
    const places = [50, 100, 150, 200, 250].map((km) => covers(side, leg(1, 2), km * 1000));
    expect(places).toEqual([false, false, true, false, false]);
  });

  it('is less by what the tank lacked at the start until something is filled in', () => {
    const lessL = [50, 100, 150].map((km) => lessAtStartL(side, leg(0, 1), km * 1000));
    expect(lessL).toEqual([10, 0, 0]);
    expect(lessAtStartL(side, leg(1, 2), 150_000)).toBe(0);
  });
});
