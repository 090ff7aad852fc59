import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import { reckonTrip } from '../../../../server/core/analyse/analyse.ts';
import { betterTours } from '../../../../server/core/plan/legs/better-tours.ts';
import { holdsOver } from '../../../../server/core/plan/legs/hops-in-turn.ts';
import type { Leg } from '../../../../server/core/plan/legs/leg.ts';
import { allLegs } from '../../../../server/core/plan/legs/tours.ts';
import type { MipSolver } from '../../../../server/core/plan/model/mip.ts';
import { loadSolver } from '../../../../server/io/solver.ts';
import { DIESEL, equatorDocument, inputOf, pointFeature, TAP } from '../../../helpers/analyse-input.ts';
import { EXAMPLE_RIG } from '../../../helpers/course.ts';
import { planCarry } from '../by-hand/contracted.ts';
import { questionOf, type SmallRoute, smallRoute } from '../by-hand/small-routes.ts';

let solver: MipSolver;
beforeAll(async () => {
  solver = await loadSolver();
});

/** Fuel only, and at every stop so little that it has to be had often. */
const rationed = (drawn: SmallRoute, mostL: number): SmallRoute => ({
  ...drawn,
  stops: drawn.stops.map((stop) => ({ ...stop, offers: 'fuel', evidence: 'stated', mostL: { fuel: mostL } })),
});

describe('the better ways over supplies that give little', () => {
  it('hold, and need no more cans than all ways do, where each commodity is alone', { tags: 'slow' }, () => {
    let compared = 0;
    fc.assert(
      fc.property(smallRoute(6), fc.integer({ min: 5, max: 20 }), (drawn, mostL) => {
        const side = questionOf(rationed(drawn, mostL)).sides.fuel;
        const { legs, complete } = allLegs(side, []);
        if (!complete) return;
        const better = betterTours(side);
        for (const leg of better) expect(holdsOver(side, leg, () => 0)).toBe(true);
        const last = side.edges.length - 1;
        const fewest = (of: readonly Leg[]) =>
          Math.min(
            ...of
              .filter(({ from, to, hops }) => from === 0 && to === last && hops.length > 1)
              .map(({ hops }) => Math.max(...hops.map(({ cans }) => cans))),
          );
        expect(fewest(better)).toBe(fewest(legs));
        if (Number.isFinite(fewest(better))) compared += 1;
      }),
      { numRuns: 300, seed: 20_261_128 },
    );
    expect(compared).toBeGreaterThan(60);
  });

  it('are enough where every one of many pumps gives 25 l, and the plan does not claim to be the best', {
    tags: 'slow',
  }, () => {
    const features = Array.from({ length: 30 }, (_, index) => {
      const km = Math.round(((index + 1) * 1500) / 31);
      return [pointFeature(`node/${index}1`, km, DIESEL), pointFeature(`node/${index}2`, km, TAP)];
    }).flat();
    const stops = Array.from({ length: 30 }, (_, index) => ({
      id: `node/${index}1`,
      mostLitres: { fuel: 25 },
    }));
    const base = inputOf({ document: equatorDocument(1500, 3), features, rig: EXAMPLE_RIG });
    const outcome = reckonTrip({ ...base, trip: { ...base.trip, plan: { stops } } });
    if (!outcome.ok) throw new Error('no route');
    const { plan } = planCarry(outcome.value, { solver, seconds: 30, clock: () => 0 });
    expect(plan.status).toBe('found');
    // 1,500 km at 0.17 are 255 l and 17 to keep: 127 at the start and six times 25 are 277.
    expect(plan.cans.fuel).toBe(0);
    expect(plan.legs.fuel.length).toBeGreaterThanOrEqual(7);
    for (const leg of plan.legs.fuel) expect(leg.marginL).toBeGreaterThanOrEqual(-1e-6);
    for (const { passings } of plan.stops)
      for (const { commodity, used, fillL } of passings)
        if (used && commodity === 'fuel') expect(fillL!).toBeLessThanOrEqual(25 + 1e-6);
    expect(plan.restsOn.map(({ code }) => code)).toContain('plan-ways-left-out');
    for (const { value, proven } of plan.aims) expect(proven).toBe(value < 1e-5);
  });
});
